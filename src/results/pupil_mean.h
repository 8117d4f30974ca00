// The pupil's own mean beside ours: right, or wrong and why.
#pragma once
#include "results/repeats.h"

namespace retort::results {

enum class MeanVerdict {
  right,
  more_places,       // the right value, with more decimal places than the readings have
  fewer_places,      // the right value, with fewer
  rounding,          // cut off, or rounded the wrong way
  anomaly_left_in,   // the mean of all readings, anomalies too
  wrong_count,       // the sum divided by the wrong number
  reading_left_out,  // a reading was left out that is no anomaly
  middle_reading,    // the reading in the middle, not the mean
  other,             // no such reason fits
};

struct MeanCheck {
  MeanVerdict verdict = MeanVerdict::right;
  std::size_t divided_by = 0;             // wrong_count
  std::optional<std::size_t> reading;     // reading_left_out: index in Group::readings
};

// Judges `group.pupil_mean`, which must be there; `summary` is the group's own, with at least one reading kept.
MeanCheck check_mean(const Group& group, const Summary& summary);

}  // namespace retort::results
