// Tallies of checked answers: counts that add up.
//
// Any split of the answers into tallies, added in any order, gives the same tally, because all of it is whole numbers and
// lists of the first few by an order of their own. Its size does not grow with the answers: there are at most kMostRubrics
// rubrics, kMostGroups groups in each, kMostSteps steps in each of these, marks up to kMostMark, and short lists. Of more
// rubrics, groups or steps those first by name are kept.
// Threads: each its own, added up at the end.
#pragma once
#include <array>
#include <compare>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "cohort/crosstab.h"
#include "cohort/drift.h"
#include "cohort/entry.h"

namespace retort::cohort {

inline constexpr std::size_t kMostRubrics = 16;
inline constexpr std::size_t kMostGroups = 100;
inline constexpr std::size_t kMostSteps = 100;
inline constexpr std::size_t kMostAgain = 100;  // answers to look at again
inline constexpr std::size_t kMostSample = 50;  // answers to mark again, of each mark

struct StepCounts {
  Count present = 0;
  Count vague = 0;
  Count missing = 0;
  [[nodiscard]] Count answers() const { return present + vague + missing; }
  friend bool operator==(const StepCounts&, const StepCounts&) = default;
};

// One marker's marks.
struct MarkerCounts {
  std::map<int, Count> marks;    // mark → answers
  std::map<int, Count> outside;  // marks above the top of the indicated range (below 0: under its bottom) → answers; 0: inside
  DriftSums drift;
  friend bool operator==(const MarkerCounts&, const MarkerCounts&) = default;
};

struct CalculationCounts {
  Count answers = 0;  // that have any
  Count right = 0, wrong = 0, unclear = 0;
  std::map<std::string, Count> slips;
  friend bool operator==(const CalculationCounts&, const CalculationCounts&) = default;
};

// The answers of one group to one rubric.
struct Cell {
  Count answers = 0;
  std::map<std::string, StepCounts> steps;
  std::array<MarkerCounts, 2> markers;
  Crosstab crosstab;  // of the answers that both marked
  CalculationCounts calculations;
  bool steps_cut = false;  // there were more than kMostSteps
  friend bool operator==(const Cell&, const Cell&) = default;

  void add(const Entry& entry);
  void add(const Cell& other);
};

// Why to look at an answer again.
enum class Reason : std::uint8_t { markers_apart, above_range, below_range, nothing_found, core_missing };
inline constexpr std::array<Reason, 5> kReasons = {Reason::markers_apart, Reason::above_range, Reason::below_range, Reason::nothing_found,
                                                   Reason::core_missing};
// "markers-apart", as in JSON.
std::string_view name(Reason reason);

// An answer, as far as a list needs it.
struct Script {
  std::string key;  // hexadecimal digits of a digest of the seed, rubric, group and id: an order that nobody chose
  std::string id;
  std::string group;
  int mark = -1;
  int mark2 = -1;
  int low = -1;  // the indicated range; -1: none
  int high = -1;
  friend auto operator<=>(const Script&, const Script&) = default;
};

struct Again {
  std::int64_t weight = 0;  // how much it matters, negative: the most urgent come first
  Script script;
  unsigned reasons = 0;  // bit i for kReasons[i]
  friend auto operator<=>(const Again&, const Again&) = default;
};

// Why `entry` should be looked at again: none for most. The rules are common practice, no source: markers two marks or more
// apart; a mark two or more outside the indicated range; nothing recognised; two core steps missing and yet two thirds of the marks.
unsigned reasons_of(const Entry& entry);

struct RubricTally {
  std::map<std::string, Cell> groups;
  Cell other_groups;           // those beyond kMostGroups, together
  int of = 0;                  // the most marks there are; 0: not known
  std::set<std::string> core;  // ids of core steps
  std::array<Count, kReasons.size()> reasons{};
  std::multiset<Again> again;                   // the kMostAgain first
  std::map<int, std::multiset<Script>> sample;  // by mark (or by indicated mark, if there is none): the kMostSample first by key
  friend bool operator==(const RubricTally&, const RubricTally&) = default;

  void add(const RubricTally& other);
  // Drops what is beyond the limits.
  void trim();
};

class Tally {
 public:
  explicit Tally(std::uint64_t seed) : seed_(seed) {}

  void add(const Entry& entry);
  // Requires the same seed.
  void add(const Tally& other);
  void add(const std::string& rubric, const RubricTally& part);
  // Notes that a tally added to this one had left rubrics out.
  void note_rubrics_cut() { rubrics_cut_ = true; }

  [[nodiscard]] std::uint64_t seed() const { return seed_; }
  [[nodiscard]] const std::map<std::string, RubricTally>& rubrics() const { return rubrics_; }
  [[nodiscard]] bool rubrics_cut() const { return rubrics_cut_; }
  [[nodiscard]] bool empty() const { return rubrics_.empty(); }
  // What was left out or counted together because of the limits.
  [[nodiscard]] Findings limits_met() const;
  friend bool operator==(const Tally&, const Tally&) = default;

 private:
  void trim();

  std::uint64_t seed_;
  std::map<std::string, RubricTally> rubrics_;
  bool rubrics_cut_ = false;
};

}  // namespace retort::cohort
