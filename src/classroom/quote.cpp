#include "classroom/quote.h"

#include <algorithm>

namespace retort::classroom {
namespace {

bool space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

// Whether a sentence or a line ends with the byte at `i`. A stop before a letter or a digit is a decimal point or an abbreviation.
bool ends_at(std::string_view text, std::size_t i) {
  char c = text[i];
  if (c == '\n') return true;
  return (c == '.' || c == '!' || c == '?') && (i + 1 == text.size() || space(text[i + 1]));
}

Span sentence_around(std::string_view text, Span span) {
  std::size_t begin = span.begin;
  while (begin > 0 && !ends_at(text, begin - 1)) --begin;
  std::size_t end = std::max(span.end, span.begin + 1);
  while (end < text.size() && !ends_at(text, end - 1)) ++end;
  return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kAround = " \t\r\n-*>";
  std::size_t begin = text.find_first_not_of(kAround);
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(" \t\r\n") + 1 - begin);
}

}  // namespace

std::string one_line(std::string_view text, std::size_t longest) {
  std::string out;
  for (char c : trimmed(text)) {
    if (!space(c))
      out += c;
    else if (!out.ends_with(' '))
      out += ' ';
  }
  if (out.size() <= longest) return out;
  std::size_t end = longest;
  while (end > 0 && (static_cast<unsigned char>(out[end]) & 0xC0U) == 0x80U) --end;
  out.resize(end);
  return out + "...";
}

std::string quote(std::string_view text, const std::vector<Span>& evidence) {
  if (evidence.empty()) return {};
  Span all = hull(evidence.front(), evidence.back());
  Span sentence = sentence_around(text, all);
  for (Span span : {sentence, all}) {
    std::string_view words = trimmed(span.of(text));
    if (words.size() <= kLongestQuote) return one_line(words);
  }
  return one_line(evidence.front().of(text));
}

}  // namespace retort::classroom
