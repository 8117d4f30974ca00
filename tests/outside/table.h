// Tables of data/, with the names of their columns in the first line.
#pragma once
#include <map>
#include <sstream>

#include "../support.h"

namespace retort::test {

using TableRow = std::map<std::string, std::string>;

inline std::vector<TableRow> read_table(const std::string& name) {
  std::istringstream in(read_all(source_path("tests/outside/data/" + name)));
  auto cells = [](const std::string& line) {
    std::vector<std::string> out(1);
    for (char c : line) {
      if (c == '\t') out.emplace_back();
      else if (c != '\r') out.back() += c;
    }
    return out;
  };
  std::string line;
  std::getline(in, line);
  std::vector<std::string> names = cells(line);
  std::vector<TableRow> rows;
  while (std::getline(in, line)) {
    std::vector<std::string> values = cells(line);
    EXPECT_EQ(values.size(), names.size()) << line;
    TableRow row;
    for (std::size_t i = 0; i < std::min(names.size(), values.size()); ++i) row[names[i]] = values[i];
    rows.push_back(row);
  }
  return rows;
}

}  // namespace retort::test
