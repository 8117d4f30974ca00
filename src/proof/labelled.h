// Answers that someone has labelled, and how far a rubric agrees with them.
#pragma once
#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "review/review.h"

namespace retort {

struct LabelledAnswer {
  std::string id;
  std::string text;
  std::string investigation;           // empty if the line does not say
  std::vector<StepStatus> labels;      // by step of the rubric
  std::vector<bool> labelled;          // whether there is a label for it
  int mark = -1;                       // -1: none
};

// Reads labelled answers (JSON, one a line); lines of other investigations are left out.
std::vector<LabelledAnswer> read_labelled(std::string_view content, const std::string& file, const Rubric& rubric, Findings& findings);

// Counts of label × verdict, by StepStatus.
struct Confusion {
  std::array<std::array<std::uint32_t, 3>, 3> counts{};  // [label][verdict]

  void add(StepStatus label, StepStatus verdict) { ++counts[static_cast<std::size_t>(label)][static_cast<std::size_t>(verdict)]; }
  void add(const Confusion& other);
  [[nodiscard]] std::uint32_t total() const;
  [[nodiscard]] double agreement() const;  // share on the diagonal; 1 if there is nothing
  // Cohen's kappa, unweighted: J. Cohen, Educational and Psychological Measurement 20 (1960) 37-46.
  // 1 if label and verdict are all of one kind.
  [[nodiscard]] double kappa() const;
  [[nodiscard]] double f1(StepStatus status) const;
};

struct Difference {
  std::size_t answer = 0;
  std::size_t step = 0;
  StepStatus label{};
  StepStatus verdict{};
  std::vector<Span> evidence;
};

struct Agreement {
  std::vector<Confusion> steps;
  Confusion all;
  std::vector<Difference> differences;
  std::uint32_t marks = 0;          // answers with a mark
  std::uint32_t marks_within = 0;   // whose indicative range holds the mark within 1
};

Agreement compare(const Checker& checker, const std::vector<LabelledAnswer>& answers);

}  // namespace retort
