// The tokens of a text as a calculation sees it: numbers with their units, operators as marks or in
// words, signs of equality, and the words between.
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/span.h"
#include "quantity/exact.h"

namespace retort::calc {

enum class TokenKind : std::uint8_t {
  number,
  pi,
  plus,
  minus,
  times,
  divide,
  power,  // power: "^" before a number
  squared,
  cubed,  // behind what they raise
  root,
  sine,
  cosine,
  tangent,
  arcsine,
  arccosine,
  arctangent,  // before what they act on
  open,
  close,
  equals,  // = ≈ → "equals"
  comma,
  colon,
  stop,
  line,
  unit,  // of the bracket before it: "(2.35 - 0.75) m/s"
  word,
};

struct Token {
  TokenKind kind{};
  Span source;
  bool in_words = false;  // an operator or a number in words
  bool glued = false;     // no white space before it
  bool leading_zero = false;
  std::uint8_t hint = 0;     // of kind word: what it may begin (see operator_words.h)
  std::uint32_t number = 0;  // of kind number or unit: index into Tokens::numbers or Tokens::units
  std::uint32_t form = 0;    // of kind word: where its folded form begins in Tokens::forms
  std::uint16_t length = 0;
};

struct Number {
  Decimal decimal;
  Span digits;  // the number alone, without its unit
  std::optional<CompoundUnit> unit;
  bool too_large = false;  // beyond any measurement: nothing is reckoned with it
};

struct Tokens {
  std::string_view source;
  std::vector<Token> all;
  std::vector<Number> numbers;
  std::vector<CompoundUnit> units;
  std::string forms;  // folded words, one after the other

  [[nodiscard]] std::size_t size() const { return all.size(); }
  [[nodiscard]] TokenKind kind(std::size_t i) const { return i < all.size() ? all[i].kind : TokenKind::stop; }
  [[nodiscard]] bool is(std::size_t i, TokenKind kind_) const { return i < all.size() && all[i].kind == kind_; }
  [[nodiscard]] const Number& number(std::size_t i) const { return numbers[all[i].number]; }
  [[nodiscard]] std::string_view word(std::size_t i) const {
    return i < all.size() && all[i].kind == TokenKind::word ? std::string_view(forms).substr(all[i].form, all[i].length) : std::string_view{};
  }
  void clear() {
    all.clear();
    numbers.clear();
    units.clear();
    forms.clear();
  }
};

// Reads `source` (UTF-8; other bytes are passed over) into `out`, whose memory is used again.
// `source` must outlive `out`. Linear in its length.
void read_tokens(std::string_view source, Tokens& out);

}  // namespace retort::calc
