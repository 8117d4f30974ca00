#include "calc/settle_units.h"

#include <algorithm>
#include <string_view>

namespace retort::calc {
namespace {

// Whether the text is about heat ("degrees", "20 C" are temperatures) and not about rays.
bool about_heat(const Tokens& tokens) {
  bool heat = false;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    TokenKind kind = tokens.kind(i);
    if (kind >= TokenKind::sine && kind <= TokenKind::arctangent) return false;
    std::string_view word = tokens.word(i);
    if (word.starts_with("angle") || word == "ray" || word.starts_with("refract") || word.starts_with("reflect") || word.starts_with("inciden") ||
        word == "charge" || word.starts_with("coulomb"))
      return false;
    heat = heat || word.starts_with("temp") || word.starts_with("heat") || word.starts_with("cool") || word.starts_with("warm") || word == "hot" ||
           word.starts_with("thermom") || word == "shc" || word == "water";
  }
  return heat;
}

template <typename Is>
bool any_word(const Tokens& tokens, const Is& is) {
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (is(tokens.word(i))) return true;
  }
  return false;
}

bool about_moments(const Tokens& tokens) {
  return any_word(tokens, [](std::string_view word) { return word.starts_with("moment") && word != "momentum"; });
}

bool about_solutions(const Tokens& tokens) {
  return any_word(tokens, [](std::string_view word) {
    return word.starts_with("mol") || word.starts_with("conc") || word.starts_with("acid") || word.starts_with("alkali") ||
           word.starts_with("solution") || word == "sugar" || word == "salt" || word == "hcl" || word == "naoh" || word.ends_with("oxide") ||
           word.ends_with("ose");
  });
}

bool has(const Number& number, std::string_view symbol) {
  return number.unit && number.unit->symbol == symbol;
}
bool has_degrees(const Number& number) {
  return has(number, "\u00B0") || has(number, "C");
}

// "0.1 M": read as metres with a wrong capital.
bool has_capital_m(const Tokens& tokens, const Number& number) {
  if (!has(number, "m") || number.unit->as_written) return false;
  std::size_t letter = tokens.source.find_first_not_of(' ', number.digits.end);
  return letter != std::string_view::npos && tokens.source[letter] == 'M';
}

}  // namespace

void settle_units(Tokens& tokens) {
  auto any = [&](const auto& is) { return std::any_of(tokens.numbers.begin(), tokens.numbers.end(), is); };
  auto replace = [&](const auto& is, std::string_view unit) {
    for (Number& number : tokens.numbers) {
      if (is(number)) number.unit = read_unit(unit);
    }
  };
  auto nanometres = [](const Number& number) { return has(number, "nm"); };
  auto capital_m = [&](const Number& number) { return has_capital_m(tokens, number); };
  if (any(nanometres) && about_moments(tokens)) replace(nanometres, "N m");
  if (any(capital_m) && about_solutions(tokens)) replace(capital_m, "mol/dm3");
  if (any(has_degrees) && about_heat(tokens)) replace(has_degrees, "\u00B0C");
}

}  // namespace retort::calc
