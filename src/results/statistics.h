// Mean, standard deviation and correlation of readings, in Twofold arithmetic so that no digit of the readings is lost.
// The two-pass formulas: mean first, then sums of squared differences from it.
#pragma once
#include <span>

#include "results/twofold.h"

namespace retort::results {

// Requires at least one value.
Twofold mean(std::span<const Twofold> values);
// Of a sample: with n - 1. Zero for fewer than two values.
Twofold standard_deviation(std::span<const Twofold> values);
// Pearson's r; zero if one of the two does not vary. Requires as many x as y.
Twofold correlation(std::span<const Twofold> x, std::span<const Twofold> y);
// The middle value, or the mean of the two in the middle. Requires at least one value.
Twofold median(std::span<const Twofold> values);

}  // namespace retort::results
