// What repeats tell: anomalies, the mean of the others, the range, and the uncertainty as half the range.
//
// The rule for anomalies. A reading is left out of the mean if it is farther from its nearest neighbour than
//   - three times the usual range of the repeats elsewhere in the table (the median over the other rows), and
//   - twice the range of the other readings of its row, and
//   - three steps of the scale (units in the last place written).
// The factors are common practice, no source: three readings alone say little about their scatter, so the other rows say
// what scatter is usual. With repeats in fewer than three other rows Dixon's Q stands in for the first two: the gap over the
// whole range must exceed Q at 90 % confidence (R. B. Dean and W. J. Dixon, Analytical Chemistry 23 (1951) 636-638).
// More than half of the readings always stay, and none is ever dropped from two.
#pragma once
#include <optional>
#include <vector>

#include "results/readings.h"

namespace retort::results {

enum class AnomalyRule { usual_range, dixon };

struct Anomaly {
  std::size_t reading = 0;  // index in Group::readings
  AnomalyRule rule = AnomalyRule::usual_range;
  Exact gap;                // from the nearest other reading
  Exact limit;              // the gap above which it is left out
  Exact usual;              // the usual range in the other rows; 0 for Dixon's rule
};

struct Summary {
  std::size_t kept = 0;              // readings in the mean
  Exact mean;
  int place = 0;                     // power of ten of the mean's last digit: the readings' own
  Exact range;                       // of the readings kept
  Exact uncertainty;                 // half the range
  std::optional<double> percent;     // of the mean; none for one reading or a mean of 0
  std::vector<Anomaly> anomalies;
  bool disagree = false;             // two readings too far apart to be trusted, or all of them at odds
};

// Works out a summary for each group, in the same order, and marks the readings left out. A group without readings has
// kept = 0. Time: readings × log readings.
std::vector<Summary> summarise(std::vector<Group>& groups);

}  // namespace retort::results
