#include "results/statistics.h"

#include <algorithm>
#include <vector>

namespace retort::results {
namespace {

// The sum of (x - mean x)(y - mean y).
Twofold sum_of_products(std::span<const Twofold> x, std::span<const Twofold> y) {
  Twofold x_mean = mean(x);
  Twofold y_mean = mean(y);
  Twofold sum;
  for (std::size_t i = 0; i < x.size(); ++i) sum += (x[i] - x_mean) * (y[i] - y_mean);
  return sum;
}

}  // namespace

Twofold mean(std::span<const Twofold> values) {
  Twofold sum;
  for (Twofold value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

Twofold standard_deviation(std::span<const Twofold> values) {
  if (values.size() < 2) return {};
  return sqrt(sum_of_products(values, values) / static_cast<double>(values.size() - 1));
}

Twofold correlation(std::span<const Twofold> x, std::span<const Twofold> y) {
  if (x.empty()) return {};
  Twofold below = sqrt(sum_of_products(x, x)) * sqrt(sum_of_products(y, y));
  return below.high == 0 ? Twofold() : sum_of_products(x, y) / below;
}

Twofold median(std::span<const Twofold> values) {
  std::vector<Twofold> sorted(values.begin(), values.end());
  std::sort(sorted.begin(), sorted.end());
  std::size_t half = sorted.size() / 2;
  return sorted.size() % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2.0;
}

}  // namespace retort::results
