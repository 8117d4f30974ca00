// What was found out about one calculation in a text.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/span.h"

namespace retort::calc {

// right: the stated result is the exact value rounded to the figures stated.
enum class Verdict : std::uint8_t { right, wrong, unclear };

// The likely cause of a wrong result.
enum class Slip : std::uint8_t { arithmetic, power_of_ten, upside_down, operation, square, rounding, angle_mode, count, unit_wrong, chain };

// On a right result.
enum class Remark : std::uint8_t { unit_missing, too_many_figures, too_few_figures };

// Why a result cannot be judged.
enum class Doubt : std::uint8_t { none, divides_by_zero, no_value, too_large, value_missing };

struct Calculation {
  Span span;    // the whole of it, in the source text
  Span result;  // the stated number
  Verdict verdict = Verdict::unclear;
  std::vector<Slip> slips;      // of a wrong one; the likeliest first
  std::vector<Remark> remarks;  // of a right one
  Doubt doubt = Doubt::none;
  std::string correct;  // the correct value with its unit; empty if it is not known
  std::string formula;  // the formula of the book that was used; empty if none
};

// "power-of-ten", as in the JSON.
std::string_view name(Verdict verdict);
std::string_view name(Slip slip);
std::string_view name(Remark remark);

}  // namespace retort::calc
