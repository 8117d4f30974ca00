// What a statement works out, by the name before its first sign of equality.
#pragma once
#include "calc/facts.h"

namespace retort::calc {

// The first sign of equality of the statement that has one at token `at`: of "KE = ½mv² = 0.9" the one behind "KE".
std::size_t first_sign_from(const Tokens& tokens, std::size_t at);

// Whether a number belongs to a formula in symbols: "½mv²", "2gh".
bool is_symbolic_number(const Tokens& tokens, std::size_t i);

}  // namespace retort::calc
