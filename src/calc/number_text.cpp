#include "calc/number_text.h"

#include <algorithm>

#include "quantity/compound.h"

namespace retort::calc {

std::size_t NumberText::spaces(std::size_t i) const {
  std::size_t begin = i;
  while (i < text_.size()) {
    if (text_[i] == ' ' || text_[i] == '\t')
      ++i;
    else if (static_cast<unsigned char>(text_[i]) < 0x80)
      break;
    else if (starts(i, "\u00A0"))
      i += 2;
    else if (starts(i, "\u2009") || starts(i, "\u202F"))
      i += 3;
    else
      break;
  }
  return i - begin;
}

// Whether the writer's decimal sign is a comma: "57,5" stands somewhere, and no "57.5".
bool NumberText::writes_decimal_commas() const {
  bool commas = false;
  for (std::size_t i = text_.find_first_of(".,"); i != std::string_view::npos; i = text_.find_first_of(".,", i + 1)) {
    if (i == 0 || !is_digit(text_[i - 1]) || !is_digit(byte(i + 1))) continue;
    if (text_[i] == '.') return false;
    commas = commas || single_comma(i);
  }
  return commas;
}

// A comma inside one number, and not the separator of a list or of thousands.
bool NumberText::single_comma(std::size_t comma) const {
  std::size_t first = comma;
  while (first > 0 && is_digit(text_[first - 1])) --first;
  std::size_t n = 0;
  while (is_digit(byte(comma + 1 + n))) ++n;
  bool list = (first > 1 && text_[first - 1] == ',' && is_digit(text_[first - 2])) || (byte(comma + 1 + n) == ',' && is_digit(byte(comma + 2 + n)));
  bool zero = text_[first] == '0' && comma - first == 1;
  return !list && n <= 4 && (n != 3 || zero);
}

// An exponent at `i`: digits or superscripts with a sign; moves `i` behind it.
std::optional<int> NumberText::exponent(std::size_t& i, bool sign_needed) const {
  std::size_t at = i;
  bool negative = false;
  bool sign = true;
  if (starts(at, "\u207B"))
    negative = true, at += 3;
  else if (byte(at) == '-')
    negative = true, at += 1;
  else if (starts(at, "\u2212"))
    negative = true, at += 3;
  else if (byte(at) == '+')
    at += 1;
  else
    sign = false;
  if (sign_needed && !sign) return std::nullopt;
  int value = 0;
  int n = 0;
  for (; n < 6; ++n) {
    if (is_digit(byte(at))) {
      value = value * 10 + (text_[at++] - '0');
      continue;
    }
    std::size_t length = 0;
    for (std::size_t d = 0; d < 10 && length == 0; ++d) {
      if (starts(at, kSuperscripts[d])) {
        length = kSuperscripts[d].size();
        value = value * 10 + static_cast<int>(d);
      }
    }
    if (length == 0) break;
    at += length;
  }
  if (n == 0) return std::nullopt;
  i = at;
  return negative ? -value : value;
}

// "× 10^8", "x10-3", "× 10⁸", "*10^8", "e-3" behind a number
std::optional<int> NumberText::power_of_ten_behind(std::size_t& end) const {
  std::size_t i = end;
  if (byte(i) == 'e' || byte(i) == 'E') {
    ++i;
    bool digits = is_digit(byte(i)) || is_digit(byte(i + 1)) || byte(i) == '\xE2';
    auto n = digits ? exponent(i, false) : std::nullopt;
    bool ends = !is_letter(byte(i)) || ((byte(i) == 'x' || byte(i) == 'X') && (is_digit(byte(i + 1)) || byte(i + 1) == ' ')) ||
                read_unit_prefix(text_.substr(std::min(i, text_.size()), 64)).has_value();
    if (n && ends) return end = i, n;
    return std::nullopt;
  }
  i += spaces(i);
  if (byte(i) == 'x' || byte(i) == 'X' || byte(i) == '*')
    ++i;
  else if (starts(i, "\u00D7"))
    i += 2;
  else
    return std::nullopt;
  i += spaces(i);
  if (!starts(i, "10")) return std::nullopt;
  i += 2;
  bool raised = byte(i) == '^';
  if (raised) ++i;
  bool bracket = raised && byte(i) == '(';
  if (bracket) ++i;
  bool superscript =
      starts(i, "\u207B") || std::any_of(std::begin(kSuperscripts), std::end(kSuperscripts), [&](std::string_view s) { return starts(i, s); });
  if (auto n = exponent(i, !raised && !superscript)) {
    if (bracket && byte(i) == ')') ++i;
    if (!raised && !superscript && byte(i) == '.') return std::nullopt;  // "3 × 10-0.5"
    return end = i, n;
  }
  return std::nullopt;
}

}  // namespace retort::calc
