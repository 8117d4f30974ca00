// Tables for the tests, written as CSV.
#pragma once
#include "../support.h"
#include "base/messages.h"
#include "intake/csv.h"
#include "results/analysis.h"

namespace retort::test {

inline Table table_of(const std::string& csv) {
  Findings findings;
  Result<Table> table = read_csv(csv, "t.csv", findings);
  EXPECT_TRUE(table.ok());
  return table.ok() ? *table : Table{};
}

// Requires a table that can be analysed.
inline results::Analysis analysed(const std::string& csv, const results::Wanted& wanted = {}) {
  Result<results::Analysis> analysis = results::analyse(table_of(csv), "t.csv", wanted);
  EXPECT_TRUE(analysis.ok()) << csv;
  return analysis.ok() ? *analysis : results::Analysis{};
}

// "results-cell-blank 2:5; …"
inline std::string codes_of(const Findings& findings, const std::string& csv) {
  std::string out;
  for (const Finding& f : findings) {
    LineColumn at = locate(csv, f.span.begin);
    out += (out.empty() ? "" : "; ") + std::string(message(f.code).name);
    if (f.located) out += " " + std::to_string(at.line) + ":" + std::to_string(at.column);
  }
  return out;
}

}  // namespace retort::test
