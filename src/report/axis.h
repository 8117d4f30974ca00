// The scale of a graph's axis, as it is drawn on graph paper: steps of 1, 2 or 5 × 10ⁿ, the points over more than half of it.
#pragma once
#include <string>
#include <vector>

namespace retort {

struct Axis {
  double low = 0.0;    // at the first tick
  double high = 1.0;   // at the last tick
  double step = 1.0;   // between ticks
  int place = 0;       // power of ten of the tick labels' last digit

  [[nodiscard]] std::vector<double> ticks() const;
  [[nodiscard]] std::string label(double tick) const;
  // Where `value` stands on the axis: 0 at `low`, 1 at `high`.
  [[nodiscard]] double at(double value) const { return (value - low) / (high - low); }
};

enum class Zero {
  show,
  if_room,  // if the points then fill more than half of the axis
  as_comes,
};

// An axis that holds `low` to `high` with at most `most` steps. Requires finite low <= high; the steps are never 0.
Axis make_axis(double low, double high, Zero zero, int most);

}  // namespace retort
