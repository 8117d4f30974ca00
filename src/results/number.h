// One number as it stands in a cell: its exact value, and how it was written.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "results/twofold.h"

namespace retort {

struct Number {
  Twofold value;
  int places = 0;   // decimal places written; below 0 for "3 × 10^5"
  int figures = 0;  // significant figures written; zeros in front do not count
};

enum class Comma { decimal, thousands };

struct NumberReading {
  Number number;
  std::string_view rest;  // what comes after it, without the space between
};

// Reads "1.5", "-0,25", "1 200", "3.0e-2", "3 × 10⁸" at the start of `text`. Nothing if there is no number, or one of more
// than 30 digits or outside 1e-30 to 1e30. `text` is UTF-8; linear in what it reads.
std::optional<NumberReading> read_number(std::string_view text, Comma comma);

// `value` rounded to `places` decimal places, halves away from zero, as taught. Below 0: to tens, hundreds, …
Twofold rounded(Twofold value, int places);
// The same as text with just so many places: "2.40". Negative places give zeros before the point. A minus sign is U+2212.
std::string fixed_text(Twofold value, int places);

// The decimal places that leave `value` with `figures` significant figures. Zero has `figures - 1`.
int places_for(Twofold value, int figures);
// With so many significant figures; in standard form ("1.2 × 10⁵") if it is very large or small.
std::string figures_text(Twofold value, int figures);

// The same number with another number of significant figures lost or kept: value × factor, figures as they were.
Number scaled(const Number& number, Twofold factor);

}  // namespace retort
