// How numbers stand in a text: decimal commas, exponents, powers of ten. For the lexer.
#pragma once
#include <algorithm>
#include <cstddef>
#include <optional>
#include <string_view>

namespace retort::calc {

inline bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
inline bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

inline constexpr std::string_view kSuperscripts[] = {"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074",
                                                     "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};

class NumberText {
 protected:
  explicit NumberText(std::string_view text) : text_(text) {}

  char byte(std::size_t i) const { return i < text_.size() ? text_[i] : '\0'; }
  bool starts(std::size_t i, std::string_view what) const { return text_.compare(std::min(i, text_.size()), what.size(), what) == 0; }
  std::size_t spaces(std::size_t i) const;
  // Whether the writer's decimal sign is a comma: "57,5" stands somewhere, and no "57.5".
  bool writes_decimal_commas() const;
  // A comma inside one number, and not the separator of a list or of thousands.
  bool single_comma(std::size_t comma) const;
  // An exponent at `i`: digits or superscripts with a sign; moves `i` behind it.
  std::optional<int> exponent(std::size_t& i, bool sign_needed) const;
  // "× 10^8", "x10-3", "× 10⁸", "*10^8", "e-3" behind a number
  std::optional<int> power_of_ten_behind(std::size_t& end) const;

  std::string_view text_;
};

}  // namespace retort::calc
