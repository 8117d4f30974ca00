// How many of a class have each step, and the order of rows and columns in which the pattern shows.
#pragma once
#include <cstddef>
#include <vector>

#include "classroom/draft.h"
#include "rubric/rubric.h"

namespace retort::classroom {

struct Tally {
  std::size_t present = 0;
  std::size_t vague = 0;
  std::size_t missing = 0;
  friend bool operator==(const Tally&, const Tally&) = default;
};

// A draft without words is not counted: it says nothing about what was understood.
bool counts(const Draft& draft);

// For each step of the rubric, over the drafts that count.
std::vector<Tally> tally(std::size_t steps, const std::vector<Draft>& drafts);

// The drafts that count, those with the most steps present first, then those with the most vague; ties as they came in.
std::vector<std::size_t> order_of_drafts(const std::vector<Draft>& drafts);
// The steps, those that most have present first, then those that most have vague; ties as in the rubric.
std::vector<std::size_t> order_of_steps(const std::vector<Tally>& tallies);
// The steps that any draft leaves out, those that most leave out first, then those that are vague most often, then core ones;
// ties as in the rubric.
std::vector<std::size_t> order_of_omissions(const Rubric& rubric, const std::vector<Tally>& tallies);

}  // namespace retort::classroom
