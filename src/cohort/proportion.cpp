#include "cohort/proportion.h"

#include <algorithm>
#include <cmath>

namespace retort::cohort {

Interval wilson(Count count, Count of, double z) {
  if (of == 0) return {};
  double n = static_cast<double>(of);
  double p = static_cast<double>(count) / n;
  double z2 = z * z;
  double middle = (p + z2 / (2 * n)) / (1 + z2 / n);
  double half = z / (1 + z2 / n) * std::sqrt(p * (1 - p) / n + z2 / (4 * n * n));
  // At the ends the formula gives 0 and 1 but for rounding.
  return {count == 0 ? 0.0 : std::max(0.0, middle - half), count == of ? 1.0 : std::min(1.0, middle + half)};
}

Share share(Count count, Count of) {
  return {count, of, of == 0 ? 0.0 : static_cast<double>(count) / static_cast<double>(of), wilson(count, of)};
}

}  // namespace retort::cohort
