// Pairs of marks that two markers gave to the same answers, counted.
#pragma once
#include <map>
#include <utility>

#include "cohort/count.h"

namespace retort::cohort {

inline constexpr int kMostMark = 100;

// (first marker's mark, second marker's mark) → answers. Entries of 0 are not kept.
using Crosstab = std::map<std::pair<int, int>, Count>;

inline Count total(const Crosstab& table) {
  Count sum = 0;
  for (const auto& [marks, count] : table) sum += count;
  return sum;
}

}  // namespace retort::cohort
