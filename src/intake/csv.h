// CSV files → a Table: what stands between commas, semicolons, tabs or bars, whichever the file uses.
//
// Quotes, line ends inside quotes, a byte order mark and a first line "sep=;" are understood (RFC 4180, and what
// spreadsheets add to it). Bytes that are not UTF-8 are read as Windows-1252, which spreadsheets still write; that is a
// finding. Memory grows with the file, up to the limits.
#pragma once
#include <string>
#include <string_view>

#include "base/result.h"
#include "base/table.h"

namespace retort {

struct CsvLimits {
  std::size_t bytes = 4U << 20;
  std::size_t cells = 400'000;
};

// Reads `content`. `file` names it in findings. Fails if it is over the limits or no text; other faults are added to
// `findings` and the rest is read. Rows without any text are left out.
Result<Table> read_csv(std::string_view content, const std::string& file, Findings& findings, const CsvLimits& limits = {});

// The delimiter that the first lines of `content` use: the one of , ; tab | that stands equally often in most of them.
char find_delimiter(std::string_view content);

}  // namespace retort
