// Counts of answers. Adding them is exact in any order.
#pragma once
#include <cstdint>

namespace retort::cohort {

using Count = std::uint64_t;

// The largest count that is read from a file. Sums of many of these, and products of two, stay within their types.
inline constexpr Count kMostAnswers = 10'000'000'000;

}  // namespace retort::cohort
