// Drafts held against the other practicals, where they fit their own badly.
#pragma once
#include <functional>
#include <vector>

#include "classroom/draft.h"
#include "review/checker.h"

namespace retort::classroom {

// Puts into `fits_better` of each draft the title of the practical that it fits clearly best, if it fits its own badly and
// another clearly better. `others` gives the other practicals' checkers, and is called only if there is such a draft; what it
// gives must outlive the call. Runs on up to `threads` threads.
void name_better_fits(std::vector<Draft>& drafts, const std::function<std::vector<const Checker*>()>& others, unsigned threads);

}  // namespace retort::classroom
