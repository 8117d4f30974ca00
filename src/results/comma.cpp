#include "results/comma.h"

namespace retort::results {

Comma find_comma(const Table& table) {
  for (const std::vector<Cell>& row : table.rows) {
    for (const Cell& cell : row) {
      std::size_t at = cell.text.find(',');
      if (at == std::string::npos || cell.text.find(',', at + 1) != std::string::npos || cell.text.find('.') != std::string::npos) continue;
      auto number = read_number(cell.text, Comma::decimal);
      if (!number || at == 0) continue;
      std::size_t end = at + 1;
      while (end < cell.text.size() && cell.text[end] >= '0' && cell.text[end] <= '9') ++end;
      std::size_t digits = end - at - 1;
      if (digits > 0 && (digits != 3 || cell.text[0] == '0' || table.delimiter == ';')) return Comma::decimal;
    }
  }
  return Comma::thousands;
}

}  // namespace retort::results
