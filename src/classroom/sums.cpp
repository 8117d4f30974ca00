#include "classroom/sums.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "classroom/quote.h"

namespace retort::classroom {
namespace {

// Likeliest slip first; a wrong result with none named is counted with the arithmetic.
calc::Slip slip_of(const calc::Calculation& c) {
  return c.slips.empty() ? calc::Slip::arithmetic : c.slips.front();
}

// An example with the right value beats one without; then the first.
void offer_example(SlipTally& tally, std::string_view text, const calc::Calculation& c, Anonymity& anonymity) {
  bool better = tally.example.empty() || (tally.correct.empty() && !c.correct.empty());
  if (!better) return;
  std::string words = one_line(c.span.of(text));
  if (!anonymity.names_nobody(words)) return;
  tally.example = std::move(words);
  tally.correct = c.correct;
}

}  // namespace

Sums count_sums(const std::vector<Draft>& drafts, Anonymity& anonymity) {
  Sums out;
  std::map<calc::Slip, SlipTally> tallies;
  for (const Draft& draft : drafts) {
    std::map<calc::Slip, std::size_t> mine;
    for (const calc::Calculation& c : draft.review.calculations) {
      ++(c.verdict == calc::Verdict::right ? out.right : c.verdict == calc::Verdict::wrong ? out.wrong : out.unclear);
      if (c.verdict != calc::Verdict::wrong) continue;
      calc::Slip slip = slip_of(c);
      ++mine[slip];
      offer_example(tallies[slip], draft.text, c, anonymity);
    }
    out.pupils += draft.review.calculations.empty() ? 0U : 1U;
    out.pupils_wrong += mine.empty() ? 0U : 1U;
    for (const auto& [slip, count] : mine) {
      tallies[slip].count += count;
      ++tallies[slip].pupils;
    }
  }
  for (auto& [slip, tally] : tallies) {
    tally.slip = slip;
    out.slips.push_back(std::move(tally));
  }
  std::stable_sort(out.slips.begin(), out.slips.end(),
                   [](const SlipTally& a, const SlipTally& b) { return std::tie(a.pupils, a.count) > std::tie(b.pupils, b.count); });
  return out;
}

}  // namespace retort::classroom
