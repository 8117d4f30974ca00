// Drafts that share much of their wording.
//
// Compared are runs of five words (numbers among them, in normal form), as sets: the resemblance of two is what they share over
// what either has (Broder, "On the resemblance and containment of documents", 1997). Runs of the question do not count, for
// pupils may copy these. The sets are compared exactly, by way of an index from run to drafts.
#pragma once
#include <string_view>
#include <vector>

namespace retort::classroom {

inline constexpr std::size_t kRunOfWords = 5;
inline constexpr double kNearCopy = 0.5;        // resemblance from which on two drafts are near-copies
inline constexpr std::size_t kFewestRuns = 12;  // a draft with fewer runs of its own is not compared

struct Alike {
  std::vector<std::size_t> drafts;  // two or more, in the order of the input
  double least = 1.0;               // the least resemblance by which two of them were found alike
};

// Sets of near-copies, linked pair by pair; each draft is in one at most.
std::vector<Alike> near_copies(const std::vector<std::string_view>& texts, std::string_view question);

}  // namespace retort::classroom
