// Whether a marker becomes stricter or more generous along a pile.
#pragma once
#include <cstdint>
#include <optional>

#include "cohort/count.h"
#include "cohort/proportion.h"

namespace retort::cohort {

inline constexpr std::int64_t kMostPosition = 10'000'000;

// Sums over the answers of a marker whose place in the pile is known. x is the place; y is twice the mark less the lower and
// the upper end of the indicated range, a whole number of half marks. The sums are exact, so they add up in any order.
struct DriftSums {
  __extension__ using Wide = unsigned __int128;  // sums wrap round rather than overflow; real piles are far from that

  Count n = 0;
  std::int64_t first = 0;  // the lowest and the highest place; meaningless if n is 0
  std::int64_t last = 0;
  std::int64_t y = 0;
  Count yy = 0;
  Wide x = 0, xx = 0, xy = 0;  // xy is signed, as a two's complement

  // Requires 0 <= place <= kMostPosition.
  void add(std::int64_t place, int mark, int low, int high);
  void add(const DriftSums& other);
  friend bool operator==(const DriftSums&, const DriftSums&) = default;
};

struct Drift {
  Count answers = 0;
  double change = 0.0;  // in marks, from the first place to the last: above 0 is more generous at the end
  Interval interval;    // 95 %
  [[nodiscard]] bool beyond_chance() const { return interval.low > 0 || interval.high < 0; }
};

inline constexpr Count kFewestForDrift = 10;

// The straight line of least squares through the differences, times the length of the pile, with Student's t. None with fewer
// than kFewestForDrift answers, or all at the same place.
std::optional<Drift> drift(const DriftSums& sums);

}  // namespace retort::cohort
