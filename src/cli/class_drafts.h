// The drafts of a class: read, checked by several threads, and held against the other practicals where they fit theirs badly.
#pragma once
#include <string>
#include <vector>

#include "classroom/draft.h"
#include "cli/command.h"
#include "cli/support.h"

namespace retort::cli {

inline constexpr std::size_t kMostDrafts = 2000;  // of one class picture

struct ClassDrafts {
  std::vector<classroom::Draft> drafts;
  bool some_failed = false;  // some input could not be used; it is named on standard error
  bool usable = true;        // false: too many or none, and that is said
};

// Reads `inputs` for the rubric of `ready`, with codes for names if there are `codes`. Findings go to standard error.
ClassDrafts read_drafts(const Options& options, const std::vector<std::string>& inputs, const Ready& ready, Pseudonyms* codes);

}  // namespace retort::cli
