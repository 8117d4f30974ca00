// The calculations of a class that went wrong, by what went wrong.
#pragma once
#include <string>
#include <vector>

#include "classroom/anonymity.h"
#include "classroom/draft.h"

namespace retort::classroom {

struct SlipTally {
  calc::Slip slip{};
  std::size_t count = 0;   // calculations whose likeliest slip it is
  std::size_t pupils = 0;  // who made it
  std::string example;     // one of them, naming nobody; empty if all do
  std::string correct;     // the right value of the example; empty if it is not known
};

struct Sums {
  std::size_t right = 0;
  std::size_t wrong = 0;
  std::size_t unclear = 0;
  std::size_t pupils = 0;        // who calculated anything
  std::size_t pupils_wrong = 0;  // who have one that is wrong
  std::vector<SlipTally> slips;  // the slip of most pupils first
};

Sums count_sums(const std::vector<Draft>& drafts, Anonymity& anonymity);

}  // namespace retort::classroom
