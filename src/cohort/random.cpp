#include "cohort/random.h"

#include <cmath>
#include <numeric>

namespace retort::cohort {

std::uint64_t Random::next() {
  state_ += 0x9E3779B97F4A7C15U;
  std::uint64_t z = state_;
  z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
  z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
  return z ^ (z >> 31U);
}

double Random::fraction() {
  return static_cast<double>(next() >> 11U) * 0x1.0p-53;
}

Count Random::binomial(Count of, double chance) {
  if (of == 0 || chance <= 0) return 0;
  if (chance >= 1) return of;
  double n = static_cast<double>(of);
  double odds = chance / (1 - chance);
  auto mode = static_cast<Count>((n + 1) * chance);
  if (mode > of) mode = of;
  double k = static_cast<double>(mode);
  double up = std::exp(std::lgamma(n + 1) - std::lgamma(k + 1) - std::lgamma(n - k + 1) + k * std::log(chance) + (n - k) * std::log1p(-chance));
  double down = up;
  Count high = mode;
  Count low = mode;
  double left = fraction() - up;
  while (left >= 0 && (high < of || low > 0)) {
    if (high < of) {
      up *= odds * static_cast<double>(of - high) / static_cast<double>(high + 1);
      ++high;
      left -= up;
      if (left < 0) return high;
    }
    if (low > 0) {
      down *= static_cast<double>(low) / (odds * static_cast<double>(of - low + 1));
      --low;
      left -= down;
      if (left < 0) return low;
    }
    if (up < 1e-18 && down < 1e-18) break;  // what is left is rounding
  }
  return mode;
}

void Random::redraw(const std::vector<Count>& counts, std::vector<Count>& out) {
  Count kinds_left = std::accumulate(counts.begin(), counts.end(), Count{0});
  Count draws_left = kinds_left;
  out.assign(counts.size(), 0);
  for (std::size_t i = 0; i < counts.size() && draws_left > 0; ++i) {
    double chance = static_cast<double>(counts[i]) / static_cast<double>(kinds_left);
    out[i] = counts[i] == kinds_left ? draws_left : binomial(draws_left, chance);
    draws_left -= out[i];
    kinds_left -= counts[i];
  }
}

}  // namespace retort::cohort
