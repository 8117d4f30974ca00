#include "quantity/exact.h"

#include <cmath>
#include <cstdlib>

namespace retort {
namespace {

mpz_class ten_to(unsigned n) {
  mpz_class out;
  mpz_ui_pow_ui(out.get_mpz_t(), 10, n);
  return out;
}

mpz_class whole_part(const Exact& value) {
  mpz_class out;
  mpz_tdiv_q(out.get_mpz_t(), value.get_num_mpz_t(), value.get_den_mpz_t());
  return out;
}

std::string superscript(int n) {
  static constexpr std::string_view kDigits[] = {"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074", "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
  std::string out = n < 0 ? "\u207B" : "";
  for (char c : std::to_string(std::abs(n))) out += kDigits[c - '0'];
  return out;
}

// Spaces between thousands, from five digits on.
std::string grouped(const std::string& digits) {
  if (digits.size() < 5) return digits;
  std::string out;
  for (std::size_t i = 0; i < digits.size(); ++i) {
    if (i > 0 && (digits.size() - i) % 3 == 0) out += ' ';
    out += digits[i];
  }
  return out;
}

}  // namespace

std::optional<Decimal> read_decimal(std::string_view digits) {
  Decimal out;
  std::string all;
  bool point = false;
  int places = 0;
  for (char c : digits) {
    if (c == '.') {
      if (point) return std::nullopt;
      point = true;
      continue;
    }
    if (c < '0' || c > '9') return std::nullopt;
    all += c;
    places += point ? 1 : 0;
  }
  if (all.empty() || all.size() > kMostDigits) return std::nullopt;
  std::size_t first = all.find_first_not_of('0');
  out.figures = first == std::string::npos ? 1 : static_cast<int>(all.size() - first);
  out.last_place = -places;
  if (!point && first != std::string::npos) out.trailing_zeros = static_cast<int>(all.size() - 1 - all.find_last_not_of('0'));
  out.value = Exact(mpz_class(all, 10), ten_to(static_cast<unsigned>(places)));
  out.value.canonicalize();
  return out;
}

std::optional<Decimal> scaled(const Decimal& number, int exponent) {
  if (std::abs(exponent) > kHighestExponent) return std::nullopt;
  Decimal out = number;
  out.value *= power_of_ten(exponent);
  out.last_place += exponent;
  out.trailing_zeros = 0;
  return out;
}

Exact power_of_ten(int exponent) {
  mpz_class power = ten_to(static_cast<unsigned>(std::abs(exponent)));
  return exponent >= 0 ? Exact(power) : Exact(mpz_class(1), power);
}

Exact exact(const Scale& scale) {
  Exact out(mpz_class(static_cast<long>(scale.numerator)), mpz_class(static_cast<long>(scale.denominator)));
  out.canonicalize();
  return out * power_of_ten(scale.exponent);
}

Exact exact(double value) {
  return Exact(value);
}

Exact rounded(const Exact& value, int place) {
  Exact half = value >= 0 ? Exact(1, 2) : Exact(-1, 2);
  return Exact(whole_part(value * power_of_ten(-place) + half)) * power_of_ten(place);
}

Exact cut(const Exact& value, int place) {
  return Exact(whole_part(value * power_of_ten(-place))) * power_of_ten(place);
}

int first_place(const Exact& value) {
  // Digits of numerator and denominator tell it to within one; the rest is tried.
  auto digits = [](const mpz_class& n) { return static_cast<int>(mpz_sizeinbase(n.get_mpz_t(), 10)); };
  Exact size = abs(value);
  int place = digits(size.get_num()) - digits(size.get_den()) + 1;
  while (power_of_ten(place) > size) --place;
  return place;
}

bool ends_by(const Exact& value, int place) {
  return Exact(value * power_of_ten(-place)).get_den() == 1;
}

std::string written_to_place(const Exact& value, int place) {
  Exact size = abs(rounded(value, place));
  std::string out = value < 0 && size != 0 ? "\u2212" : "";
  mpz_class units = Exact(size * power_of_ten(place < 0 ? -place : 0)).get_num();
  std::string digits = units.get_str();
  if (place >= 0) return out + grouped(digits);
  auto places = static_cast<std::size_t>(-place);
  if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
  return out + grouped(digits.substr(0, digits.size() - places)) + "." + digits.substr(digits.size() - places);
}

std::string written(const Exact& value, int figures) {
  if (value == 0) return "0";
  int first = first_place(value);
  Exact near = rounded(value, first - figures + 1);
  first = first_place(near);
  int place = first - figures + 1;
  if (first < 6 && first >= -3) return written_to_place(near, place < 0 ? place : 0 <= place ? place : 0);
  return written_to_place(near * power_of_ten(-first), 1 - figures) + " \u00D7 10" + superscript(first);
}

}  // namespace retort
