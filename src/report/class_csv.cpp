#include "report/class_csv.h"

#include <algorithm>

#include "report/class_words.h"
#include "report/csv_writer.h"

namespace retort {
namespace {

class ClassCsv {
 public:
  explicit ClassCsv(const ClassReport& report) : r_(report), p_(report.picture), csv_(out_) {}

  std::string run() {
    heading();
    for (std::size_t i : p_.drafts) row(i);
    for (std::size_t i = 0; i < r_.drafts.size(); ++i) {
      if (!classroom::counts(r_.drafts[i])) row(i);
    }
    return std::move(out_);
  }

 private:
  void heading() {
    csv_.text("Pupil");
    for (std::size_t step : p_.steps) csv_.text(std::to_string(step + 1) + " " + r_.rubric.steps[step].title);
    csv_.text("Present").text("Vague").text("Missing").text("Words");
    if (r_.with_range) csv_.text("Indication from").text("Indication to");
    csv_.text("Look at");
    if (r_.change != nullptr) csv_.text("Gained").text("Nearer").text("Lost");
    csv_.end_row();
  }

  void row(std::size_t i) {
    const classroom::Draft& draft = r_.drafts[i];
    bool counted_in = classroom::counts(draft);
    csv_.text(draft.label);
    std::size_t counts[3] = {};
    for (std::size_t step : p_.steps) {
      StepStatus status = draft.review.steps[step].status;
      ++counts[static_cast<std::size_t>(status)];
      csv_.text(counted_in ? status_word(status) : "");
    }
    for (StepStatus status : {StepStatus::present, StepStatus::vague, StepStatus::missing}) {
      if (counted_in)
        csv_.number(static_cast<std::int64_t>(counts[static_cast<std::size_t>(status)]));
      else
        csv_.empty();
    }
    csv_.number(static_cast<std::int64_t>(classroom::count_words(draft.text)));
    if (r_.with_range) range(draft, counted_in);
    csv_.text(concerns_of(i));
    if (r_.change != nullptr) change_of(i);
    csv_.end_row();
  }

  void range(const classroom::Draft& draft, bool counted_in) {
    if (counted_in)
      csv_.number(draft.review.level.low).number(draft.review.level.high);
    else
      csv_.empty().empty();
  }

  [[nodiscard]] std::string concerns_of(std::size_t draft) const {
    std::string out;
    for (const classroom::Concern& c : p_.concerns) {
      if (std::find(c.drafts.begin(), c.drafts.end(), draft) == c.drafts.end()) continue;
      out += (out.empty() ? "" : " ") + concern_sentence(c);
    }
    return out;
  }

  void change_of(std::size_t draft) {
    const auto& pupils = r_.change->pupils;
    auto mine = std::find_if(pupils.begin(), pupils.end(), [&](const classroom::PupilChange& pupil) { return pupil.after == draft; });
    if (mine == pupils.end()) {
      csv_.empty().empty().empty();
      return;
    }
    for (const auto* steps : {&mine->gained, &mine->nearer, &mine->lost}) csv_.text(joined(*steps));
  }

  [[nodiscard]] std::string joined(const std::vector<std::size_t>& steps) const {
    std::string out;
    for (std::size_t step : steps) out += (out.empty() ? "" : "; ") + r_.rubric.steps[step].title;
    return out;
  }

  const ClassReport& r_;
  const classroom::Picture& p_;
  std::string out_;
  CsvWriter csv_;
};

}  // namespace

std::string class_csv(const ClassReport& report) {
  return ClassCsv(report).run();
}

}  // namespace retort
