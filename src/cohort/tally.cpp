#include "cohort/tally.h"

#include <algorithm>
#include <cstdlib>

#include "base/digest.h"

namespace retort::cohort {
namespace {

constexpr int kFarApart = 2;  // marks

template <typename Map>
void add_counts(Map& into, const Map& from) {
  for (const auto& [key, count] : from) into[key] += count;
}

// Keeps the first `most`; whether any had to go.
template <typename Container>
bool keep_first(Container& all, std::size_t most) {
  if (all.size() <= most) return false;
  while (all.size() > most) all.erase(std::prev(all.end()));
  return true;
}

template <typename Item>
void insert_first(std::multiset<Item>& all, Item item, std::size_t most) {
  if (all.size() >= most && !(item < *all.rbegin())) return;
  all.insert(std::move(item));
  keep_first(all, most);
}

void add_mark(MarkerCounts& marker, int mark, const Entry& entry) {
  if (mark < 0) return;
  ++marker.marks[mark];
  if (!entry.has_level) return;
  int outside = mark > entry.level.high ? mark - entry.level.high : std::min(0, mark - entry.level.low);
  ++marker.outside[outside];
  if (entry.place >= 0) marker.drift.add(entry.place, mark, entry.level.low, entry.level.high);
}

int higher_mark(const Entry& entry) {
  return std::max(entry.mark, entry.mark2);
}

// How urgent it is, in about hundredths of a mark.
std::int64_t weight_of(const Entry& entry, unsigned reasons) {
  auto has = [&](Reason reason) { return (reasons >> static_cast<unsigned>(reason) & 1U) != 0; };
  std::int64_t weight = 0;
  if (has(Reason::markers_apart)) weight += 100 * std::abs(entry.mark - entry.mark2);
  int lowest = entry.mark < 0 ? entry.mark2 : entry.mark2 < 0 ? entry.mark : std::min(entry.mark, entry.mark2);
  if (has(Reason::above_range)) weight += 100 * (higher_mark(entry) - entry.level.high);
  if (has(Reason::below_range)) weight += 100 * (entry.level.low - lowest);
  if (has(Reason::nothing_found)) weight += 150;
  if (has(Reason::core_missing)) weight += 50;
  return weight;
}

// The parts are of bounded length and joined by NUL bytes; an id that holds one is only less random.
std::string key_of(std::uint64_t seed, const Entry& entry) {
  std::string joined = std::to_string(seed);
  for (const std::string* part : {&entry.rubric, &entry.group, &entry.id}) {
    joined += '\0';
    joined += *part;
  }
  return hex(sha256(joined)).substr(0, 32);
}

Script script_of(std::uint64_t seed, const Entry& entry) {
  Script out{key_of(seed, entry), entry.id, entry.group, entry.mark, entry.mark2, -1, -1};
  if (entry.has_level) {
    out.low = entry.level.low;
    out.high = entry.level.high;
  }
  return out;
}

// The mark that a sample is spread over; -1 if there is none.
int stratum_of(const Entry& entry) {
  if (entry.mark >= 0) return entry.mark;
  if (entry.mark2 >= 0) return entry.mark2;
  return entry.has_level ? (entry.level.low + entry.level.high) / 2 : -1;
}

}  // namespace

std::string_view name(Reason reason) {
  switch (reason) {
    case Reason::markers_apart:
      return "markers-apart";
    case Reason::above_range:
      return "above-range";
    case Reason::below_range:
      return "below-range";
    case Reason::nothing_found:
      return "nothing-found";
    case Reason::core_missing:
      return "core-missing";
  }
  return "";
}

unsigned reasons_of(const Entry& entry) {
  unsigned out = 0;
  auto because = [&](Reason reason, bool holds) { out |= static_cast<unsigned>(holds) << static_cast<unsigned>(reason); };
  because(Reason::markers_apart, entry.mark >= 0 && entry.mark2 >= 0 && std::abs(entry.mark - entry.mark2) >= kFarApart);
  for (int mark : {entry.mark, entry.mark2}) {
    if (mark < 0 || !entry.has_level) continue;
    because(Reason::above_range, mark >= entry.level.high + kFarApart);
    because(Reason::below_range, mark <= entry.level.low - kFarApart);
  }
  bool any_found = std::any_of(entry.steps.begin(), entry.steps.end(), [](const Entry::Step& step) { return step.status != StepStatus::missing; });
  because(Reason::nothing_found, !entry.steps.empty() && !any_found);
  auto core_missing =
      std::count_if(entry.steps.begin(), entry.steps.end(), [](const Entry::Step& step) { return step.core && step.status == StepStatus::missing; });
  because(Reason::core_missing, entry.has_level && core_missing >= 2 && higher_mark(entry) > 0 && 3 * higher_mark(entry) >= 2 * entry.level.of);
  return out;
}

void Cell::add(const Entry& entry) {
  ++answers;
  for (const Entry::Step& step : entry.steps) {
    StepCounts& counts = steps[step.id];
    if (step.status == StepStatus::present) ++counts.present;
    if (step.status == StepStatus::vague) ++counts.vague;
    if (step.status == StepStatus::missing) ++counts.missing;
  }
  add_mark(markers[0], entry.mark, entry);
  add_mark(markers[1], entry.mark2, entry);
  if (entry.mark >= 0 && entry.mark2 >= 0) ++crosstab[{entry.mark, entry.mark2}];
  if (entry.right + entry.wrong + entry.unclear > 0) ++calculations.answers;
  calculations.right += entry.right;
  calculations.wrong += entry.wrong;
  calculations.unclear += entry.unclear;
  for (const std::string& slip : entry.slips) ++calculations.slips[slip];
  steps_cut = keep_first(steps, kMostSteps) || steps_cut;
}

void Cell::add(const Cell& other) {
  answers += other.answers;
  for (const auto& [id, counts] : other.steps) {
    StepCounts& mine = steps[id];
    mine.present += counts.present;
    mine.vague += counts.vague;
    mine.missing += counts.missing;
  }
  for (std::size_t i = 0; i < markers.size(); ++i) {
    add_counts(markers[i].marks, other.markers[i].marks);
    add_counts(markers[i].outside, other.markers[i].outside);
    markers[i].drift.add(other.markers[i].drift);
  }
  add_counts(crosstab, other.crosstab);
  calculations.answers += other.calculations.answers;
  calculations.right += other.calculations.right;
  calculations.wrong += other.calculations.wrong;
  calculations.unclear += other.calculations.unclear;
  add_counts(calculations.slips, other.calculations.slips);
  steps_cut = keep_first(steps, kMostSteps) || steps_cut || other.steps_cut;
}

void RubricTally::trim() {
  while (groups.size() > kMostGroups) {
    auto last = std::prev(groups.end());
    other_groups.add(last->second);
    groups.erase(last);
  }
  keep_first(core, kMostSteps);
}

void RubricTally::add(const RubricTally& other) {
  for (const auto& [group, cell] : other.groups) groups[group].add(cell);
  other_groups.add(other.other_groups);
  of = std::max(of, other.of);
  core.insert(other.core.begin(), other.core.end());
  for (std::size_t i = 0; i < reasons.size(); ++i) reasons[i] += other.reasons[i];
  for (const Again& item : other.again) insert_first(again, item, kMostAgain);
  for (const auto& [mark, scripts] : other.sample) {
    for (const Script& script : scripts) insert_first(sample[mark], script, kMostSample);
  }
  trim();
}

void Tally::add(const Entry& entry) {
  RubricTally& tally = rubrics_[entry.rubric];
  tally.groups[entry.group].add(entry);
  if (entry.has_level) tally.of = std::max(tally.of, entry.level.of);
  for (const Entry::Step& step : entry.steps) {
    if (step.core && !tally.core.contains(step.id)) tally.core.insert(step.id);
  }
  unsigned reasons = reasons_of(entry);
  int stratum = stratum_of(entry);
  if (reasons != 0 || stratum >= 0) {
    Script script = script_of(seed_, entry);
    for (std::size_t i = 0; i < kReasons.size(); ++i) tally.reasons[i] += reasons >> i & 1U;
    if (reasons != 0) insert_first(tally.again, Again{-weight_of(entry, reasons), script, reasons}, kMostAgain);
    if (stratum >= 0) insert_first(tally.sample[stratum], std::move(script), kMostSample);
  }
  tally.trim();
  trim();
}

void Tally::add(const Tally& other) {
  rubrics_cut_ = rubrics_cut_ || other.rubrics_cut_;
  for (const auto& [rubric, part] : other.rubrics_) add(rubric, part);
}

void Tally::add(const std::string& rubric, const RubricTally& part) {
  rubrics_[rubric].add(part);
  trim();
}

void Tally::trim() {
  rubrics_cut_ = keep_first(rubrics_, kMostRubrics) || rubrics_cut_;
}

Findings Tally::limits_met() const {
  Findings out;
  if (rubrics_cut_) out.push_back(make_finding(Code::tally_rubrics_cut, "", {std::to_string(kMostRubrics)}));
  for (const auto& [rubric, tally] : rubrics_) {
    if (tally.other_groups.answers > 0) out.push_back(make_finding(Code::tally_groups_cut, "", {std::to_string(kMostGroups), rubric}));
    bool cut = tally.other_groups.steps_cut ||
               std::any_of(tally.groups.begin(), tally.groups.end(), [](const auto& group) { return group.second.steps_cut; });
    if (cut) out.push_back(make_finding(Code::tally_steps_cut, "", {std::to_string(kMostSteps), rubric}));
  }
  return out;
}

}  // namespace retort::cohort
