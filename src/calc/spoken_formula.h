// A formula that stands in names or symbols right before the numbers that go into it: "k = e/F = 0.15/6",
// "power is current times voltage so 2.3 × 12".
#pragma once
#include <vector>

#include "calc/facts.h"

namespace retort::calc {

// What each operand of the last such formula before token `begin` names, in its order; empty if there is none.
std::vector<std::vector<QuantityId>> spoken_formula(const Tokens& tokens, const FormulaBook& book, std::size_t begin);

}  // namespace retort::calc
