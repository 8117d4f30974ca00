#include "report/moderation_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>

#include "report/advice.h"

namespace retort {
namespace {

using cohort::Count;

std::string number(Count count) {
  return std::to_string(count);
}

std::string whole_percent(double share) {
  double value = share * 100;
  // Shares near the ends must not look like none or all.
  if (value > 0 && value < 0.5) return "under 1";
  if (value < 100 && value >= 99.5) return "over 99";
  return decimals(value, 0);
}

std::string of(const cohort::Share& share, std::string_view what) {
  return number(share.count) + " of " + number(share.of) + std::string(what);
}

std::string chance_words(double chance) {
  return chance < 0.001 ? "less than 0.001" : decimals(chance, 3);
}

bool because(const cohort::Again& again, cohort::Reason reason) {
  return (again.reasons >> static_cast<unsigned>(reason) & 1U) != 0;
}

std::string estimate_words(const cohort::Estimate& estimate) {
  std::string out = decimals(estimate.value, 2);
  if (estimate.interval) out += " (" + decimals(estimate.interval->low, 2) + " to " + decimals(estimate.interval->high, 2) + ")";
  return out;
}

std::string drift_words(const cohort::MarkerPart& marker) {
  const cohort::Drift& drift = *marker.drift;
  std::string range = " (" + signed_marks(drift.interval.low) + " to " + signed_marks(drift.interval.high) + ")";
  std::string out =
      "Along the pile, from its first answer to its last, the marks moved by " + signed_marks(drift.change) + range + " against the range: ";
  if (!drift.beyond_chance()) return out + "no drift that chance would not explain.";
  return out + (drift.change > 0 ? "more generous" : "stricter") + " towards the end, more than chance explains. Compare a few from each end.";
}

}  // namespace

std::string decimals(double value, int places) {
  std::array<char, 64> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "%.*f", places, value);
  std::string out = buffer.data();
  // No minus before nothing.
  bool zero = out.find_first_not_of("-0.") == std::string::npos;
  return zero && out.starts_with('-') ? out.substr(1) : out;
}

std::string percent(double share) {
  return whole_percent(share) + " %";
}

std::string percent_range(const cohort::Share& share) {
  return percent(share.value) + " (" + whole_percent(share.interval.low) + " to " + whole_percent(share.interval.high) + " %)";
}

std::string signed_marks(double marks) {
  std::string out = decimals(marks, 2);
  return out.starts_with('-') || out == "0.00" ? out : "+" + out;
}

std::string group_name(const std::string& group) {
  return group.empty() ? "(no group)" : group;
}

std::string answers_words(const cohort::RubricPart& part) {
  std::string out = number(part.answers) + (part.answers == 1 ? " answer" : " answers");
  if (part.groups.size() == 1 && part.other_groups == 0) return part.groups[0].first.empty() ? out : out + " of " + part.groups[0].first;
  out += " in " + number(part.groups.size()) + (part.other_groups > 0 ? " groups and others" : " groups") + ": ";
  for (std::size_t i = 0; i < part.groups.size(); ++i)
    out += (i == 0 ? "" : ", ") + group_name(part.groups[i].first) + " " + number(part.groups[i].second);
  if (part.other_groups > 0) out += ", others " + number(part.other_groups);
  return out;
}

std::string interval_words() {
  return "The figures in brackets say how far chance alone may have moved a figure: with few answers they lie far apart. Nineteen brackets in twenty "
         "hold the true figure.";
}

std::string omission_words(const cohort::StepPart& step) {
  std::string out =
      "\"" + step.title + "\" is missing in " + of(step.missing, step.missing.of == 1 ? " answer, " : " answers, ") + percent_range(step.missing);
  if (step.counts.vague > 0) out += ", and vague in " + number(step.counts.vague);
  return out + ".";
}

std::vector<std::string> difference_words(const cohort::RubricPart& part) {
  std::vector<std::string> out;
  for (const cohort::StepPart& step : part.steps) {
    for (const cohort::StepGroup& group : step.groups) {
      if (group.differs == cohort::Differs::no) continue;
      out.push_back("\"" + step.title + "\" is missing " + (group.differs == cohort::Differs::more ? "more" : "less") + " often in " +
                    group_name(group.group) + ": in " + of(group.missing, "") + ", " + percent_range(group.missing) + ", and elsewhere in " +
                    of(group.elsewhere, "") + ", " + percent_range(group.elsewhere) + ". Chance alone would do this or more with a probability of " +
                    chance_words(group.raised) + ".");
    }
  }
  std::string compared = number(part.comparisons) + " comparisons were made, and allowed for.";
  if (out.empty()) {
    out.push_back("No group misses a step more or less often than the others by more than chance explains. " + compared);
  } else {
    out.push_back(compared +
                  " A difference may come from what was taught, from the time there was, or from how it was written down. It is a question to ask, "
                  "no verdict.");
  }
  return out;
}

