// A class report as a table for a spreadsheet: a row for each pupil, a column for each step.
#pragma once
#include <string>

#include "report/class_report.h"

namespace retort {

// Columns: pupil; a column for each step ("4 Measure before any weight is on") with present, vague or missing; how many of each;
// words; marks low and high if the range is wanted; what to look at; with first drafts: gained, nearer and lost steps. The drafts
// that are not counted come last, with empty cells.
std::string class_csv(const ClassReport& report);

}  // namespace retort
