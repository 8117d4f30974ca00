// One number as it stands in a cell, and the way between exact numbers and those that fits are made with.
#pragma once
#include <optional>
#include <string_view>

#include "quantity/exact.h"
#include "results/twofold.h"

namespace retort::results {

enum class Comma { decimal, thousands };

struct NumberReading {
  Decimal number;
  std::string_view rest;  // what comes after it, without the space between
};

// Reads "1.5", "-0,25", "1 200", "3.0e-2", "3 × 10⁸" at the start of `text` (UTF-8). Nothing if there is no number, or
// one of more than 30 digits or outside 1e-30 to 1e30: no reading has that. Linear in what it reads.
std::optional<NumberReading> read_number(std::string_view text, Comma comma);

// To 31 digits. Requires a number from 1e-120 to 1e120, or 0.
Twofold to_twofold(const Exact& value);
// The nearest double.
double to_double(const Exact& value);
// To 25 significant digits, so that a half that a fit missed by its last digits is a half again. Requires a finite value.
Exact to_exact(Twofold value);

}  // namespace retort::results
