#include "results/student.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace retort::results {
namespace {

constexpr std::size_t kMostFreedom = 1000;

double log_choose(std::size_t n, std::size_t k) {
  auto log_factorial = [](std::size_t m) { return std::lgamma(static_cast<double>(m) + 1.0); };
  return log_factorial(n) - log_factorial(k) - log_factorial(n - k);
}

// The chance of just `runs` runs.
double runs_chance(std::size_t runs, std::size_t above, std::size_t below) {
  double all = log_choose(above + below, above);
  // how many ways there are to cut `n` points into `k` runs: n - 1 over k - 1
  auto cuts = [](std::size_t n, std::size_t k) { return k >= 1 && k <= n ? log_choose(n - 1, k - 1) : -INFINITY; };
  std::size_t half = runs / 2;
  if (runs % 2 == 0) return 2 * std::exp(cuts(above, half) + cuts(below, half) - all);
  return std::exp(cuts(above, half + 1) + cuts(below, half) - all) + std::exp(cuts(above, half) + cuts(below, half + 1) - all);
}

}  // namespace

double student_tail(double t, std::size_t freedom) {
  std::size_t n = std::min(freedom, kMostFreedom);
  double angle = std::atan(std::fabs(t) / std::sqrt(static_cast<double>(n)));
  double cosine = std::cos(angle);
  bool odd = n % 2 == 1;
  double term = odd ? cosine : 1.0;
  double sum = n == 1 ? 0.0 : term;
  for (std::size_t k = odd ? 3 : 2; k + 2 <= n; k += 2) {
    auto top = static_cast<double>(k - 1);
    term *= top / (top + 1) * cosine * cosine;
    sum += term;
  }
  double within = odd ? 2 / std::numbers::pi * (angle + std::sin(angle) * sum) : std::sin(angle) * sum;
  return std::clamp(1.0 - within, 0.0, 1.0);
}

double student_quantile(double chance, std::size_t freedom) {
  double low = 0.0;
  double high = 1.0;
  while (student_tail(high, freedom) > chance && high < 1e12) high *= 2;
  for (int i = 0; i < 100; ++i) {
    double middle = (low + high) / 2;
    (student_tail(middle, freedom) > chance ? low : high) = middle;
  }
  return (low + high) / 2;
}

double runs_tail(std::size_t runs, std::size_t above, std::size_t below) {
  if (above == 0 || below == 0) return 1.0;
  double sum = 0.0;
  for (std::size_t r = 2; r <= runs; ++r) sum += runs_chance(r, above, below);
  return std::min(sum, 1.0);
}

}  // namespace retort::results
