// The picture of a class: all its drafts of one practical at a glance, and what to do about it.
//
// Indices of drafts are those of the vector given; indices of steps are those of the rubric. The picture holds copies of the
// quotes alone, no drafts. Time is linear in the drafts but for near-copies (likeness.h).
#pragma once
#include <vector>

#include "classroom/concerns.h"
#include "classroom/draft.h"
#include "classroom/groups.h"
#include "classroom/reteach.h"
#include "classroom/sums.h"
#include "classroom/tally.h"
#include "rubric/rubric.h"

namespace retort::classroom {

struct Picture {
  std::vector<std::size_t> drafts;     // the rows of the table: those that count, in their order
  std::vector<std::size_t> steps;      // its columns
  std::vector<Tally> tallies;          // as in the rubric
  std::vector<std::size_t> omissions;  // steps, those that most leave out first
  std::vector<Reteach> reteach;
  Grouping grouping;
  Sums sums;
  std::vector<Concern> concerns;
};

// `names` are names of pupils besides the labels, if labels are codes: no quote holds one of these either.
Picture make_picture(const Rubric& rubric, const std::vector<Draft>& drafts, const std::vector<std::string>& names = {});

}  // namespace retort::classroom
