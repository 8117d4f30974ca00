// A table as it came from a file: rows of cells, each with its text and where it began.
#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "base/span.h"

namespace retort {

struct Cell {
  std::string text;        // UTF-8, without the spaces around it and without its quotes
  Span span;               // bytes in the file, quotes included
  std::uint32_t line = 1;  // where it begins, from 1
};

struct Table {
  std::vector<std::vector<Cell>> rows;  // rows may differ in length
  char delimiter = ',';
};

}  // namespace retort
