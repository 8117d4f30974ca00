// retort check: each answer against a rubric.
#include "cli/answers_run.h"
#include "cli/class_drafts.h"
#include "cli/support.h"
#include "report/review_json.h"
#include "report/review_text.h"
#include "report/slips_html.h"

namespace retort::cli {
namespace {

// What is odd about an answer's bytes, said beside its review.
void note_odd(const Answer& answer, const Review& review, Findings& findings) {
  std::string name = answer.origin == answer.id ? answer.id : answer.origin + ", " + answer.id;
  if (review.invalid_bytes > 0) findings.push_back(make_finding(Code::invalid_utf8, name, {std::to_string(review.invalid_bytes)}));
  if (review.nul_bytes > 0) findings.push_back(make_finding(Code::nul_bytes, name, {std::to_string(review.nul_bytes)}));
  if (review.words == 0) findings.push_back(make_finding(Code::answer_empty, name));
}

void check_rubric_named(const Answer& answer, const Rubric& rubric, std::size_t number, Findings& findings) {
  if (answer.rubric.empty() || answer.rubric == rubric.id) return;
  findings.push_back(make_finding(Code::answer_other_rubric, answer.origin, {std::to_string(number), answer.rubric, rubric.id}));
}

Writer make_writer(const Checker& checker, Format format, std::size_t width) {
  auto reviewer = std::make_shared<Reviewer>(checker);
  return [&checker, reviewer, format, width](const Answer& answer, std::string& out, Findings& findings) {
    Review review = reviewer->review(answer.text);
    note_odd(answer, review, findings);
    if (format == Format::text) append_review_text(checker.rubric(), answer, review, width, out);
    else append_review_json(checker.rubric(), answer, review, out);
  };
}

// As HTML: one page with a slip for each draft.
int check_as_html(const Options& options, const Ready& ready) {
  Keyed keyed;
  if (!keyed.open(options.pseudonyms)) return kWrong;
  ClassDrafts read = read_drafts(options, options.inputs, ready, keyed.get());
  if (!read.usable || !keyed.save()) return kSomeInputFailed;
  int status = write_out(options, slips_html(ready.checker->rubric(), read.drafts, {1, options.with_range}));
  return status == kDone && read.some_failed ? kSomeInputFailed : status;
}

}  // namespace

int run_check(const Options& options) {
  std::unique_ptr<Ready> ready = make_ready(options.rubric);
  if (ready == nullptr) return kWrong;
  if (options.format == "html") return check_as_html(options, *ready);
  const Checker& checker = *ready->checker;
  const Rubric& rubric = checker.rubric();
  std::size_t width = page_width(options);
  Format format = format_of(options);
  AnswersRun run;
  run.heading = review_text_heading(rubric, width);
  run.closing = "\n" + review_text_closing(rubric, width);
  run.json_opening = "{\"format\":" + std::to_string(kReviewFormat) + ",\"rubric\":\"" + rubric.id + "\",\"answers\":";
  run.make_writer = [&] { return make_writer(checker, format, width); };
  run.look = [&](const Answer& answer, std::size_t number, Findings& findings) { check_rubric_named(answer, rubric, number, findings); };
  return run_answers(options, run);
}

}  // namespace retort::cli
