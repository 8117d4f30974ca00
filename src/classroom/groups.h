// Small groups of pupils who lack the same step.
//
// The rule: core steps alone are looked at; a pupil lacks one that is missing or vague. First come the steps that fewer than half
// of the class lack (what more lack is for everyone), then the others. Among them the step that most pupils not yet in a group
// lack takes all of these, then the next step, until no step has two left. More than five are shared out evenly, those with about
// as many steps together. Ties as in the rubric. So a pupil is in one group at most, and a group has two to five.
#pragma once
#include <vector>

#include "classroom/draft.h"
#include "rubric/rubric.h"

namespace retort::classroom {

inline constexpr std::size_t kLargestGroup = 5;

struct Group {
  std::size_t step = 0;
  std::vector<std::size_t> drafts;  // in the order of the class table
  std::vector<std::size_t> also;    // other core steps that all of them lack, as in the rubric
};

struct Grouping {
  std::vector<Group> groups;
  std::vector<std::size_t> alone;     // lack something, but share no step that is left
  std::vector<std::size_t> complete;  // lack no core step
};

Grouping make_groups(const Rubric& rubric, const std::vector<Draft>& drafts);

}  // namespace retort::classroom
