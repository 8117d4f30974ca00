// Marking points → a working rubric, with what a person should look at.
#pragma once
#include <string>
#include <vector>

#include "author/kinds.h"
#include "author/plain_points.h"
#include "author/thesaurus.h"
#include "base/result.h"
#include "intake/rubric_folder.h"

namespace retort::author {

// What became of one point, for its author to confirm.
struct Placed {
  std::string point;
  std::string facet;
  std::vector<std::string> looked_for;  // "ruler", "length": lists and words
  std::vector<std::string> present;     // patterns
  std::vector<std::string> vague;
};

struct NewRubric {
  std::string file;  // the rubric, JSON
  std::vector<Placed> placed;
  Findings findings;  // about the points, in their file
};

// Makes the rubric `id` of `points`, which stand in the file `name`. `folder` has the vocabulary, other rubrics' word lists and
// kKindsFile. Fails if the folder lacks what is needed.
Result<NewRubric> make_rubric(const std::string& id, const PlainPoints& points, const std::string& name, const RubricFolder& folder);

}  // namespace retort::author
