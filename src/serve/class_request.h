// A class's drafts as the teacher's page sends them, checked.
#pragma once
#include <vector>

#include "classroom/draft.h"
#include "serve/api.h"

namespace retort::serve {

inline constexpr std::size_t kMostSentDrafts = 2000;

struct SentClass {
  Asked asked;                            // asked.desk is null if the request cannot be answered; asked.why says why
  std::vector<classroom::Draft> drafts;   // checked
  std::vector<classroom::Draft> before;   // checked; empty if none were sent
  bool with_range = false;
  int per_sheet = 1;
};

// Reads {"rubric", "edits"?, "drafts": [{"id", "text"}], "before"?, "withRange"?, "perSheet"?} and checks the drafts.
SentClass read_class(Desks& desks, const json::Value& body);

// The reviews of `drafts` by `desk`, on several threads.
void review_drafts(Desk& desk, std::vector<classroom::Draft>& drafts);

}  // namespace retort::serve