std::vector<std::string> calculation_words(const cohort::CalculationCounts& counts) {
  std::vector<std::string> out;
  Count all = counts.right + counts.wrong + counts.unclear;
  if (all == 0) return out;
  out.push_back(number(counts.answers) + (counts.answers == 1 ? " answer has" : " answers have") + " calculations: " + number(counts.right) +
                " right, " + number(counts.wrong) + " wrong, " + number(counts.unclear) + " that could not be judged.");
  std::vector<std::pair<std::string, Count>> slips(counts.slips.begin(), counts.slips.end());
  std::stable_sort(slips.begin(), slips.end(), [](const auto& a, const auto& b) { return a.second > b.second; });
  for (const auto& [slip, count] : slips) out.push_back(number(count) + (count == 1 ? " time: " : " times: ") + slip_words(slip));
  return out;
}

std::vector<std::string> agreement_words(const cohort::RubricPart& part) {
  std::vector<std::string> out;
  const cohort::MarkerAgreement& agreement = part.agreement;
  if (agreement.answers == 0) return out;
  out.push_back("Two markers marked " + number(agreement.answers) + (agreement.answers == 1 ? " answer" : " answers") +
                ". They gave the same mark to " + number(agreement.exact.count) + ", " + percent_range(agreement.exact) +
                ", and were within one mark on " + number(agreement.within_one.count) + ", " + percent_range(agreement.within_one) + ".");
  out.push_back("On average the first gave " + decimals(agreement.first_mean, 2) + " and the second " + decimals(agreement.second_mean, 2) + ".");
  if (!agreement.kappa || !agreement.weighted) {
    out.push_back("All marks are the same, so that agreement beyond chance cannot be worked out.");
    return out;
  }
  out.push_back("Agreement beyond chance, where 1 is full and 0 is what chance alone would give: Cohen's kappa " + estimate_words(*agreement.kappa) +
                "; counting near misses as nearly right (quadratic-weighted kappa) " + estimate_words(*agreement.weighted) + ".");
  return out;
}

std::string marker_name(std::size_t which) {
  return which == 0 ? "first marker" : "second marker";
}

std::vector<std::string> marker_words(const cohort::RubricPart& part, std::size_t which) {
  std::vector<std::string> out;
  const cohort::MarkerPart& marker = part.markers[which];
  if (marker.all.marks == 0) return out;
  const cohort::RangePart& all = marker.all;
  std::string words = number(all.marks) + (all.marks == 1 ? " mark" : " marks") + ", " + decimals(all.mean, 2) + " on average";
  if (all.inside.of > 0) {
    words += "; " + number(all.inside.count) + " inside the indicated range, " + percent_range(all.inside) + ", " + number(all.below.count) +
             " below it, " + number(all.above.count) + " above it; distance from the range " + signed_marks(all.off) + " on average";
  }
  out.push_back(words + ".");
  if (marker.drift) out.push_back(drift_words(marker));
  return out;
}

std::string reason_words(const cohort::Again& again) {
  std::string out;
  auto add = [&](const std::string& words) { out += (out.empty() ? "" : "; ") + words; };
  const cohort::Script& script = again.script;
  if (because(again, cohort::Reason::markers_apart)) add("the markers are " + std::to_string(std::abs(script.mark - script.mark2)) + " marks apart");
  if (because(again, cohort::Reason::above_range)) add("a mark well above the indicated range");
  if (because(again, cohort::Reason::below_range)) add("a mark well below the indicated range");
  if (because(again, cohort::Reason::nothing_found)) add("no step was recognised");
  if (because(again, cohort::Reason::core_missing)) add("a high mark, yet two core steps or more are missing");
  return out;
}

std::string marks_words(const cohort::Script& script) {
  if (script.mark < 0 && script.mark2 < 0) return "no mark";
  if (script.mark2 < 0) return std::to_string(script.mark);
  if (script.mark < 0) return "- and " + std::to_string(script.mark2);
  return std::to_string(script.mark) + " and " + std::to_string(script.mark2);
}

std::string range_words(const cohort::Script& script) {
  if (script.high < 0) return "none";
  return script.low == script.high ? std::to_string(script.low) : std::to_string(script.low) + " to " + std::to_string(script.high);
}

std::string again_words(const cohort::RubricPart& part) {
  if (part.again.empty()) return "No answer stands out.";
  std::string out = "The most urgent first. In all: ";
  const std::array<std::string_view, cohort::kReasons.size()> kinds = {"markers two marks or more apart", "a mark two or more above the range",
                                                                       "a mark two or more below the range", "no step recognised",
                                                                       "a high mark with core steps missing"};
  bool first = true;
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    if (part.reasons[i] == 0) continue;
    out += (first ? "" : ", ") + number(part.reasons[i]) + " with " + std::string(kinds[i]);
    first = false;
  }
  return out + ". The range is the program's indication from the steps it found; where it and a mark part, the answer decides.";
}

std::string sample_words(const cohort::Moderation& moderation, const cohort::RubricPart& part) {
  if (part.sample.empty()) return "There is no answer to draw.";
  return number(part.sample.size()) + (part.sample.size() == 1 ? " answer" : " answers") + " drawn by lot, each mark in turn (seed " +
         std::to_string(moderation.seed) + "). The same seed draws the same answers, in whatever order they come.";
}

}  // namespace retort
