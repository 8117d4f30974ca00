#include "report/axis.h"

#include <algorithm>
#include <cmath>

#include "quantity/exact.h"

namespace retort {
namespace {

constexpr double kSlack = 1e-9;

struct Step {
  double size = 1.0;
  int place = 0;  // of its digit
};

// The least 1, 2 or 5 × 10ⁿ that is at least `size`.
Step step_from(double size) {
  int power = static_cast<int>(std::floor(std::log10(size)));
  for (;; ++power) {
    for (double digit : {1.0, 2.0, 5.0}) {
      double step = power < 0 ? digit / std::pow(10.0, -power) : digit * std::pow(10.0, power);
      if (step >= size * (1 - kSlack)) return {step, power};
    }
  }
}

Axis axis_of(double low, double high, Step step) {
  Axis out;
  out.step = step.size;
  out.place = step.place;
  out.low = std::floor(low / step.size + kSlack) * step.size;
  out.high = std::ceil(high / step.size - kSlack) * step.size;
  if (out.high <= out.low) out.high = out.low + step.size;
  return out;
}

}  // namespace

std::vector<double> Axis::ticks() const {
  auto count = static_cast<long>(std::lround((high - low) / step));
  std::vector<double> out;
  for (long i = 0; i <= std::min(count, 100L); ++i) out.push_back(low + static_cast<double>(i) * step);
  return out;
}

std::string Axis::label(double tick) const {
  // the exact tick, not its binary neighbour
  Exact value = rounded(exact(tick), place);
  double size = std::max(std::fabs(low), std::fabs(high));
  if (size < 1e7 && size >= 1e-3) return written_to_place(value, place);
  return value == 0 ? "0" : written(value, std::max(1, first_place(value) - place + 1));
}

namespace {

Axis axis_over(double low, double high, int most) {
  if (low == high) {
    double room = low == 0 ? 1.0 : std::fabs(low) / 10;
    low -= room;
    high += room;
  }
  Axis out = axis_of(low, high, step_from((high - low) / most));
  while (std::lround((out.high - out.low) / out.step) > most) out = axis_of(low, high, step_from(out.step * 1.5));
  return out;
}

}  // namespace

Axis make_axis(double low, double high, Zero zero, int most) {
  if (zero == Zero::as_comes) return axis_over(low, high, most);
  Axis with_zero = axis_over(std::min(low, 0.0), std::max(high, 0.0), most);
  bool filled = with_zero.at(high) - with_zero.at(low) > 0.5;
  return zero == Zero::show || filled ? with_zero : axis_over(low, high, most);
}

}  // namespace retort
