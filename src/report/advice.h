// One sentence for a pupil on a calculation: what went wrong, and what to do.
#pragma once
#include <string>
#include <string_view>

#include "base/finding.h"
#include "calc/calculation.h"

namespace retort {

// Empty for a right one with nothing to say about it.
std::string advice(const calc::Calculation& calculation);

// What went wrong in a slip named as in JSON ("power-of-ten"); `slip` itself if there is none of that name.
std::string slip_words(std::string_view slip);
// The message that says what this slip is.
Code slip_code(calc::Slip slip);

}  // namespace retort
