// Random numbers that are the same on every machine for the same seed.
#pragma once
#include <cstdint>
#include <vector>

#include "cohort/count.h"

namespace retort::cohort {

// SplitMix64: G. L. Steele, D. Lea and C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014.
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}
  std::uint64_t next();
  // 0 <= x < 1, in steps of 2^-53.
  double fraction();
  // How many of `of` come up when each does with chance `chance` (0 to 1). By inversion from the likeliest number outwards;
  // time grows with the root of `of`.
  Count binomial(Count of, double chance);
  // `sum(counts)` draws with replacement from what `counts` holds: a new count for each, with the same sum.
  void redraw(const std::vector<Count>& counts, std::vector<Count>& out);

 private:
  std::uint64_t state_;
};

}  // namespace retort::cohort
