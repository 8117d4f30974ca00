// Calculations for a terminal.
#pragma once
#include <string>
#include <vector>

#include "calc/calculation.h"
#include "intake/answer.h"

namespace retort {

// Appends one block for each calculation: the pupil's own words, the verdict, and what to do.
void append_calculations(std::string_view text, const std::vector<calc::Calculation>& calculations, std::size_t width, std::string& out);

// The same under the answer's name, or that there is none.
void append_calculations_text(const Answer& answer, const std::vector<calc::Calculation>& calculations, std::size_t width, std::string& out);

}  // namespace retort
