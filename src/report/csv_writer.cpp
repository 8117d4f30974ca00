#include "report/csv_writer.h"

#include <array>
#include <cmath>
#include <cstdio>

#include "report/utf8.h"

namespace retort {
namespace {

// What begins a formula in one spreadsheet or another, and the full-width forms that some read alike.
constexpr std::array<std::string_view, 8> kFormulaStarts = {"=", "+", "-", "@", "\uFF1D", "\uFF0B", "\uFF0D", "\uFF20"};

bool begins_formula(std::string_view text) {
  while (!text.empty()) {
    if (text.starts_with(' ')) {
      text.remove_prefix(1);
    } else if (text.starts_with("\u00A0")) {
      text.remove_prefix(2);
    } else if (text.starts_with("\uFEFF")) {
      text.remove_prefix(3);
    } else {
      break;
    }
  }
  for (std::string_view start : kFormulaStarts) {
    if (text.starts_with(start)) return true;
  }
  return text.starts_with('\t') || text.starts_with('\r') || text.starts_with('\n');
}

bool is_control(std::string_view character) {
  return character.size() == 1 && (static_cast<unsigned char>(character[0]) < 0x20 || character[0] == 0x7F) && character[0] != '\n';
}

}  // namespace

std::string inert_cell(std::string_view text) {
  std::string out;
  if (begins_formula(text)) out += '\'';
  std::string clean;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t length = utf8_sequence(text, at);
    std::string_view character = text.substr(at, length == 0 ? 1 : length);
    at += character.size();
    if (length == 0) {
      clean += "\uFFFD";
    } else if (!is_control(character)) {
      clean += character;
    }
  }
  // What stood before a formula may have been left out.
  if (out.empty() && begins_formula(clean)) out += '\'';
  return out + clean;
}

CsvWriter::CsvWriter(std::string& out) : out_(out) {
  out_ += "\uFEFF";
}

void CsvWriter::raw(std::string_view cell) {
  if (!first_) out_ += ',';
  first_ = false;
  out_ += cell;
}

CsvWriter& CsvWriter::text(std::string_view value) {
  std::string cell = inert_cell(value);
  if (cell.find_first_of(",\"\n; ") == std::string::npos) {
    raw(cell);
    return *this;
  }
  std::string quoted = "\"";
  for (char c : cell) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  quoted += '"';
  raw(quoted);
  return *this;
}

CsvWriter& CsvWriter::number(std::int64_t value) {
  raw(std::to_string(value));
  return *this;
}

CsvWriter& CsvWriter::real(double value, int places) {
  if (!std::isfinite(value)) return empty();
  std::array<char, 64> buffer{};
  int length = std::snprintf(buffer.data(), buffer.size(), "%.*f", places, value);
  bool fits = length > 0 && static_cast<std::size_t>(length) < buffer.size();
  raw(fits ? std::string_view(buffer.data(), static_cast<std::size_t>(length)) : std::string_view());
  return *this;
}

CsvWriter& CsvWriter::empty() {
  raw("");
  return *this;
}

CsvWriter& CsvWriter::end_row() {
  out_ += "\r\n";
  first_ = true;
  return *this;
}

}  // namespace retort
