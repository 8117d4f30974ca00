// The line in a pupil's terms: gradient and intercept with units and sensible figures, two points far apart on the line to
// read the gradient from, and the constant that the gradient stands for.
#pragma once
#include <optional>
#include <string>

#include "results/line.h"
#include "results/readings.h"

namespace retort::results {

// A number as it should be written, with its unit.
struct Written {
  Twofold value;
  int figures = 2;      // significant figures that the readings bear out
  std::string text;     // "0.025"
  std::string unit;     // "m/N"; empty if there is none

  [[nodiscard]] std::string with_unit() const;  // "0.025 m/N"; no space before °
};

struct PointOnLine {
  std::string x;  // as read from the graph
  std::string y;
  double x_value = 0.0;
  double y_value = 0.0;
};

struct Constant {
  std::string name;
  std::string stands_for;
  ConstantFrom from{};
  Written value;
};

struct Gradient {
  Written gradient;
  Written intercept;
  std::string gradient_uncertainty;   // at 95 %, without unit; empty without degrees of freedom
  std::string intercept_uncertainty;
  PointOnLine low;
  PointOnLine high;
  std::string from_points;            // the gradient that the two points give, as text
};

// The significant figures that the readings bear out: as many as the less precise of x and y has, at least 2, at most 4.
int figures_of(const std::vector<Group>& groups, const std::vector<int>& mean_figures);

// As many of `figures` as an uncertainty leaves standing, but two at least: 13.8 ± 3 is 14.
int borne_out(Twofold value, int figures, double uncertainty);

// Requires line.state == fitted. `place`: power of ten of the last digit of the means.
Gradient describe_gradient(const Line& line, const Readings& readings, int figures, int place);

// The constant, with its unit converted exactly; nothing if the units do not fit (then a finding says so) or the gradient
// is zero.
std::optional<Constant> find_constant(const GradientMeaning& meaning, const Written& gradient, const std::optional<CompoundUnit>& unit, const std::string& file,
                                      Findings& findings);

// The unit of y over that of x; nothing if one of the two is not known. A bare number over a bare number is a bare number.
std::optional<CompoundUnit> gradient_unit(const Quantity& x, const Quantity& y);

// `number` and `unit` with a space between them, but none before °.
std::string with_unit(std::string_view number, std::string_view unit);

}  // namespace retort::results
