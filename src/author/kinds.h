// What 'rubric new' knows of marking points: rubrics/plain-points.json, which a teacher can change.
#pragma once
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace retort::author {

struct PointKind {
  std::string facet;
  std::set<std::string, std::less<>> words;  // one of them in the point shows the kind; none: any point
  bool instrument = false;                   // a named instrument shows it
  std::string hint;                          // the question to a pupil who lacks the point
};

struct PointKinds {
  std::set<std::string, std::less<>> nothing;        // words that say nothing by themselves
  std::set<std::string, std::less<>> actions;        // what is done; the things count for more
  std::set<std::string, std::less<>> qualifiers;     // when, how: weak by themselves
  std::set<std::string, std::less<>> ignored_lists;  // word lists that are no content
  std::vector<PointKind> kinds;                      // the first that fits is taken; the last fits all
};

inline constexpr std::string_view kKindsFile = "plain-points.json";

// Reads `content` of kKindsFile. Fails, naming the place, if it is not as it should be.
Result<PointKinds> read_kinds(std::string_view content);

}  // namespace retort::author
