#include "cohort/drift.h"

#include <algorithm>
#include <cmath>

#include "results/student.h"

namespace retort::cohort {
namespace {
__extension__ using Signed = __int128;

Signed as_signed(DriftSums::Wide value) {
  return static_cast<Signed>(value);
}
DriftSums::Wide wide(std::int64_t value) {
  return static_cast<DriftSums::Wide>(static_cast<Signed>(value));
}

}  // namespace

void DriftSums::add(std::int64_t place, int mark, int low, int high) {
  std::int64_t half_marks = 2 * static_cast<std::int64_t>(mark) - low - high;
  DriftSums one;
  one.n = 1;
  one.first = one.last = place;
  one.y = half_marks;
  one.yy = static_cast<Count>(half_marks * half_marks);
  one.x = static_cast<Wide>(place);
  one.xx = static_cast<Wide>(place) * static_cast<Wide>(place);
  one.xy = static_cast<Wide>(static_cast<Signed>(place) * half_marks);
  add(one);
}

void DriftSums::add(const DriftSums& other) {
  if (other.n == 0) return;
  first = n == 0 ? other.first : std::min(first, other.first);
  last = n == 0 ? other.last : std::max(last, other.last);
  n += other.n;
  y = static_cast<std::int64_t>(static_cast<std::uint64_t>(y) + static_cast<std::uint64_t>(other.y));
  yy += other.yy;
  x += other.x;
  xx += other.xx;
  xy += other.xy;
}

std::optional<Drift> drift(const DriftSums& sums) {
  if (sums.n < kFewestForDrift) return std::nullopt;
  // Exact up to here: n times the sums of squares about the means. Wrapping sums cannot overflow.
  DriftSums::Wide n = sums.n;
  DriftSums::Wide y = wide(sums.y);
  auto sxx = static_cast<double>(as_signed(n * sums.xx - sums.x * sums.x));
  auto sxy = static_cast<double>(as_signed(n * sums.xy - sums.x * y));
  auto syy = static_cast<double>(as_signed(n * sums.yy - y * y));
  if (!(sxx > 0)) return std::nullopt;
  double freedom = static_cast<double>(sums.n) - 2;
  double slope = sxy / sxx;
  double variance = std::max(0.0, syy - slope * sxy) / freedom / sxx;
  double half_marks_per_pile = static_cast<double>(sums.last - sums.first) / 2;
  double change = slope * half_marks_per_pile;
  double reach = results::student_quantile(0.05, static_cast<std::size_t>(freedom)) * std::sqrt(variance) * half_marks_per_pile;
  return Drift{sums.n, change, {change - reach, change + reach}};
}

}  // namespace retort::cohort
