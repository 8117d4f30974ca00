// A moderation as one table for a spreadsheet.
#pragma once
#include <string>

#include "cohort/moderation.h"

namespace retort {

// Columns: part (step, agreement, marker, drift, slip, again, sample), rubric, group ("" for all), item, value, count, of, low,
// high, note. Shares are in percent, with their 95 % intervals.
std::string moderation_csv(const cohort::Moderation& moderation);

}  // namespace retort
