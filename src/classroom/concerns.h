// Drafts that need the teacher's own eye, each with the reason. None of these is a verdict.
#pragma once
#include <string_view>
#include <vector>

#include "base/finding.h"
#include "classroom/draft.h"
#include "rubric/rubric.h"

namespace retort::classroom {

inline constexpr std::size_t kShortDraft = 25;  // words; common practice, no source: a line or two is not a method

// Words as people count them: pieces between spaces that hold a letter or a digit. (Review::words leaves the small ones out.)
std::size_t count_words(std::string_view text);

struct Concern {
  Code code{};                      // one of the concern_ codes; the words are those of message()
  std::vector<std::size_t> drafts;  // one; several for near-copies and a label that appears twice
  std::vector<std::string> notes;   // fill the message
};

// By kind, and within a kind as they came in. A draft without words has no other concern than that and its label.
std::vector<Concern> find_concerns(const Rubric& rubric, const std::vector<Draft>& drafts);

}  // namespace retort::classroom
