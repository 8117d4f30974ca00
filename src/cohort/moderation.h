// What a tally means: rates with their intervals, groups that differ, markers, answers to look at again, a sample.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "cohort/agreement.h"
#include "cohort/drift.h"
#include "cohort/proportion.h"
#include "cohort/tally.h"

namespace retort::cohort {

// What people call a rubric and its steps.
struct RubricNames {
  std::string title;
  std::map<std::string, std::string> steps;  // id → title
};

enum class Differs : std::uint8_t { no, more, less };  // missing more or less often than in the other groups

struct StepGroup {
  std::string group;
  StepCounts counts;
  Share missing;
  Share elsewhere;      // missing in the other groups together
  double chance = 1.0;  // of such a difference or a greater one, if there is none between the groups
  double raised = 1.0;  // the same after Holm's correction for all steps and groups of the rubric
  Differs differs = Differs::no;
};

struct StepPart {
  std::string id;
  std::string title;
  bool core = false;
  StepCounts counts;
  Share missing;
  Share vague;
  std::vector<StepGroup> groups;  // none if there is one group only
};

// A marker's marks against the indicated ranges.
struct RangePart {
  std::string group;  // "" and all: see MarkerPart
  Count marks = 0;
  double mean = 0.0;
  Share inside, below, above;  // of the marks that have a range
  double off = 0.0;            // mean distance from the range in marks: above 0 is above it
};

struct MarkerPart {
  RangePart all;
  std::vector<RangePart> groups;
  Count placed = 0;  // marks whose place in the pile is known
  std::optional<Drift> drift;
};

struct GroupAgreement {
  std::string group;
  Count answers = 0;
  Share exact, within_one;
};

struct RubricPart {
  std::string id;
  RubricNames names;
  int of = 0;
  Count answers = 0;
  std::vector<std::pair<std::string, Count>> groups;  // and their answers
  Count other_groups = 0;                             // answers of groups beyond the limit
  std::vector<StepPart> steps;                        // most often missing first
  std::size_t comparisons = 0;                        // that Holm's correction counted
  CalculationCounts calculations;
  std::array<MarkerPart, 2> markers;
  MarkerAgreement agreement;
  Crosstab crosstab;
  std::vector<GroupAgreement> group_agreement;
  std::array<Count, kReasons.size()> reasons{};
  std::vector<Again> again;    // most urgent first
  std::vector<Script> sample;  // by mark, then in the order of their keys
};

struct Moderation {
  std::uint64_t seed = 0;
  std::vector<RubricPart> rubrics;
};

// The chance below which a difference between groups is told.
inline constexpr double kLimit = 0.05;

// `names` by rubric; ids stand in for names that are not there. `sample`: how many answers to draw, at most kMostSample; they
// are taken from each mark in turn, so that the sample is spread over the marks.
Moderation moderate(const Tally& tally, const std::map<std::string, RubricNames>& names, std::size_t sample);

}  // namespace retort::cohort
