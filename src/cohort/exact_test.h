// Whether two shares differ by more than chance explains, and how to ask that many times over.
#pragma once
#include <vector>

#include "cohort/count.h"

namespace retort::cohort {

// The two-sided exact test of a fourfold table with rows (a, b) and (c, d): the chance, when all four margins are given, of a
// table that is no more likely than this one. R. A. Fisher, "The Design of Experiments" (1935), chapter II, and Statistical
// Methods for Research Workers, 5th edition (1934), section 21.02. Tables count as equally likely within a factor of
// 1 + 10^-7, so that rounding does not part them. 1 if a margin is 0. Time grows with the root of the counts.
double fisher_exact(Count a, Count b, Count c, Count d);

// Chances of many tests, raised so that the chance of any false alarm among them all stays below the limit they are held
// against. S. Holm, "A simple sequentially rejective multiple test procedure", Scandinavian Journal of Statistics 6 (1979)
// 65-70. In the order of the input.
std::vector<double> holm(const std::vector<double>& chances);

}  // namespace retort::cohort
