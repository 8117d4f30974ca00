// A results table, worked through: readings, means, line of best fit and what it means. The whole model that the writers
// turn into text, JSON and SVG.
//
// Immutable once made; may be shared by threads. It owns all it holds.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "results/gradient.h"
#include "results/pupil_mean.h"
#include "results/sines.h"

namespace retort::results {

struct Analysis {
  Readings readings;
  std::vector<Summary> summaries;                 // one for each group
  std::vector<std::optional<MeanCheck>> checks;   // the same; of the pupil's own means
  std::vector<std::size_t> plotted;               // the groups with a mean: point i of the line is group plotted[i]
  Line line;
  std::optional<Gradient> gradient;               // if there is a line
  std::optional<Sines> sines;                     // if both quantities are angles of refraction
  std::optional<Constant> constant;               // if a guide says what the gradient stands for
  Findings findings;                              // notes and warnings on the table, in its order; at most a hundred

  // Whether a group's point is left out of the line.
  [[nodiscard]] bool off_line(std::size_t group) const;
  // Whether y is directly proportional to x. Angles of refraction never are: their sines are.
  [[nodiscard]] bool proportional() const { return line.proportional() && !sines; }
  // Whether any group has more than one reading.
  [[nodiscard]] bool repeats() const;
};

// `file` names the table in findings. Fails if there are no two columns to plot or a wanted one is missing.
Result<Analysis> analyse(const Table& table, const std::string& file, const Wanted& wanted);

}  // namespace retort::results
