// A teacher's changes to a rubric: the question's table and hypothesis, a step's wording. They are made in the rubric's
// own text, so that all else in the file stays as its author wrote it.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "rubric/json.h"

namespace retort {

struct StepEdit {
  std::string id;
  std::optional<std::string> title;
  std::optional<std::string> hint;
  std::vector<std::string> also_present;  // patterns that count besides those of the rubric
  std::vector<std::string> also_vague;
};

struct RubricEdits {
  std::optional<std::string> id;
  std::optional<std::string> title;
  std::optional<std::string> question;
  std::optional<std::string> hypothesis;
  std::optional<std::string> quantity;             // what the values are of; the rubric's own if it has some
  std::optional<std::vector<std::string>> values;  // "1.5 N"
  std::optional<std::vector<std::string>> apparatus;
  std::vector<StepEdit> steps;

  [[nodiscard]] bool empty() const;
};

// Reads edits from JSON: {"id", "title", "question", "hypothesis", "quantity", "values": [...], "apparatus": [...], "steps":
// {ID: {"title", "hint", "present": [...], "vague": [...]}}}, each of them optional. Faults in the file `name`, other keys among
// them, are added to `findings`.
RubricEdits read_edits(const json::Value& value, Findings& findings, const std::string& name = "edits");

// `source` (the file `name`) with the edits made. With other values in the table, the examples of steps that check values are
// made anew. Fails if it is no rubric, or a step is not there.
Result<std::string> edited_rubric(const std::string& source, const std::string& name, const RubricEdits& edits);

}  // namespace retort
