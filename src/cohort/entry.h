// What one checked answer adds to a tally, and how to get it from a line that `check` wrote.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "cohort/crosstab.h"
#include "review/review.h"
#include "rubric/json.h"

namespace retort::cohort {

inline constexpr std::size_t kLongestName = 120;  // bytes of an id, group or rubric that are kept

struct Entry {
  std::string rubric;
  std::string id;
  std::string group;  // "" if the input does not say
  int mark = -1;      // 0 to kMostMark; -1: none
  int mark2 = -1;
  std::int64_t place = -1;  // in the pile, as it was marked; -1: not known
  struct Step {
    std::string id;
    StepStatus status{};
    bool core = false;
  };
  std::vector<Step> steps;
  bool has_level = false;
  Level level;
  Count right = 0, wrong = 0, unclear = 0;  // calculations
  std::vector<std::string> slips;
};

// The format of the lines that are read (report/review_json.h writes them).
inline constexpr int kCheckedFormat = 1;

// Whether `name` is a slip of calculations ("power-of-ten").
bool known_slip(std::string_view name);

// `text` cut to kLongestName bytes at a code point border.
std::string short_name(std::string_view text);

// From an answer just checked. Id, group and marks are the caller's to fill in.
Entry entry_of(const Rubric& rubric, const Review& review);

// From an object that `check --format jsonl` wrote: an object with "steps". `where` names its line in findings; with one of
// severity error there is no entry (false). A "position" of the object, or of its "extra", is its place.
bool read_checked(const json::Value& object, const std::string& where, Entry& out, Findings& findings);

// The whole number of a "position" in the object or in its "extra"; -1 if there is none that can be used.
std::int64_t read_place(const json::Value& object);

}  // namespace retort::cohort
