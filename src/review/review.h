// A Review: what a check of one answer means for the pupil.
#pragma once
#include <string>
#include <vector>

#include "calc/calculations.h"
#include "match/matcher.h"
#include "review/checker.h"
#include "text/reader.h"

namespace retort {

struct Level {
  int low = 0;   // marks, an indication only: a person decides
  int high = 0;
  int of = 6;
};

struct StepReview {
  StepStatus status = StepStatus::missing;
  std::vector<Span> evidence;  // bytes of the answer
  std::string note;            // what a vague step lacks, or what contradicts a missing one
};

struct Review {
  std::vector<StepReview> steps;         // as in the rubric
  std::vector<OrderMatch> order;         // as in the rubric
  std::vector<std::size_t> next;         // up to three steps to do next, most worthwhile first
  std::vector<calc::Calculation> calculations;  // in the order of the answer
  Level level;
  std::size_t words = 0;
  std::size_t copied_words = 0;
  std::uint32_t invalid_bytes = 0;       // bytes that were not UTF-8, passed over
  std::uint32_t nul_bytes = 0;           // read as spaces
};

// Reviews answers against one checker. Threads: one Reviewer for each thread.
class Reviewer {
 public:
  explicit Reviewer(const Checker& checker) : checker_(checker), matcher_(checker.program()), calculator_(checker.formulas()) {}
  Review review(std::string_view answer);

 private:
  const Checker& checker_;
  Reader reader_;
  Document document_;
  Matcher matcher_;
  calc::Calculator calculator_;
};

// The indicative range, from the core steps and their order.
Level indicate(const Rubric& rubric, const std::vector<StepReview>& steps, const std::vector<OrderMatch>& order);

}  // namespace retort
