// Small questions that the files judge*.cpp share.
#pragma once
#include <algorithm>

#include "calc/judge.h"

namespace retort::calc {

// Numbers that formulas and means are full of, and that need no unit.
inline bool may_be_pure(const Leaf& leaf) {
  if (leaf.unit) return false;
  if (leaf.figures == 0) return true;
  const Exact& v = leaf.value;
  return v == Exact(1, 2) || v == 2 || v == 3 || v == 4 || v == 10 || v == 100 || v == 1000 || v == 60 || v == 1 || v == Exact(157, 50) ||
         v == Exact(1571, 500);
}
inline bool is_formula_constant(const Leaf& leaf) {
  return !leaf.unit && (leaf.figures == 0 || leaf.value == Exact(1, 2) || leaf.value == Exact(157, 50) || leaf.value == Exact(1571, 500));
}

inline bool unknown_are_pure(const Expression& e, bool strict) {
  return std::all_of(e.leaves.begin(), e.leaves.end(),
                     [&](const Leaf& leaf) { return leaf.unit || leaf.source.empty() || (strict ? is_formula_constant(leaf) : may_be_pure(leaf)); });
}

inline bool is_percent(const std::optional<CompoundUnit>& unit) {
  return unit && unit->symbol == "%";
}

inline bool has_hundred(const Expression& e) {
  return std::any_of(e.leaves.begin(), e.leaves.end(), [](const Leaf& leaf) { return leaf.value == 100; });
}

inline Exact scale_of(const Stated& stated) {
  return stated.unit ? exact(stated.unit->scale) : Exact(1);
}

inline std::string unit_of(const Stated& stated) {
  return stated.unit ? stated.unit->symbol : std::string();
}

}  // namespace retort::calc
