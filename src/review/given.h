// What a rubric's question gives to calculations: values with their names and units, results to be expected,
// formulas of its own.
#pragma once
#include <memory>

#include "calc/calculations.h"
#include "rubric/rubric.h"

namespace retort {

// Faults (an unknown quantity or unit) go to `findings` with their place in the rubric's file.
calc::Given given_for_calculations(const Rubric& rubric, const calc::FormulaBook& book, Findings& findings);

// `book` with the rubric's own formulas besides; null if it has none.
std::shared_ptr<const calc::FormulaBook> with_own_formulas(const calc::FormulaBook& book, const Rubric& rubric, Findings& findings);

}  // namespace retort
