// Decimals of any length as other programs print them: "1.602176634e-19", "0.0333", "-12".
#pragma once
#include <optional>
#include <string>

#include "quantity/exact.h"

namespace retort::test {

inline std::optional<Exact> printed_number(std::string text) {
  bool negative = !text.empty() && text[0] == '-';
  if (negative) text.erase(0, 1);
  int exponent = 0;
  if (std::size_t e = text.find_first_of("eE"); e != std::string::npos) {
    exponent = std::atoi(text.c_str() + e + 1);
    text.resize(e);
  }
  std::size_t point = text.find('.');
  if (point != std::string::npos) {
    exponent -= static_cast<int>(text.size() - point - 1);
    text.erase(point, 1);
  }
  bool digits = !text.empty() && text.find_first_not_of("0123456789") == std::string::npos;
  if (!digits || exponent > kHighestExponent || exponent < -kHighestExponent) return std::nullopt;
  Exact value = Exact(mpz_class(text, 10)) * power_of_ten(exponent);
  return negative ? Exact(-value) : value;
}

// Whether two values are equal to one part in `parts`.
inline bool near(const Exact& a, const Exact& b, const Exact& parts) { return abs(a - b) * parts <= std::max(Exact(abs(a)), Exact(abs(b))); }

}  // namespace retort::test
