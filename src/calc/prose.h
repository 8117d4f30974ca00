// Calculations that a text does in words, with no expression written: "the frequency was 8 Hz and the
// wavelength 2.5 cm so the speed is 0.2 m/s", means of listed readings, changes, proportion.
#pragma once
#include <vector>

#include "calc/judge.h"

namespace retort::calc {

// Whether any number stands behind words that say it was worked out.
bool may_hold_results(const Tokens& tokens, const std::vector<Fact>& facts);

// Appends the calculations found outside `taken`.
void find_in_prose(const Tokens& tokens, const FormulaBook& book, const std::vector<Fact>& facts, const Judge& judge, const std::vector<Span>& taken,
                   std::vector<Calculation>& out);

}  // namespace retort::calc
