// How much a whole check costs beside reading the text as ICU must: NFC, case folding, word break.
// Run: build/release/tests/retort_bench. Not a test: nothing here passes or fails.
#include <benchmark/benchmark.h>
#include <unicode/brkiter.h>
#include <unicode/locid.h>
#include <unicode/normalizer2.h>
#include <unicode/unistr.h>

#include <algorithm>
#include <fstream>
#include <iostream>
#include <memory>
#include <thread>

#include "intake/answer.h"
#include "intake/csv.h"
#include "intake/rubric_folder.h"
#include "report/results_json.h"
#include "report/review_json.h"
#include "review/review.h"
#include "review/shelf.h"

namespace {

using namespace retort;

// About 150 words, spelt as pupils spell.
const char* const kAnswer =
    "First I would set up the two clamp stands and hang the spring of one of them, then clamp the metre rule next to it so it is "
    "strait up. Befor putting any weights on I would read where the botom of the spring is on the ruler and write it down, this is "
    "the orignal length. Then add 1.5 N and wait for it to stop bouncing and read it again at eye level. The extention is the new "
    "length take away the original length. Do the same for 3.0 N, 4.5 N, 6.0 N and 7.5 N and put them all in a table. Repeat the "
    "hole thing three times and work out a mean, leave out any anomolies. I would wear goggles incase the spring snaps and put "
    "something heavy on the base of the stand. The ruler might not be strait so that could make it inacurate. Then plot a graph.";

struct Loaded {
  RubricFolder folder;
  std::unique_ptr<Checker> checker;
};

Loaded load(const std::string& name) {
  Result<RubricFolder> folder = open_rubrics();
  if (!folder) std::abort();
  Loaded out;
  out.folder = std::move(*folder);
  out.checker = Checker::make(name, out.folder.files, out.folder.real_words).checker;
  if (!out.checker) std::abort();
  return out;
}

void bare_icu(benchmark::State& state) {
  UErrorCode status = U_ZERO_ERROR;
  const icu::Normalizer2* nfc = icu::Normalizer2::getNFCInstance(status);
  std::unique_ptr<icu::BreakIterator> words(icu::BreakIterator::createWordInstance(icu::Locale::getRoot(), status));
  for (auto _ : state) {
    icu::UnicodeString text = nfc->normalize(icu::UnicodeString::fromUTF8(kAnswer), status);
    icu::UnicodeString folded = text;
    folded.foldCase();
    words->setText(folded);
    int count = 0;
    while (words->next() != icu::BreakIterator::DONE) ++count;
    benchmark::DoNotOptimize(count);
  }
}
BENCHMARK(bare_icu);

void whole_check(benchmark::State& state) {
  Loaded loaded = load("spring-extension.json");
  Reviewer reviewer(*loaded.checker);
  std::string line = std::string(R"({"id": "a1", "text": ")") + kAnswer + "\"}";
  std::string out;
  Answer answer;
  Findings findings;
  for (auto _ : state) {
    out.clear();
    read_answer_line(line, "bench", 1, answer, findings);
    Review review = reviewer.review(answer.text);
    append_review_json(loaded.checker->rubric(), answer, review, out);
    benchmark::DoNotOptimize(out.data());
  }
}
BENCHMARK(whole_check);

// The same with every other rubric in memory as well, as 'retort class' and 'retort serve' have them.
void whole_check_beside_all_rubrics(benchmark::State& state) {
  Result<RubricFolder> folder = open_rubrics();
  if (!folder) std::abort();
  std::vector<Shelved> shelf = shelve(folder->files, folder->real_words, 1);
  auto spring = std::find_if(shelf.begin(), shelf.end(), [](const Shelved& one) { return one.name == "spring-extension.json"; });
  if (spring == shelf.end() || !spring->made.checker) std::abort();
  const Checker& checker = *spring->made.checker;
  Reviewer reviewer(checker);
  std::string line = std::string(R"({"id": "a1", "text": ")") + kAnswer + "\"}";
  std::string out;
  Answer answer;
  Findings findings;
  for (auto _ : state) {
    out.clear();
    read_answer_line(line, "bench", 1, answer, findings);
    Review review = reviewer.review(answer.text);
    append_review_json(checker.rubric(), answer, review, out);
    benchmark::DoNotOptimize(out.data());
  }
}
BENCHMARK(whole_check_beside_all_rubrics);

void reading_only(benchmark::State& state) {
  Reader reader;
  Document document;
  for (auto _ : state) {
    reader.read(kAnswer, document);
    benchmark::DoNotOptimize(document.tokens.data());
  }
}
BENCHMARK(reading_only);

void review_only(benchmark::State& state) {
  Loaded loaded = load("spring-extension.json");
  Reviewer reviewer(*loaded.checker);
  for (auto _ : state) {
    Review review = reviewer.review(kAnswer);
    benchmark::DoNotOptimize(review.steps.data());
  }
}
BENCHMARK(review_only);

void start_with_all_rubrics(benchmark::State& state) {
  for (auto _ : state) {
    Result<RubricFolder> folder = open_rubrics();
    if (!folder) std::abort();
    std::vector<Shelved> shelf = shelve(folder->files, folder->real_words, std::thread::hardware_concurrency());
    benchmark::DoNotOptimize(shelf.data());
  }
}
BENCHMARK(start_with_all_rubrics)->Unit(benchmark::kMillisecond)->UseRealTime();

// Linear in the text: the time for each byte stays the same as the text grows.
void long_text(benchmark::State& state) {
  Loaded loaded = load("spring-extension.json");
  Reviewer reviewer(*loaded.checker);
  std::string text;
  for (std::int64_t i = 0; i < state.range(0); ++i) text += std::string(kAnswer) + "\n";
  for (auto _ : state) {
    Review review = reviewer.review(text);
    benchmark::DoNotOptimize(review.steps.data());
  }
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(text.size()));
}
BENCHMARK(long_text)->Arg(1)->Arg(16)->Arg(256)->Arg(1024)->Unit(benchmark::kMillisecond);

