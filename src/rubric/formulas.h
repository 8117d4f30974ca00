// Reads the book of formulas (formulas.json): quantities, formulas between them, constants.
#pragma once
#include <string>
#include <string_view>

#include "base/finding.h"
#include "calc/formula.h"

namespace retort {

constexpr std::string_view kFormulasFile = "formulas.json";

// Adds what `source` holds to `book`; faults go to `findings` with their place in `file`, and what is
// sound is added all the same.
void load_formulas(std::string_view source, const std::string& file, calc::FormulaBook& book, Findings& findings);

}  // namespace retort
