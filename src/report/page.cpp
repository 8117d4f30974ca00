#include "report/page.h"

#include <algorithm>

namespace retort {
namespace {

struct Glyph {
  std::uint32_t offset = 0;  // bytes in the text
  std::uint8_t bytes = 1;
  std::uint8_t width = 1;
};

std::uint32_t decode(std::string_view text, std::size_t at, std::size_t length) {
  auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[at + i]); };
  if (length == 2) return ((byte(0) & 0x1FU) << 6U) | (byte(1) & 0x3FU);
  if (length == 3) return ((byte(0) & 0x0FU) << 12U) | ((byte(1) & 0x3FU) << 6U) | (byte(2) & 0x3FU);
  if (length == 4) return ((byte(0) & 0x07U) << 18U) | ((byte(1) & 0x3FU) << 12U) | ((byte(2) & 0x3FU) << 6U) | (byte(3) & 0x3FU);
  return byte(0);
}

// Rough: the blocks of combining marks, and those of wide East Asian characters and emoji.
std::uint8_t width_of(std::uint32_t c) {
  if ((c >= 0x300 && c <= 0x36F) || (c >= 0x1AB0 && c <= 0x1AFF) || (c >= 0x20D0 && c <= 0x20FF) || (c >= 0xFE00 && c <= 0xFE0F) ||
      (c >= 0x200B && c <= 0x200F) || (c >= 0x202A && c <= 0x202E) || (c >= 0x2060 && c <= 0x2069) || c == 0xFEFF) {
    return 0;
  }
  if ((c >= 0x1100 && c <= 0x115F) || (c >= 0x2E80 && c <= 0xA4CF) || (c >= 0xAC00 && c <= 0xD7A3) || (c >= 0xF900 && c <= 0xFAFF) ||
      (c >= 0xFF00 && c <= 0xFF60) || (c >= 0x1F300 && c <= 0x1FAFF) || (c >= 0x20000 && c <= 0x3FFFD)) {
    return 2;
  }
  return 1;
}

Glyph glyph_at(std::string_view text, std::size_t at) {
  auto lead = static_cast<unsigned char>(text[at]);
  std::size_t length = lead < 0xC0 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
  length = std::min(length, text.size() - at);
  std::uint32_t c = decode(text, at, length);
  return {static_cast<std::uint32_t>(at), static_cast<std::uint8_t>(length), width_of(c)};
}

bool is_control(std::string_view text, const Glyph& g) {
  auto c = static_cast<unsigned char>(text[g.offset]);
  // C0, DEL, C1; and stray UTF-8 bytes
  if (g.bytes == 1) return c < 0x20 || c == 0x7F || c >= 0x80;
  return g.bytes == 2 && c == 0xC2 && static_cast<unsigned char>(text[g.offset + 1]) < 0xA0;
}

// A line of the page: the glyphs [first, last) of the text.
std::vector<std::vector<Glyph>> break_lines(std::string_view text, std::size_t width) {
  std::vector<std::vector<Glyph>> lines(1);
  std::size_t used = 0;
  std::size_t last_space = std::string_view::npos;  // index in the current line
  for (std::size_t i = 0; i < text.size();) {
    Glyph g = glyph_at(text, i);
    i += g.bytes;
    char c = text[g.offset];
    if (c == '\n') {
      lines.emplace_back();
      used = 0;
      last_space = std::string_view::npos;
      continue;
    }
    if (is_control(text, g) && c != '\t') continue;
    if (used + g.width > width && !lines.back().empty()) {
      std::vector<Glyph> carried;
      if (last_space != std::string_view::npos && c != ' ') {
        auto from = lines.back().begin() + static_cast<std::ptrdiff_t>(last_space) + 1;
        carried.assign(from, lines.back().end());
        lines.back().erase(from - 1, lines.back().end());
      }
      lines.push_back(carried);
      used = 0;
      for (const Glyph& old : carried) used += old.width;
      last_space = std::string_view::npos;
      if (c == ' ' || c == '\t') continue;
    }
    if (c == ' ' || c == '\t') last_space = lines.back().size();
    lines.back().push_back(g);
    used += g.width;
  }
  return lines;
}

std::string trimmed(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

std::string line_text(std::string_view text, const std::vector<Glyph>& line) {
  std::string out;
  for (const Glyph& g : line) out += text[g.offset] == '\t' ? std::string(" ") : std::string(text.substr(g.offset, g.bytes));
  return out;
}

// The rows of marks for one line: each mark in the first row where it does not touch another.
std::vector<std::string> mark_rows(const std::vector<Glyph>& line, const std::vector<Underline>& marks) {
  std::vector<std::string> rows;
  std::vector<std::size_t> ends;
  for (const Underline& mark : marks) {
    std::size_t column = 0;
    std::size_t begin = std::string::npos;
    std::size_t end = 0;
    bool starts_here = false;
    for (const Glyph& g : line) {
      if (g.offset >= mark.span.begin && g.offset < mark.span.end) {
        if (begin == std::string::npos) begin = column;
        end = column + g.width;
        starts_here = starts_here || g.offset == mark.span.begin;
      }
      column += g.width;
    }
    if (begin == std::string::npos) continue;
    std::string drawn = starts_here ? mark.label : "";
    end = std::max(end, begin + drawn.size());
    drawn.resize(end - begin, mark.fill);
    std::size_t row = 0;
    while (row < rows.size() && ends[row] + 1 > begin && ends[row] != 0) ++row;
    if (row == rows.size()) {
      rows.emplace_back();
      ends.push_back(0);
    }
    rows[row].resize(begin, ' ');
    rows[row] += drawn;
    ends[row] = end;
  }
  return rows;
}

}  // namespace

std::size_t columns(std::string_view text) {
  std::size_t sum = 0;
  for (std::size_t i = 0; i < text.size();) {
    Glyph g = glyph_at(text, i);
    sum += g.width;
    i += g.bytes;
  }
  return sum;
}

void append_wrapped(std::string_view text, std::size_t width, std::string_view first, std::string_view rest, std::string& out) {
  std::size_t margin = std::max(columns(first), columns(rest));
  bool head = true;
  for (const auto& line : break_lines(text, width > margin + 10 ? width - margin : 10)) {
    out += trimmed(std::string(head ? first : rest) + line_text(text, line)) + "\n";
    head = false;
  }
}

void append_marked(std::string_view text, const std::vector<Underline>& marks, std::size_t width, std::string_view margin, std::string& out) {
  std::vector<Underline> sorted = marks;
  std::stable_sort(sorted.begin(), sorted.end(), [](const Underline& a, const Underline& b) { return a.span.begin < b.span.begin; });
  std::size_t room = width > columns(margin) + 10 ? width - columns(margin) : 10;
  for (const auto& line : break_lines(text, room)) {
    out += trimmed(std::string(margin) + line_text(text, line)) + "\n";
    for (const std::string& row : mark_rows(line, sorted)) out += trimmed(std::string(margin) + row) + "\n";
  }
}

}  // namespace retort