// calc adds this to the reading of prose; and of prose full of sums.
void calc_on_prose(benchmark::State& state) {
  Loaded loaded = load("spring-extension.json");
  calc::Calculator calculator(loaded.checker->formulas());
  for (auto _ : state) benchmark::DoNotOptimize(calculator.check(kAnswer).data());
}
BENCHMARK(calc_on_prose);

void calc_on_sums(benchmark::State& state) {
  Loaded loaded = load("spring-extension.json");
  calc::Calculator calculator(loaded.checker->formulas());
  const char* text =
      "The spring was 4.2 cm long and 16.7 cm with 5 N on it. extension = 16.7 - 4.2 = 12.5 cm = 0.125 m. k = 5/0.125 = 40 N/m. The mean is 0.41.";
  for (auto _ : state) benchmark::DoNotOptimize(calculator.check(text).data());
}
BENCHMARK(calc_on_sums);

// Hostile lines, a hundred thousand signs long: time must grow with the length and no faster.
void calc_hostile(benchmark::State& state) {
  static const char* const kPieces[] = {
      "(", ")", "1+", "2 x ", "= ", "1 = ", "3 cm = ", "sin ", "-", "9, ", "so 3 ", "mean 4 ", "k = ", "1/", "5 N and 2 cm so 7 J. ", "12 waves "};
  Loaded loaded = load("spring-extension.json");
  calc::Calculator calculator(loaded.checker->formulas());
  std::string text;
  std::string_view piece = kPieces[state.range(0)];
  while (text.size() < static_cast<std::size_t>(state.range(1))) text += piece;
  for (auto _ : state) benchmark::DoNotOptimize(calculator.check(text).data());
  state.SetLabel(std::string(piece));
}
BENCHMARK(calc_hostile)->ArgsProduct({benchmark::CreateDenseRange(0, 15, 1), {10000, 100000}})->Unit(benchmark::kMillisecond);

// A results table from its bytes to JSON: 5 rows of 3 readings, and the most that the command takes.
void results_table(benchmark::State& state) {
  std::string csv = "Force / N,Extension 1 / cm,Extension 2 / cm,Extension 3 / cm\n";
  for (std::int64_t i = 1; i <= state.range(0); ++i) {
    std::string whole = std::to_string(i * 25);
    csv += std::to_string(i) + "," + whole + ".1," + whole + ".3," + whole + ".2\n";
  }
  for (auto _ : state) {
    Findings findings;
    Result<Table> table = read_csv(csv, "bench", findings);
    if (!table) std::abort();
    Result<results::Analysis> analysis = results::analyse(*table, "bench", {});
    if (!analysis) std::abort();
    benchmark::DoNotOptimize(results_json(*analysis, csv).data());
  }
  state.SetItemsProcessed(state.iterations() * state.range(0));
}
BENCHMARK(results_table)->Arg(5)->Arg(100)->Arg(5000)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
