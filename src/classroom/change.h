// Two drafts of the same pupils, compared step by step.
#pragma once
#include <string>
#include <vector>

#include "classroom/draft.h"

namespace retort::classroom {

struct PupilChange {
  std::size_t before = 0;           // index into the first drafts
  std::size_t after = 0;            // index into the second
  std::vector<std::size_t> gained;  // steps present now that were not
  std::vector<std::size_t> nearer;  // steps vague now that were missing
  std::vector<std::size_t> lost;    // steps that were present and are not now
};

struct StepChange {
  std::size_t before = 0;  // pupils who had it present, of those compared
  std::size_t after = 0;
  std::size_t gained = 0;
  std::size_t lost = 0;
};

struct Change {
  std::vector<PupilChange> pupils;       // in the order of the second drafts
  std::vector<StepChange> steps;         // as in the rubric
  std::vector<std::size_t> only_before;  // first drafts without a second
  std::vector<std::size_t> only_after;   // second drafts without a first
  std::vector<std::string> unsure;       // labels that stand on several drafts of one time: these are not compared
};

// Pairs drafts by their labels, byte for byte. Drafts without words are compared as they are: everything is lost or gained.
Change compare(std::size_t steps, const std::vector<Draft>& before, const std::vector<Draft>& after);

}  // namespace retort::classroom
