#include "review/review.h"

#include "review/points.h"

#include <algorithm>
#include <cmath>

namespace retort {
namespace {

constexpr std::size_t kMostNext = 3;

// Core steps first; among them the vague ones, which are nearest to done.
std::vector<std::size_t> choose_next(const Rubric& rubric, const std::vector<StepReview>& steps) {
  std::vector<std::size_t> open;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (steps[i].status != StepStatus::present) open.push_back(i);
  }
  auto rank = [&](std::size_t i) { return (rubric.steps[i].core ? 0 : 2) + (steps[i].status == StepStatus::vague ? 0 : 1); };
  std::stable_sort(open.begin(), open.end(), [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
  if (open.size() > kMostNext) open.resize(kMostNext);
  return open;
}

}  // namespace

// The weights are those of a straight line fitted to the marks that readers gave to 352 labelled answers (see
// corpus/README.md): a clear core step counts nearly a full share, an unclear one little.
Level indicate(const Rubric& rubric, const std::vector<StepReview>& steps, const std::vector<OrderMatch>& order) {
  constexpr double kClear = 5.8;
  constexpr double kUnclear = 0.8;
  constexpr double kOffset = -0.3;
  constexpr double kOutOfOrder = -0.3;
  Level level;
  if (rubric.kind == RubricKind::points) return indicate_points(rubric, steps);
  double clear = 0;
  double unclear = 0;
  double core = 0;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (!rubric.steps[i].core) continue;
    core += 1;
    if (steps[i].status == StepStatus::present) clear += 1;
    if (steps[i].status == StepStatus::vague) unclear += 1;
  }
  if (core == 0) return level;
  double mark = (kClear * clear + kUnclear * unclear) / core + kOffset;
  if (std::any_of(order.begin(), order.end(), [](const OrderMatch& o) { return o.both && !o.kept; })) mark += kOutOfOrder;
  int whole = static_cast<int>(std::floor(mark));
  level.low = std::clamp(whole, 0, level.of);
  level.high = std::clamp(whole + 1, 0, level.of);
  return level;
}

Review Reviewer::review(std::string_view answer) {
  reader_.read(answer, document_);
  AnswerMatch match = matcher_.match(document_);
  const Rubric& rubric = checker_.rubric();
  Review out;
  for (std::size_t i = 0; i < match.steps.size(); ++i) {
    StepMatch& step = match.steps[i];
    StepReview review;
    review.status = step.status;
    review.evidence = std::move(step.evidence);
    review.note = std::move(step.note);
    if (step.without_reason) review.note = rubric.steps[i].lacks_reason;
    if (review.status == StepStatus::vague && review.note.empty()) review.note = rubric.steps[i].lacks;
    if (review.status == StepStatus::missing) review.note = contradiction_note(step.against, answer);
    out.steps.push_back(std::move(review));
  }
  count_once(rubric, out.steps);
  out.order = std::move(match.order);
  out.next = choose_next(rubric, out.steps);
  out.level = indicate(rubric, out.steps, out.order);
  out.calculations = calculator_.check(answer, checker_.given());
  out.words = match.words;
  out.copied_words = match.copied_words;
  out.invalid_bytes = document_.invalid_bytes;
  out.nul_bytes = document_.nul_bytes;
  return out;
}

}  // namespace retort
