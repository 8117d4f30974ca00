#include "rubric/rubric.h"

namespace retort {

std::string_view status_word(StepStatus status) {
  switch (status) {
    case StepStatus::present: return "present";
    case StepStatus::vague: return "vague";
    case StepStatus::missing: return "missing";
  }
  return "missing";
}

bool read_status(std::string_view word, StepStatus& out) {
  for (StepStatus status : {StepStatus::present, StepStatus::vague, StepStatus::missing}) {
    if (word == status_word(status)) {
      out = status;
      return true;
    }
  }
  return false;
}

std::vector<std::string> Rubric::step_ids() const {
  std::vector<std::string> ids;
  for (const Step& step : steps) ids.push_back(step.id);
  return ids;
}

std::size_t Rubric::step_index(std::string_view step) const {
  std::size_t i = 0;
  while (i < steps.size() && steps[i].id != step) ++i;
  return i;
}

}  // namespace retort
