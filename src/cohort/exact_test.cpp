#include "cohort/exact_test.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace retort::cohort {
namespace {

constexpr double kAlike = 1 + 1e-7;
constexpr double kNegligible = 1e-17;  // of the sum so far

double log_choose(double n, double k) {
  return std::lgamma(n + 1) - std::lgamma(k + 1) - std::lgamma(n - k + 1);
}

// The hypergeometric distribution of the first cell: `drawn` out of `total`, of which `marked` are of the kind counted.
class FirstCell {
 public:
  FirstCell(Count marked, Count drawn, Count total)
      : marked_(static_cast<double>(marked)),
        drawn_(static_cast<double>(drawn)),
        total_(static_cast<double>(total)),
        scale_(log_choose(total_, drawn_)),
        low_(marked + drawn > total ? marked + drawn - total : 0),
        high_(std::min(marked, drawn)) {}

  [[nodiscard]] Count low() const { return low_; }
  [[nodiscard]] Count high() const { return high_; }
  [[nodiscard]] Count mode() const {
    auto at = static_cast<Count>((marked_ + 1) * (drawn_ + 1) / (total_ + 2));
    return std::clamp(at, low_, high_);
  }
  [[nodiscard]] double chance(Count at) const {
    double k = static_cast<double>(at);
    return std::exp(log_choose(marked_, k) + log_choose(total_ - marked_, drawn_ - k) - scale_);
  }
  // chance(at + 1) / chance(at)
  [[nodiscard]] double up(Count at) const {
    double k = static_cast<double>(at);
    return (marked_ - k) * (drawn_ - k) / ((k + 1) * (total_ - marked_ - drawn_ + k + 1));
  }

  // The sum of the chances from `at` up to the end, where they fall.
  [[nodiscard]] double upper(Count at) const {
    double term = chance(at);
    double sum = term;
    for (; at < high_ && term > sum * kNegligible; ++at) {
      term *= up(at);
      sum += term;
    }
    return sum;
  }
  [[nodiscard]] double lower(Count at) const {
    double term = chance(at);
    double sum = term;
    for (; at > low_ && term > sum * kNegligible; --at) {
      term /= up(at - 1);
      sum += term;
    }
    return sum;
  }

 private:
  double marked_, drawn_, total_, scale_;
  Count low_, high_;
};

// The first place from `from` to `to` where `there` begins to hold; to + 1 if nowhere. It must not stop holding.
template <typename There>
Count first_where(Count from, Count to, const There& there) {
  Count end = to + 1;
  while (from < end) {
    Count middle = from + (end - from) / 2;
    if (there(middle))
      end = middle;
    else
      from = middle + 1;
  }
  return from;
}

}  // namespace

double fisher_exact(Count a, Count b, Count c, Count d) {
  if (a + b == 0 || c + d == 0 || a + c == 0 || b + d == 0) return 1.0;
  FirstCell cell(a + c, a + b, a + b + c + d);
  double limit = cell.chance(a) * kAlike;
  Count mode = cell.mode();
  if (cell.chance(mode) <= limit) return 1.0;
  double sum = 0.0;
  Count above = first_where(mode, cell.high(), [&](Count at) { return cell.chance(at) <= limit; });
  if (above <= cell.high()) sum += cell.upper(above);
  // The same going down, counted as steps below the mode.
  Count room = mode - cell.low();
  Count below = first_where(0, room, [&](Count steps) { return cell.chance(mode - steps) <= limit; });
  if (below <= room) sum += cell.lower(mode - below);
  return std::min(sum, 1.0);
}

std::vector<double> holm(const std::vector<double>& chances) {
  std::vector<std::size_t> order(chances.size());
  std::iota(order.begin(), order.end(), 0U);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return chances[a] < chances[b]; });
  std::vector<double> out(chances.size());
  double least = 0.0;
  for (std::size_t i = 0; i < order.size(); ++i) {
    least = std::max(least, std::min(1.0, chances[order[i]] * static_cast<double>(order.size() - i)));
    out[order[i]] = least;
  }
  return out;
}

}  // namespace retort::cohort
