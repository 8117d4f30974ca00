#include "cli/class_drafts.h"

#include <algorithm>
#include <atomic>
#include <thread>

#include "classroom/fit.h"
#include "cli/answers_run.h"
#include "review/shelf.h"

namespace retort::cli {
namespace {

// Calls `work(thread's own worker, i)` for i from 0 to count - 1, on several threads.
template <typename MakeWorker>
void in_parallel(unsigned threads, std::size_t count, MakeWorker make_worker) {
  std::atomic<std::size_t> next{0};
  auto run = [&] {
    auto worker = make_worker();
    for (std::size_t i = next++; i < count; i = next++) worker(i);
  };
  std::vector<std::thread> pool;
  for (unsigned i = 1; i < std::min<std::size_t>(threads, count); ++i) pool.emplace_back(run);
  run();
  for (std::thread& thread : pool) thread.join();
}

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

// The titles of other practicals for drafts that fit this one badly. The other rubrics are made ready only if there are such.
void hold_against_others(const Options& options, const Ready& ready, std::vector<classroom::Draft>& drafts) {
  std::vector<std::size_t> doubtful;
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    if (drafts[i].review.words > 0 && classroom::fit(drafts[i].review.steps) <= classroom::kSurelyOwn) doubtful.push_back(i);
  }
  if (doubtful.empty()) return;
  unsigned threads = threads_of(options);
  const RubricFolder& folder = ready.choice.folder;
  std::vector<Shelved> shelf = shelve(folder.files, folder.real_words, threads);
  std::vector<const Checker*> others;
  for (const Shelved& other : shelf) {
    if (other.made.checker && other.name != ready.choice.name && other.made.checker->rubric().id != ready.checker->rubric().id)
      others.push_back(other.made.checker.get());
  }
  in_parallel(threads, doubtful.size(), [&] {
    std::vector<Reviewer> reviewers;
    for (const Checker* other : others) reviewers.emplace_back(*other);
    return [&, reviewers = std::move(reviewers)](std::size_t k) mutable {
      classroom::Draft& draft = drafts[doubtful[k]];
      double own = classroom::fit(draft.review.steps);
      double best = 0.0;
      for (std::size_t r = 0; r < reviewers.size(); ++r) {
        double other = classroom::fit(reviewers[r].review(draft.text).steps);
        if (other <= best || !classroom::fits_clearly_better(other, own)) continue;
        best = other;
        draft.fits_better = others[r]->rubric().title;
      }
    };
  });
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
