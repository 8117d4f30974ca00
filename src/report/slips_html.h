// A slip of paper for each pupil: the draft with its evidence marked, what is there, what to do next. No mark of any kind
// unless it is asked for.
#pragma once
#include <string>
#include <vector>

#include "classroom/change.h"
#include "report/class_report.h"

namespace retort {

struct SlipOptions {
  int per_sheet = 1;        // of A4: 1 or 2
  bool with_range = false;  // the indicative range of marks
};

// One page with a slip for each draft, in their order; printed, each begins a sheet (or half of one). With `change`, what was
// gained and lost since the first draft.
std::string slips_html(const Rubric& rubric, const std::vector<classroom::Draft>& drafts, const SlipOptions& options,
                       const classroom::Change* change = nullptr);

// The style sheet of slips and class reports, besides that of all pages.
std::string_view class_styles();

}  // namespace retort
