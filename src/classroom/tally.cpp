#include "classroom/tally.h"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace retort::classroom {
namespace {

// The indices 0 to count - 1, those with the larger key first; ties as they are.
template <typename Key>
std::vector<std::size_t> sorted_by(std::size_t count, Key key) {
  std::vector<std::size_t> out(count);
  std::iota(out.begin(), out.end(), 0U);
  std::stable_sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) { return key(a) > key(b); });
  return out;
}

std::size_t count_of(const Draft& draft, StepStatus status) {
  return static_cast<std::size_t>(
      std::count_if(draft.review.steps.begin(), draft.review.steps.end(), [&](const StepReview& step) { return step.status == status; }));
}

}  // namespace

bool counts(const Draft& draft) {
  return draft.review.words > 0;
}

std::vector<Tally> tally(std::size_t steps, const std::vector<Draft>& drafts) {
  std::vector<Tally> out(steps);
  for (const Draft& draft : drafts) {
    if (!counts(draft)) continue;
    for (std::size_t i = 0; i < steps; ++i) {
      StepStatus status = draft.review.steps[i].status;
      ++(status == StepStatus::present ? out[i].present : status == StepStatus::vague ? out[i].vague : out[i].missing);
    }
  }
  return out;
}

std::vector<std::size_t> order_of_drafts(const std::vector<Draft>& drafts) {
  std::vector<std::size_t> out = sorted_by(
      drafts.size(), [&](std::size_t i) { return std::pair(count_of(drafts[i], StepStatus::present), count_of(drafts[i], StepStatus::vague)); });
  std::erase_if(out, [&](std::size_t i) { return !counts(drafts[i]); });
  return out;
}

std::vector<std::size_t> order_of_steps(const std::vector<Tally>& tallies) {
  return sorted_by(tallies.size(), [&](std::size_t i) { return std::pair(tallies[i].present, tallies[i].vague); });
}

std::vector<std::size_t> order_of_omissions(const Rubric& rubric, const std::vector<Tally>& tallies) {
  std::vector<std::size_t> out =
      sorted_by(tallies.size(), [&](std::size_t i) { return std::tuple(tallies[i].missing, tallies[i].vague, rubric.steps[i].core); });
  std::erase_if(out, [&](std::size_t i) { return tallies[i].missing == 0; });
  return out;
}

}  // namespace retort::classroom
