#include "classroom/others.h"

#include "classroom/fit.h"
#include "review/in_parallel.h"

namespace retort::classroom {

void name_better_fits(std::vector<Draft>& drafts, const std::function<std::vector<const Checker*>()>& others, unsigned threads) {
  std::vector<std::size_t> doubtful;
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    if (drafts[i].review.words > 0 && fit(drafts[i].review.steps) <= kSurelyOwn) doubtful.push_back(i);
  }
  if (doubtful.empty()) return;
  const std::vector<const Checker*> checkers = others();
  in_parallel(threads, doubtful.size(), [&] {
    std::vector<Reviewer> reviewers;
    for (const Checker* checker : checkers) reviewers.emplace_back(*checker);
    return [&, reviewers = std::move(reviewers)](std::size_t k) mutable {
      Draft& draft = drafts[doubtful[k]];
      double own = fit(draft.review.steps);
      double best = 0.0;
      for (std::size_t r = 0; r < reviewers.size(); ++r) {
        double other = fit(reviewers[r].review(draft.text).steps);
        if (other <= best || !fits_clearly_better(other, own)) continue;
        best = other;
        draft.fits_better = checkers[r]->rubric().title;
      }
    };
  });
}

}  // namespace retort::classroom
