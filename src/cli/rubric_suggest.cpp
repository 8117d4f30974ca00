// retort rubric suggest: words to add to a rubric, from drafts that nearly match.
#include "author/suggest.h"
#include "base/messages.h"
#include "cli/answers_run.h"
#include "cli/support.h"
#include "report/page.h"

namespace retort::cli {
namespace {

constexpr std::size_t kMostForAStep = 8;

std::string words_of(const std::vector<std::string>& lists) {
  std::string out;
  for (const std::string& list : lists) out += (out.empty() ? "{" : ", {") + list + "}";
  return out;
}

std::string for_people(const Rubric& rubric, const std::vector<author::Suggestion>& all, std::size_t drafts, std::size_t width) {
  std::string out = "From " + std::to_string(drafts) + " drafts: words beside a step's own words where the step was not found. No list has them yet.\n";
  append_wrapped("Read where they stand. Where a word means the step, add it to a list, or a pattern to the step; then run 'retort rubric test'.", width, "", "", out);
  std::size_t step = SIZE_MAX;
  for (const author::Suggestion& one : all) {
    if (one.step != step) {
      step = one.step;
      append_wrapped(rubric.steps[step].title + "  [" + rubric.steps[step].id + "]", width, "\n" + std::to_string(step + 1) + ". ", "   ", out);
    }
    append_wrapped("\"" + one.word + "\", in " + std::to_string(one.drafts) + (one.drafts == 1 ? " draft" : " drafts") + ", beside " + words_of(one.beside), width, "   ", "     ", out);
    for (const author::SeenIn& seen : one.evidence) append_wrapped(printable(seen.label, 40) + ": \"" + printable(seen.clause, 160) + "\"", width, "     > ", "       ", out);
  }
  if (all.empty()) out += "\nNothing to suggest.\n";
  return out;
}

}  // namespace

int run_rubric_suggest(const Options& options) {
  std::unique_ptr<Ready> ready = make_ready(options.rubric);
  if (ready == nullptr) return kWrong;
  AnswerStream stream(options.inputs, intake_options(options, nullptr));
  auto data = ready->choice.folder.files.find(std::string(author::kKindsFile));
  Result<author::PointKinds> kinds = data == ready->choice.folder.files.end() ? author::PointKinds{} : author::read_kinds(data->second);
  if (!kinds) {
    print(kinds.finding());
    return kWrong;
  }
  author::Suggestions suggestions(*ready->checker, *kinds);
  Findings findings;
  for (Answer answer; stream.next(answer, findings); answer = {}) suggestions.add(answer.id, answer.text);
  for (const Finding& finding : findings) print(finding);
  // One draft's odd word is noise where there are many.
  std::size_t least = suggestions.drafts() >= 10 ? 2 : 1;
  int status = write_out(options, for_people(ready->checker->rubric(), suggestions.best(kMostForAStep, least), suggestions.drafts(), page_width(options)));
  return status == kDone && stream.failed() > 0 ? kSomeInputFailed : status;
}

}  // namespace retort::cli
