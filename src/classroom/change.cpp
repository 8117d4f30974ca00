#include "classroom/change.h"

#include <map>
#include <set>
#include <string_view>

namespace retort::classroom {
namespace {

using ByLabel = std::map<std::string_view, std::vector<std::size_t>>;

ByLabel by_label(const std::vector<Draft>& drafts) {
  ByLabel out;
  for (std::size_t i = 0; i < drafts.size(); ++i) out[drafts[i].label].push_back(i);
  return out;
}

PupilChange change_of(const Draft& before, const Draft& after, std::vector<StepChange>& steps) {
  PupilChange out;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    StepStatus was = before.review.steps[i].status;
    StepStatus is = after.review.steps[i].status;
    bool had = was == StepStatus::present;
    bool has = is == StepStatus::present;
    steps[i].before += had ? 1U : 0U;
    steps[i].after += has ? 1U : 0U;
    if (has && !had) {
      out.gained.push_back(i);
      ++steps[i].gained;
    } else if (had && !has) {
      out.lost.push_back(i);
      ++steps[i].lost;
    } else if (was == StepStatus::missing && is == StepStatus::vague) {
      out.nearer.push_back(i);
    }
  }
  return out;
}

}  // namespace

Change compare(std::size_t steps, const std::vector<Draft>& before, const std::vector<Draft>& after) {
  Change out;
  out.steps.resize(steps);
  ByLabel first = by_label(before);
  ByLabel second = by_label(after);
  std::set<std::string_view> unsure;
  for (const ByLabel* side : {&first, &second}) {
    for (const auto& [label, who] : *side) {
      if (who.size() > 1) unsure.insert(label);
    }
  }
  out.unsure.assign(unsure.begin(), unsure.end());
  for (std::size_t i = 0; i < after.size(); ++i) {
    if (unsure.contains(after[i].label)) continue;
    auto match = first.find(after[i].label);
    if (match == first.end()) {
      out.only_after.push_back(i);
      continue;
    }
    PupilChange change = change_of(before[match->second.front()], after[i], out.steps);
    change.before = match->second.front();
    change.after = i;
    out.pupils.push_back(std::move(change));
  }
  for (std::size_t i = 0; i < before.size(); ++i) {
    if (!unsure.contains(before[i].label) && !second.contains(before[i].label)) out.only_before.push_back(i);
  }
  return out;
}

}  // namespace retort::classroom
