// The line of best fit through the means, and what can be said from it: anomalous points, whether the points lie on a
// straight line, and whether the line goes through the origin.
//
// The rules, each with its source:
//   - A point is anomalous if its residual from the line through all the other points, over its standard error, exceeds
//     Student's t at 5 % shared among the points (R. D. Cook, S. Weisberg, "Residuals and Influence in Regression", 1982,
//     section 2.2.2). Only with five points or more; at most one in five is left out.
//   - The points are curved if a term in x² differs from zero at 5 % (Student's t), and bends the line by more than 2 % of
//     the range of y (common practice, no source); or, with eight points or more, if they lie above and below the line in
//     too few runs for chance (Wald and Wolfowitz, 5 %).
//   - The line goes through the origin if its intercept is within its uncertainty: t at 95 % times its standard error, and
//     no less than the error bars and half a step of the scale (common practice, no source).
// No scatter is taken to be less than a reading can show: the step of the scale over √12 (GUM, JCGM 100:2008, 4.3.7), or
// half the usual half range of the repeats.
#pragma once
#include <optional>
#include <vector>

#include "results/least_squares.h"

namespace retort::results {

struct Points {
  Column x;
  Column y;
  double step = 0.0;        // of y: one unit in the last place of its readings
  double half_range = 0.0;  // of y: the usual half range of repeats; 0 if there are none
};

enum class LineState { fitted, too_few_points, x_all_the_same };
enum class Shape { straight, steeper, shallower, uneven, unknown };  // unknown: too few points to tell
enum class Origin { through, misses, unsure };
enum class Plot { x_squared, root_x, one_over_x };

// What else could be plotted to get a straight line.
struct Suggestion {
  Plot plot{};
  double r_squared = 0.0;
  bool through_origin = false;
};

struct Line {
  LineState state = LineState::too_few_points;
  Fit fit;                              // of the points kept: parameters intercept, gradient
  std::vector<std::size_t> left_out;    // indices of anomalous points, in order
  Shape shape = Shape::unknown;
  Origin origin = Origin::unsure;
  double scatter = 0.0;                 // the standard deviation the judgements used
  double intercept_uncertainty = 0.0;   // at 95 %
  double gradient_uncertainty = 0.0;    // at 95 %
  double curve_chance = 1.0;            // how likely so great a term in x² comes by chance
  bool flat = false;                    // the gradient is within its uncertainty of zero
  std::optional<Suggestion> suggestion; // if curved

  [[nodiscard]] Twofold intercept() const { return fit.parameters[0]; }
  [[nodiscard]] Twofold gradient() const { return fit.parameters[1]; }
  [[nodiscard]] bool proportional() const { return state == LineState::fitted && shape == Shape::straight && origin == Origin::through && !flat; }
  [[nodiscard]] bool curved() const { return shape == Shape::steeper || shape == Shape::shallower || shape == Shape::uneven; }
};

// Requires as many x as y. Time grows with the points, times one for each left out (at most 20).
Line fit_line(const Points& points);

}  // namespace retort::results
