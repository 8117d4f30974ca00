#include "cli/class_drafts.h"

#include <algorithm>
#include <thread>

#include "classroom/others.h"
#include "cli/answers_run.h"
#include "review/in_parallel.h"
#include "review/shelf.h"

namespace retort::cli {
namespace {

unsigned threads_of(const Options& options) {
  return options.threads != 0 ? options.threads : std::max(1U, std::thread::hardware_concurrency());
}

bool read_all(const Options& options, const std::vector<std::string>& inputs, const Rubric& rubric, Pseudonyms* codes, ClassDrafts& out) {
  AnswerStream stream(inputs, intake_options(options, codes));
  Findings findings;
  Answer answer;
  while (stream.next(answer, findings)) {
    if (!answer.rubric.empty() && answer.rubric != rubric.id) {
      findings.push_back(make_finding(Code::answer_other_rubric, answer.origin, {std::to_string(out.drafts.size() + 1), answer.rubric, rubric.id}));
    }
    if (out.drafts.size() == kMostDrafts) {
      print(make_finding(Code::class_too_many, "", {std::to_string(kMostDrafts)}));
      return false;
    }
    out.drafts.push_back({std::move(answer.id), std::move(answer.text), {}, {}});
    answer = {};
  }
  for (const Finding& finding : findings) print(finding);
  out.some_failed = stream.failed() > 0;
  if (!out.drafts.empty()) return true;
  print(make_finding(Code::class_empty, ""));
  return false;
}

void hold_against_others(const Options& options, const Ready& ready, std::vector<classroom::Draft>& drafts) {
  if (ready.checker->rubric().kind != RubricKind::method) return;  // a short answer fits many a question
  std::vector<Shelved> shelf;
  auto others = [&] {
    shelf = shelve(ready.choice.folder.files, ready.choice.folder.real_words, threads_of(options));
    std::vector<const Checker*> out;
    for (const Shelved& other : shelf) {
      if (other.made.checker && other.made.checker->rubric().kind == RubricKind::method && other.name != ready.choice.name && other.made.checker->rubric().id != ready.checker->rubric().id)
        out.push_back(other.made.checker.get());
    }
    return out;
  };
  classroom::name_better_fits(drafts, others, threads_of(options));
}

}  // namespace

ClassDrafts read_drafts(const Options& options, const std::vector<std::string>& inputs, const Ready& ready, Pseudonyms* codes) {
  ClassDrafts out;
  out.usable = read_all(options, inputs, ready.checker->rubric(), codes, out);
  if (!out.usable) return out;
  in_parallel(threads_of(options), out.drafts.size(), [&] {
    return [&, reviewer = Reviewer(*ready.checker)](std::size_t i) mutable { out.drafts[i].review = reviewer.review(out.drafts[i].text); };
  });
  hold_against_others(options, ready, out.drafts);
  return out;
}

}  // namespace retort::cli
