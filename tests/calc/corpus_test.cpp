// The labelled calculations of the corpus: how many verdicts and slips come out as labelled. The floors are
// below what was measured; the figures on texts that nobody had developed on are in corpus/README.md.
#include <sstream>

#include "calc_support.h"
#include "rubric/json.h"

namespace retort {
namespace {

struct Tally {
  std::size_t results = 0, verdicts = 0, wrong = 0, slips = 0, empty = 0, left_alone = 0;
};

std::string plain(std::string_view text) {
  std::string out;
  for (char c : text) {
    if (c != ',' && c != ' ') out += c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
  }
  return out;
}

void count(const json::Value& labelled, calc::Calculator& calculator, Tally& tally) {
  const std::string& text = labelled.find("text")->text;
  std::vector<calc::Calculation> found = calculator.check(text);
  const json::Value* results = labelled.find("results");
  if (results->items.empty()) {
    ++tally.empty;
    tally.left_alone += found.empty() ? 1U : 0U;
  }
  std::vector<bool> used(found.size(), false);
  for (const json::Value& label : results->items) {
    ++tally.results;
    bool wrong = label.find("verdict")->text == "wrong";
    tally.wrong += wrong ? 1U : 0U;
    for (std::size_t i = 0; i < found.size(); ++i) {
      if (used[i] || plain(found[i].result.of(text)) != plain(label.find("result")->text)) continue;
      used[i] = true;
      if (name(found[i].verdict) != label.find("verdict")->text) break;
      ++tally.verdicts;
      for (calc::Slip slip : found[i].slips) {
        if (name(slip) == label.find("slip")->text) {
          ++tally.slips;
          break;
        }
      }
      break;
    }
  }
}

TEST(Corpus, VerdictsAndSlipsComeOutAsLabelled) {
  std::istringstream lines(test::read_all(test::source_path("corpus/calculations.jsonl")));
  calc::Calculator calculator(test::book());
  Tally tally;
  for (std::string line; std::getline(lines, line);) {
    Findings findings;
    Result<json::Value> value = json::parse(line, "calculations.jsonl", findings);
    ASSERT_TRUE(value.ok());
    count(*value, calculator, tally);
  }
  std::printf("%zu results: verdict right for %.1f %%; %zu wrong ones: slip named for %.1f %%; %zu texts with nothing: left alone %.1f %%\n",
              tally.results, 100.0 * static_cast<double>(tally.verdicts) / static_cast<double>(tally.results), tally.wrong,
              100.0 * static_cast<double>(tally.slips) / static_cast<double>(tally.wrong), tally.empty,
              100.0 * static_cast<double>(tally.left_alone) / static_cast<double>(tally.empty));
  EXPECT_GT(tally.results, 1200U);
  EXPECT_GT(static_cast<double>(tally.verdicts), 0.93 * static_cast<double>(tally.results));
  EXPECT_GT(static_cast<double>(tally.slips), 0.88 * static_cast<double>(tally.wrong));
  EXPECT_GT(static_cast<double>(tally.left_alone), 0.97 * static_cast<double>(tally.empty));
}

// Long and hostile lines are answered; how long they take is a matter for the benchmark.
TEST(Corpus, HostileLinesAreAnswered) {
  calc::Calculator calculator(test::book());
  for (std::string_view piece : {"(", ")", "1+", "2 x ", "= ", "1 = ", "sin ", "-", "9, ", "1/0=", "\u00BD", "10^", "e = 1e", "\xFF"}) {
    std::string text;
    while (text.size() < 100000) text += piece;
    for (const calc::Calculation& c : calculator.check(text)) {
      ASSERT_LE(c.span.end, text.size());
      ASSERT_LE(c.span.begin, c.result.begin);
      ASSERT_LE(c.result.end, c.span.end);
    }
  }
}

}  // namespace
}  // namespace retort
