// One sentence for a pupil on a calculation: what went wrong, and what to do.
#pragma once
#include <string>

#include "calc/calculation.h"

namespace retort {

// Empty for a right one with nothing to say about it.
std::string advice(const calc::Calculation& calculation);

}  // namespace retort
