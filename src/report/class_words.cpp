#include "report/class_words.h"

#include "base/messages.h"
#include "report/advice.h"

namespace retort {
namespace {

std::string number(std::size_t value) {
  return std::to_string(value);
}

std::string list_of(const std::vector<std::string>& items) {
  std::string out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) out += i + 1 == items.size() ? " and " : ", ";
    out += items[i];
  }
  return out;
}

}  // namespace

std::string_view status_mark(StepStatus status) {
  return status == StepStatus::present ? "+" : status == StepStatus::vague ? "?" : ".";
}

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
  return number(count) + " " + std::string(count == 1 ? one : many);
}

std::string in_quotes(std::string_view title) {
  return "\"" + std::string(title) + "\"";
}

std::string lack_sentence(const ClassReport& report, std::size_t step) {
  const classroom::Tally& t = report.picture.tallies[step];
  std::string of = " of " + number(report.picture.drafts.size());
  if (t.missing == 0) return "Not clear enough for " + number(t.vague) + of + ".";
  std::string out = "Left out by " + number(t.missing) + of;
  if (t.vague > 0) out += ", not clear enough for " + number(t.vague) + " more";
  return out + ".";
}

std::string omission_sentence(const ClassReport& report, std::size_t step) {
  const classroom::Tally& t = report.picture.tallies[step];
  std::string out = number(t.missing) + " of " + number(report.picture.drafts.size()) +
                    (t.missing == 1 ? " leaves this out: " : " leave this out: ") + in_quotes(report.rubric.steps[step].title) + ".";
  if (t.vague > 0) out += " For " + number(t.vague) + " more it is not clear.";
  return out;
}

std::string drafts_sentence(const ClassReport& report) {
  std::size_t all = report.drafts.size();
  std::size_t left = all - report.picture.drafts.size();
  std::string out = counted(all, "draft", "drafts") + ".";
  if (left > 0) out += " " + number(left) + (left == 1 ? " has" : " have") + " no words and " + (left == 1 ? "is" : "are") + " not counted.";
  return out;
}

std::string sums_sentence(const classroom::Sums& sums) {
  std::size_t all = sums.right + sums.wrong + sums.unclear;
  if (all == 0) return "No calculations were found.";
  std::string out = counted(all, "calculation", "calculations") + " in " + counted(sums.pupils, "draft", "drafts") + ": " + number(sums.right) +
                    " right, " + number(sums.wrong) + " not right";
  if (sums.unclear > 0) out += ", " + number(sums.unclear) + " that cannot be judged";
  return out + ".";
}

std::string slip_sentence(const classroom::SlipTally& slip) {
  return std::string(message(slip_code(slip.slip)).what) + " " + counted(slip.count, "time", "times") + ", in " +
         counted(slip.pupils, "draft", "drafts") + ".";
}

std::string concern_sentence(const classroom::Concern& concern) {
  const Message& words = message(concern.code);
  return fill(words.what, concern.notes) + " " + std::string(words.todo);
}

std::string names(const std::vector<classroom::Draft>& drafts, const std::vector<std::size_t>& who) {
  std::vector<std::string> labels;
  for (std::size_t i : who) labels.push_back(printable(drafts[i].label, 60));
  return list_of(labels);
}

std::string titles(const Rubric& rubric, const std::vector<std::size_t>& steps) {
  std::vector<std::string> out;
  for (std::size_t step : steps) out.push_back(in_quotes(rubric.steps[step].title));
  return list_of(out);
}

std::string change_sentence(const classroom::Change& change) {
  std::size_t gained = 0;
  std::size_t lost = 0;
  for (const classroom::StepChange& step : change.steps) {
    gained += step.gained;
    lost += step.lost;
  }
  if (change.pupils.empty()) return "No draft could be compared: the names of the first and the second drafts do not match.";
  return counted(change.pupils.size(), "draft is", "drafts are") + " compared with the first: " + counted(gained, "step", "steps") + " gained, " +
         number(lost) + " lost.";
}

}  // namespace retort
