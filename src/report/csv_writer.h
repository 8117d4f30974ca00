// Writes CSV into a string, cell by cell (RFC 4180: commas, line ends CR LF, quotes doubled), safe to open in a spreadsheet.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>

namespace retort {

// `text` with nothing in it that a spreadsheet would work out: a text that begins with = + - or @ (also full-width, also after
// spaces), a tab or a line end gets an apostrophe in front. Control characters other than line feeds are left out, and bytes
// that are not UTF-8 become U+FFFD.
std::string inert_cell(std::string_view text);

class CsvWriter {
 public:
  // Begins `out` with a byte order mark, by which spreadsheets know UTF-8.
  explicit CsvWriter(std::string& out);

  // Untrusted text.
  CsvWriter& text(std::string_view value);
  CsvWriter& number(std::int64_t value);
  // With this many decimals; an empty cell if it is not finite.
  CsvWriter& real(double value, int places);
  CsvWriter& empty();
  CsvWriter& end_row();

 private:
  void raw(std::string_view cell);

  std::string& out_;
  bool first_ = true;  // nothing yet in this row
};

}  // namespace retort
