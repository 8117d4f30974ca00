#include "classroom/reteach.h"

#include <algorithm>

#include "classroom/quote.h"

namespace retort::classroom {
namespace {

double weight(const Tally& t) {
  return static_cast<double>(t.missing) + kVagueWeight * static_cast<double>(t.vague);
}

// Quotes of those whose step has this status, those with the most steps first, no two alike.
std::vector<std::string> quotes_of(std::size_t step, StepStatus status, const std::vector<Draft>& drafts, const std::vector<std::size_t>& order,
                                   Anonymity& anonymity) {
  std::vector<std::string> out;
  for (std::size_t i : order) {
    const StepReview& review = drafts[i].review.steps[step];
    if (review.status != status) continue;
    std::string words = quote(drafts[i].text, review.evidence);
    bool again = std::find(out.begin(), out.end(), words) != out.end();
    if (words.empty() || again || !anonymity.names_nobody(words)) continue;
    out.push_back(std::move(words));
    if (out.size() == kMostQuotes) break;
  }
  return out;
}

std::vector<std::string> models_of(const Step& step) {
  std::vector<std::string> out;
  for (const Example& example : step.examples) {
    if (example.status == StepStatus::present && out.size() < kMostQuotes) out.push_back(example.text);
  }
  return out;
}

}  // namespace

std::vector<std::size_t> core_steps(const Rubric& rubric) {
  std::vector<std::size_t> out;
  bool any = std::any_of(rubric.steps.begin(), rubric.steps.end(), [](const Step& step) { return step.core; });
  for (std::size_t i = 0; i < rubric.steps.size(); ++i) {
    if (rubric.steps[i].core || !any) out.push_back(i);
  }
  return out;
}

std::vector<Reteach> choose_reteach(const Rubric& rubric, const std::vector<Draft>& drafts, const std::vector<Tally>& tallies, Anonymity& anonymity) {
  std::vector<std::size_t> steps = core_steps(rubric);
  std::erase_if(steps, [&](std::size_t i) { return weight(tallies[i]) <= 0.0; });
  std::stable_sort(steps.begin(), steps.end(), [&](std::size_t a, std::size_t b) { return weight(tallies[a]) > weight(tallies[b]); });
  if (steps.size() > kMostReteach) steps.resize(kMostReteach);
  std::vector<std::size_t> order = order_of_drafts(drafts);
  std::vector<Reteach> out;
  for (std::size_t step : steps) {
    Reteach item;
    item.step = step;
    item.vague = quotes_of(step, StepStatus::vague, drafts, order, anonymity);
    item.better = quotes_of(step, StepStatus::present, drafts, order, anonymity);
    if (item.better.empty()) item.models = models_of(rubric.steps[step]);
    out.push_back(std::move(item));
  }
  return out;
}

}  // namespace retort::classroom
