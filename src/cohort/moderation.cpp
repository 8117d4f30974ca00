#include "cohort/moderation.h"

#include <algorithm>

#include "cohort/exact_test.h"

namespace retort::cohort {
namespace {

Cell all_groups(const RubricTally& tally) {
  Cell out;
  for (const auto& [group, cell] : tally.groups) out.add(cell);
  out.add(tally.other_groups);
  return out;
}

StepCounts counts_of(const Cell& cell, const std::string& step) {
  auto found = cell.steps.find(step);
  return found == cell.steps.end() ? StepCounts{} : found->second;
}

StepGroup compare(const std::string& group, const StepCounts& here, const StepCounts& all) {
  StepGroup out;
  out.group = group;
  out.counts = here;
  out.missing = share(here.missing, here.answers());
  Count others = all.answers() - here.answers();
  Count missing_there = all.missing - here.missing;
  out.elsewhere = share(missing_there, others);
  out.chance = fisher_exact(here.missing, here.answers() - here.missing, missing_there, others - missing_there);
  return out;
}

std::vector<StepPart> steps_of(const RubricTally& tally, const Cell& all, const RubricNames& names) {
  std::vector<StepPart> out;
  for (const auto& [id, counts] : all.steps) {
    StepPart part;
    part.id = id;
    auto title = names.steps.find(id);
    part.title = title == names.steps.end() ? id : title->second;
    part.core = tally.core.contains(id);
    part.counts = counts;
    part.missing = share(counts.missing, counts.answers());
    part.vague = share(counts.vague, counts.answers());
    bool several = tally.groups.size() + (tally.other_groups.answers > 0 ? 1U : 0U) > 1;
    for (const auto& [group, cell] : tally.groups) {
      StepCounts here = counts_of(cell, id);
      if (several && here.answers() > 0) part.groups.push_back(compare(group, here, counts));
    }
    out.push_back(std::move(part));
  }
  std::stable_sort(out.begin(), out.end(), [](const StepPart& a, const StepPart& b) { return a.missing.value > b.missing.value; });
  return out;
}

// Holm's correction over all steps and groups; says which differ. Returns how many comparisons there are.
std::size_t correct(std::vector<StepPart>& steps) {
  std::vector<double> chances;
  for (const StepPart& step : steps) {
    for (const StepGroup& group : step.groups) chances.push_back(group.chance);
  }
  std::vector<double> raised = holm(chances);
  auto next = raised.begin();
  for (StepPart& step : steps) {
    for (StepGroup& group : step.groups) {
      group.raised = *next++;
      if (group.raised < kLimit) group.differs = group.missing.value > group.elsewhere.value ? Differs::more : Differs::less;
    }
  }
  return chances.size();
}

RangePart range_of(const std::string& group, const MarkerCounts& marker) {
  RangePart out;
  out.group = group;
  double sum = 0.0;
  for (const auto& [mark, count] : marker.marks) {
    out.marks += count;
    sum += static_cast<double>(mark) * static_cast<double>(count);
  }
  if (out.marks > 0) out.mean = sum / static_cast<double>(out.marks);
  Count below = 0, inside = 0, above = 0;
  double off = 0.0;
  for (const auto& [outside, count] : marker.outside) {
    (outside < 0 ? below : outside > 0 ? above : inside) += count;
    off += static_cast<double>(outside) * static_cast<double>(count);
  }
  Count ranged = below + inside + above;
  out.below = share(below, ranged);
  out.inside = share(inside, ranged);
  out.above = share(above, ranged);
  if (ranged > 0) out.off = off / static_cast<double>(ranged);
  return out;
}

MarkerPart marker_of(const RubricTally& tally, const Cell& all, std::size_t which) {
  MarkerPart out;
  out.all = range_of("", all.markers[which]);
  for (const auto& [group, cell] : tally.groups) {
    if (tally.groups.size() > 1 && !cell.markers[which].marks.empty()) out.groups.push_back(range_of(group, cell.markers[which]));
  }
  out.placed = all.markers[which].drift.n;
  out.drift = drift(all.markers[which].drift);
  return out;
}

GroupAgreement agreement_of(const std::string& group, const Crosstab& table) {
  GroupAgreement out;
  out.group = group;
  Count exact = 0, within = 0;
  for (const auto& [marks, count] : table) {
    int apart = std::abs(marks.first - marks.second);
    out.answers += count;
    if (apart == 0) exact += count;
    if (apart <= 1) within += count;
  }
  out.exact = share(exact, out.answers);
  out.within_one = share(within, out.answers);
  return out;
}

std::vector<Script> draw(const RubricTally& tally, std::size_t wanted) {
  std::map<int, std::vector<Script>> drawn;
  std::size_t count = 0;
  for (std::size_t turn = 0; turn < kMostSample && count < wanted; ++turn) {
    for (const auto& [mark, scripts] : tally.sample) {
      if (count >= wanted || turn >= scripts.size()) continue;
      drawn[mark].push_back(*std::next(scripts.begin(), static_cast<std::ptrdiff_t>(turn)));
      ++count;
    }
  }
  std::vector<Script> out;
  for (auto& [mark, scripts] : drawn) out.insert(out.end(), scripts.begin(), scripts.end());
  return out;
}

RubricPart rubric_part(const std::string& id, const RubricTally& tally, const RubricNames& names, std::uint64_t seed, std::size_t sample) {
  RubricPart out;
  out.id = id;
  out.names = names;
  if (out.names.title.empty()) out.names.title = id;
  out.of = tally.of;
  Cell all = all_groups(tally);
  out.answers = all.answers;
  for (const auto& [group, cell] : tally.groups) {
    out.groups.emplace_back(group, cell.answers);
    if (tally.groups.size() > 1 && !cell.crosstab.empty()) out.group_agreement.push_back(agreement_of(group, cell.crosstab));
  }
  out.other_groups = tally.other_groups.answers;
  out.steps = steps_of(tally, all, names);
  out.comparisons = correct(out.steps);
  out.calculations = all.calculations;
  for (std::size_t i = 0; i < out.markers.size(); ++i) out.markers[i] = marker_of(tally, all, i);
  out.agreement = marker_agreement(all.crosstab, seed);
  out.crosstab = all.crosstab;
  out.reasons = tally.reasons;
  out.again.assign(tally.again.begin(), tally.again.end());
  out.sample = draw(tally, sample);
  return out;
}

}  // namespace

Moderation moderate(const Tally& tally, const std::map<std::string, RubricNames>& names, std::size_t sample) {
  Moderation out;
  out.seed = tally.seed();
  for (const auto& [id, part] : tally.rubrics()) {
    auto found = names.find(id);
    out.rubrics.push_back(rubric_part(id, part, found == names.end() ? RubricNames{} : found->second, tally.seed(), sample));
  }
  return out;
}

}  // namespace retort::cohort
