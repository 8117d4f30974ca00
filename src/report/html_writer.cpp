#include "report/html_writer.h"

#include <cassert>

#include "report/utf8.h"

namespace retort {
namespace {

// What stands for the byte `c` in HTML; empty if it stands for itself or is left out.
std::string_view reference(char c) {
  switch (c) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\'':
      return "&#39;";
    default:
      return {};
  }
}

bool control(std::string_view sequence) {
  auto first = static_cast<unsigned char>(sequence[0]);
  if (sequence.size() == 1) return (first < 0x20 && first != '\n' && first != '\t') || first == 0x7F;
  return sequence.size() == 2 && first == 0xC2 && static_cast<unsigned char>(sequence[1]) < 0xA0;  // C1
}

// Controls of bidirectional text: U+061C, U+200E-200F, U+202A-202E, U+2066-2069.
bool reorders(std::string_view sequence) {
  if (sequence == "\xD8\x9C") return true;
  if (sequence.size() != 3 || !sequence.starts_with("\xE2")) return false;
  auto second = static_cast<unsigned char>(sequence[1]);
  auto third = static_cast<unsigned char>(sequence[2]);
  if (second == 0x80) return third == 0x8E || third == 0x8F || (third >= 0xAA && third <= 0xAE);
  return second == 0x81 && third >= 0xA6 && third <= 0xA9;
}

// U+FFFE and U+FFFF are no characters.
bool never(std::string_view sequence) {
  return sequence == "\xEF\xBF\xBE" || sequence == "\xEF\xBF\xBF";
}

}  // namespace

std::string html_escaped(std::string_view text) {
  std::string out;
  out.reserve(text.size() + text.size() / 16);
  for (std::size_t i = 0; i < text.size();) {
    std::size_t length = utf8_sequence(text, i);
    std::string_view sequence = text.substr(i, length == 0 ? 1 : length);
    i += sequence.size();
    if (length == 0) {
      out += "\xEF\xBF\xBD";
    } else if (std::string_view as = reference(sequence[0]); !as.empty()) {
      out += as;
    } else if (sequence == "\r") {
      if (i >= text.size() || text[i] != '\n') out += '\n';
    } else if (!control(sequence) && !reorders(sequence) && !never(sequence)) {
      out += sequence;
    }
  }
  return out;
}

void HtmlWriter::start(std::string_view name, Attributes attributes) {
  out_ += '<';
  out_ += name;
  for (const auto& [key, value] : attributes) {
    out_ += ' ';
    out_ += key;
    out_ += "=\"" + html_escaped(value) + "\"";
  }
  out_ += '>';
}

HtmlWriter& HtmlWriter::open(std::string_view name, Attributes attributes) {
  start(name, attributes);
  open_.push_back(name);
  return *this;
}

HtmlWriter& HtmlWriter::close() {
  assert(!open_.empty());
  out_ += "</";
  out_ += open_.back();
  out_ += '>';
  open_.pop_back();
  return *this;
}

HtmlWriter& HtmlWriter::element(std::string_view name, Attributes attributes, std::string_view content) {
  return open(name, attributes).text(content).close();
}

HtmlWriter& HtmlWriter::empty(std::string_view name, Attributes attributes) {
  start(name, attributes);
  return *this;
}

HtmlWriter& HtmlWriter::text(std::string_view content) {
  out_ += html_escaped(content);
  return *this;
}

HtmlWriter& HtmlWriter::foreign(std::string_view markup) {
  out_ += markup;
  return *this;
}

HtmlWriter& HtmlWriter::line() {
  out_ += '\n';
  return *this;
}

}  // namespace retort
