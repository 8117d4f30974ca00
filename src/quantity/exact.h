// Numbers without rounding error: rationals of any size, and decimals that remember how they were written.
// The arithmetic is GMP's; only this folder includes it by name.
#pragma once
#include <gmpxx.h>

#include <optional>
#include <string>
#include <string_view>

#include "quantity/compound.h"

namespace retort {

using Exact = mpq_class;

// A number as written: its value, its significant figures, and the power of ten of its last digit.
struct Decimal {
  Exact value;
  int figures = 0;         // significant figures; trailing zeros of a whole number count ("20": 2)
  int last_place = 0;      // "0.15": -2; "20": 0; "3.0 × 10^8": 7
  int trailing_zeros = 0;  // of a whole number: "12 000": 3
};

// Limits that keep every number small: what goes beyond them is no measurement.
constexpr int kMostDigits = 40;
constexpr int kHighestExponent = 300;

// "12", "0.15", ".5"; digits and one point alone. Nothing if it is anything else or has too many digits.
std::optional<Decimal> read_decimal(std::string_view digits);
// `number` × 10^exponent; nothing beyond the limits.
std::optional<Decimal> scaled(const Decimal& number, int exponent);

Exact power_of_ten(int exponent);  // |exponent| ≤ 4 × kHighestExponent
Exact exact(const Scale& scale);
Exact exact(double value);  // requires a finite value

// `value` rounded to the place 10^place, halves away from zero (the rule taught in schools).
Exact rounded(const Exact& value, int place);
// `value` cut off at the place 10^place, towards zero.
Exact cut(const Exact& value, int place);
// The power of ten of the first digit of `value`: 0.037 → -2. Requires value ≠ 0.
int first_place(const Exact& value);
// Whether `value` has no digits behind the place 10^place.
bool ends_by(const Exact& value, int place);

// `value` to `figures` significant figures, in plain digits with a space between thousands, or as
// "1.2 × 10⁶" from a million on and below a thousandth.
std::string written(const Exact& value, int figures);
// With the last digit at 10^place.
std::string written_to_place(const Exact& value, int place);

}  // namespace retort
