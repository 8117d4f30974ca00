// The rows of a CSV file one after the other, in memory that does not grow with the file.
//
// Read as read_csv() does (delimiters, quotes, "sep=", Windows-1252), and UTF-16 as well. A row may have up to
// kLongestLine bytes; of more than kMostColumns cells the first are kept.
#pragma once
#include <csv.h>

#include <cstddef>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "intake/utf16_bytes.h"

namespace retort {

inline constexpr std::size_t kMostColumns = 2000;

struct CsvRow {
  std::vector<std::string> cells;  // UTF-8, without spaces around them and without quotes
  std::size_t number = 0;          // from 1, as a spreadsheet counts: blank ones too, one for a cell of several lines
  std::size_t line = 0;            // of the file, from 1, where it begins
};

class CsvRows {
 public:
  enum class Got { row, end, too_long, failed };

  // Reads from `fd`, which stays the caller's.
  explicit CsvRows(int fd);
  ~CsvRows();
  CsvRows(const CsvRows&) = delete;
  CsvRows& operator=(const CsvRows&) = delete;

  // The next row with any text in it. After `too_long`, `out` holds the number and line of the row that is.
  Got next(CsvRow& out);
  // Whether a row is at hand without reading on.
  [[nodiscard]] bool ready() const { return !rows_.empty(); }
  // The number of the last row read on the way.
  [[nodiscard]] std::size_t last() const { return number_ - 1; }
  // errno of a failed read.
  [[nodiscard]] int error() const { return error_; }
  // Bytes so far that were not UTF-8 and read as Windows-1252.
  [[nodiscard]] std::size_t odd_bytes() const { return odd_bytes_; }
  // Whether the file ended inside quotes.
  [[nodiscard]] bool quote_open() const { return quote_open_; }

 private:
  static void on_cell(void* text, std::size_t size, void* self);
  static void on_row(int, void* self);
  void begin();
  bool read_more(std::string& raw);
  void feed(std::string_view text);
  void feed_line(std::string_view line);
  void finish();

  int fd_;
  csv_parser parser_{};
  bool ready_ = false;  // the parser
  bool begun_ = false;
  bool end_ = false;
  bool quote_open_ = false;
  bool too_long_ = false;
  int error_ = 0;
  char line_end_ = '\n';
  std::optional<Utf16Bytes> utf16_;
  std::deque<CsvRow> rows_;
  CsvRow row_;
  bool any_ = false;        // text in row_
  std::size_t line_ = 1;    // of the byte fed next
  std::size_t number_ = 1;  // of the row fed next
  std::size_t row_bytes_ = 0;
  std::size_t odd_bytes_ = 0;
};

}  // namespace retort
