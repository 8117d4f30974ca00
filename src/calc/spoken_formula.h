// A formula that stands in names or symbols right before the numbers that go into it: "k = e/F = 0.15/6",
// "power is current times voltage so 2.3 × 12".
#pragma once
#include <vector>

#include "calc/facts.h"

namespace retort::calc {

struct SpokenFormula {
  std::vector<std::vector<QuantityId>> operands;  // what each names, in order; empty if there is no such formula
  std::size_t begin = 0;                          // its first token
};

// The last such formula before token `begin`.
SpokenFormula spoken_formula(const Tokens& tokens, const FormulaBook& book, std::size_t begin);

// The expression in symbols that ends right before the sign of equality at token `sign` ("(v - u)/t = "), its
// operands as leaves without values; nothing if it is not one that can be read.
std::optional<Expression> symbolic_expression(const Tokens& tokens, const FormulaBook& book, std::size_t sign);

}  // namespace retort::calc
