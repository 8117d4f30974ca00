#include "review/points.h"

#include <algorithm>
#include <map>

#include "base/messages.h"

namespace retort {

std::string contradiction_note(const std::vector<Span>& against, std::string_view answer) {
  if (against.empty()) return {};
  std::string words;
  for (Span span : against) words += (words.empty() ? "" : " ... ") + std::string(span.of(answer));
  return fill(kNoteContradicted, {words});
}

void count_once(const Rubric& rubric, std::vector<StepReview>& steps) {
  std::map<std::string_view, std::size_t> counted;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const std::string& once = rubric.steps[i].once;
    if (once.empty() || steps[i].status != StepStatus::present) continue;
    auto [first, fresh] = counted.try_emplace(once, i);
    if (fresh) continue;
    steps[i].status = StepStatus::vague;
    steps[i].note = fill(kNoteCountsOnce, {rubric.steps[first->second].title});
  }
}

Level indicate_points(const Rubric& rubric, const std::vector<StepReview>& steps) {
  auto count = [&](StepStatus status) {
    return static_cast<int>(std::count_if(steps.begin(), steps.end(), [&](const StepReview& step) { return step.status == status; }));
  };
  int there = count(StepStatus::present);
  int near = count(StepStatus::vague) > 0 ? 1 : 0;
  return {std::min(there, rubric.marks), std::min(there + near, rubric.marks), rubric.marks};
}

}  // namespace retort
