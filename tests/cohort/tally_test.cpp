#include "cohort/tally.h"

#include <algorithm>

#include "../support.h"
#include "cohort/tally_read.h"
#include "entries.h"
#include "report/tally_json.h"

namespace retort {
namespace {

using cohort::Entry;
using cohort::Tally;

Tally tally_of(const std::vector<Entry>& entries, std::uint64_t seed = 1) {
  Tally out(seed);
  for (const Entry& entry : entries) out.add(entry);
  return out;
}

Tally read_back(const std::string& lines, std::uint64_t seed = 1) {
  Tally out(seed);
  Findings findings;
  std::string_view rest = lines;
  while (!rest.empty()) {
    std::size_t end = rest.find('\n');
    Result<json::Value> value = json::parse(rest.substr(0, end), "tally", findings);
    EXPECT_TRUE(value.ok());
    EXPECT_TRUE(cohort::read_tally(*value, "tally", out, findings));
    rest.remove_prefix(end + 1);
  }
  EXPECT_TRUE(findings.empty());
  return out;
}

struct SplitRow {
  const char* name;
  std::size_t answers;
  std::size_t parts;
  std::uint64_t seed;
};

class TallySplit : public ::testing::TestWithParam<SplitRow> {};

TEST_P(TallySplit, AnySplitInAnyOrderGivesTheSameBytes) {
  const SplitRow& row = GetParam();
  std::vector<Entry> entries = test::some_entries(row.answers, row.seed);
  std::string whole = tally_json(tally_of(entries));
  cohort::Random random(row.seed);
  for (std::size_t i = entries.size(); i > 1; --i) std::swap(entries[i - 1], entries[random.next() % i]);
  std::vector<Tally> parts(row.parts, Tally(1));
  for (const Entry& entry : entries) parts[random.next() % row.parts].add(entry);
  Tally merged(1);
  Tally by_way_of_files(1);
  for (const Tally& part : parts) {
    merged.add(part);
    by_way_of_files.add(read_back(tally_json(part)));
  }
  EXPECT_EQ(tally_json(merged), whole);
  EXPECT_EQ(tally_json(by_way_of_files), whole);
}

INSTANTIATE_TEST_SUITE_P(Rows, TallySplit,
                         ::testing::Values(SplitRow{"nothing", 0, 2, 1}, SplitRow{"one", 1, 3, 2}, SplitRow{"few", 30, 4, 3},
                                           SplitRow{"many", 3000, 7, 4}, SplitRow{"more parts than answers", 5, 9, 5}),
                         test::row_name<SplitRow>);

TEST(Tally, CountsWhatIsThere) {
  Entry entry;
  entry.rubric = "r";
  entry.id = "a";
  entry.group = "g";
  entry.mark = 5;
  entry.mark2 = 2;
  entry.place = 7;
  entry.steps = {{"s", StepStatus::vague, true}, {"t", StepStatus::missing, false}};
  entry.has_level = true;
  entry.level = {2, 3, 6};
  entry.wrong = 1;
  entry.slips = {"rounding"};
  Tally tally = tally_of({entry, entry});
  const cohort::RubricTally& rubric = tally.rubrics().at("r");
  const cohort::Cell& cell = rubric.groups.at("g");
  EXPECT_EQ(cell.answers, 2U);
  EXPECT_EQ(cell.steps.at("s"), (cohort::StepCounts{0, 2, 0}));
  EXPECT_EQ(cell.steps.at("t"), (cohort::StepCounts{0, 0, 2}));
  EXPECT_EQ(cell.crosstab.at({5, 2}), 2U);
  EXPECT_EQ(cell.markers[0].outside.at(2), 2U);  // 5 is two above 2 to 3
  EXPECT_EQ(cell.markers[1].outside.at(0), 2U);
  EXPECT_EQ(cell.markers[0].drift.y, 10);  // twice (2 * 5 - 2 - 3) half marks
  EXPECT_EQ(cell.calculations.slips.at("rounding"), 2U);
  EXPECT_EQ(rubric.core, std::set<std::string>{"s"});
  EXPECT_EQ(rubric.again.size(), 2U);
  EXPECT_EQ(rubric.sample.at(5).size(), 2U);
}

struct ReasonRow {
  const char* name;
  int mark, mark2, low, high;
  StepStatus first, second;  // of two core steps
  std::vector<cohort::Reason> reasons;
};

class Reasons : public ::testing::TestWithParam<ReasonRow> {};

TEST_P(Reasons, AreThoseOfTheHeader) {
  const ReasonRow& row = GetParam();
  Entry entry;
  entry.mark = row.mark;
  entry.mark2 = row.mark2;
  entry.has_level = true;
  entry.level = {row.low, row.high, 6};
  entry.steps = {{"s", row.first, true}, {"t", row.second, true}};
  unsigned expected = 0;
  for (cohort::Reason reason : row.reasons) expected |= 1U << static_cast<unsigned>(reason);
  EXPECT_EQ(cohort::reasons_of(entry), expected);
}

constexpr StepStatus kYes = StepStatus::present;
constexpr StepStatus kNo = StepStatus::missing;
INSTANTIATE_TEST_SUITE_P(
    Rows, Reasons,
    ::testing::Values(ReasonRow{"all well", 4, 4, 3, 4, kYes, kYes, {}}, ReasonRow{"one mark apart", 4, 3, 3, 4, kYes, kYes, {}},
                      ReasonRow{"two marks apart", 4, 2, 3, 4, kYes, kYes, {cohort::Reason::markers_apart}},
                      ReasonRow{"one above", 5, -1, 3, 4, kYes, kYes, {}},
                      ReasonRow{"two above", 6, -1, 3, 4, kYes, kYes, {cohort::Reason::above_range}},
                      ReasonRow{"two below", 1, -1, 3, 4, kYes, kYes, {cohort::Reason::below_range}},
                      ReasonRow{"by the second marker", -1, 1, 3, 4, kYes, kYes, {cohort::Reason::below_range}},
                      ReasonRow{"nothing found", 0, 0, 0, 0, kNo, kNo, {cohort::Reason::nothing_found}},
                      ReasonRow{"core missing and two thirds", 4, -1, 3, 4, kNo, kNo, {cohort::Reason::nothing_found, cohort::Reason::core_missing}},
                      ReasonRow{"one core missing", 4, -1, 3, 4, kYes, kNo, {}}, ReasonRow{"no marks", -1, -1, 3, 4, kYes, kYes, {}}),
    test::row_name<ReasonRow>);

TEST(Tally, StaysWithinItsLimitsWhateverTheOrder) {
  std::vector<Entry> entries;
  for (int i = 0; i < 400; ++i) {
    Entry entry;
    entry.rubric = "r" + std::to_string(i % 20);
    entry.id = std::to_string(i);
    entry.group = i % 20 == 0 ? "g" + std::to_string(i) : "g";
    entry.mark = 3;
    for (int k = 0; k < 110; ++k) entry.steps.push_back({"s" + std::to_string(k), StepStatus::vague, true});
    entries.push_back(entry);
  }
  for (int i = 0; i < 150; ++i) {
    Entry entry = entries[0];
    entry.group = "h" + std::to_string(i);
    entries.push_back(entry);
  }
  Tally forth = tally_of(entries);
  std::reverse(entries.begin(), entries.end());
  Tally back = tally_of(entries);
  EXPECT_EQ(forth, back);
  EXPECT_EQ(read_back(tally_json(forth)), forth);
  EXPECT_EQ(forth.rubrics().size(), cohort::kMostRubrics);
  const cohort::RubricTally& rubric = forth.rubrics().at("r0");
  EXPECT_EQ(rubric.groups.size(), cohort::kMostGroups);
  EXPECT_EQ(rubric.other_groups.answers, 70U);  // 20 + 150 groups of one answer, less the limit of 100
  EXPECT_EQ(rubric.groups.begin()->second.steps.size(), cohort::kMostSteps);
  EXPECT_EQ(rubric.sample.at(3).size(), cohort::kMostSample);
  Findings findings = forth.limits_met();
  ASSERT_GE(findings.size(), 3U);
  EXPECT_EQ(findings[0].code, Code::tally_rubrics_cut);
  EXPECT_EQ(findings[1].code, Code::tally_groups_cut);
  EXPECT_EQ(findings[2].code, Code::tally_steps_cut);
}

TEST(Tally, AnotherSeedDrawsAnotherSample) {
  std::vector<Entry> entries = test::some_entries(600, 3);
  EXPECT_NE(tally_of(entries, 1).rubrics().at("small").sample, tally_of(entries, 2).rubrics().at("small").sample);
}

struct BadRow {
  const char* name;
  const char* line;
  Code code;
  const char* note;
};

class BadTally : public ::testing::TestWithParam<BadRow> {};

TEST_P(BadTally, IsRefusedWhole) {
  Findings findings;
  Tally tally(1);
  Result<json::Value> value = json::parse(GetParam().line, "f", findings);
  ASSERT_TRUE(value.ok());
  EXPECT_FALSE(cohort::read_tally(*value, "f, line 1", tally, findings));
  EXPECT_TRUE(tally.empty());
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].code, GetParam().code);
  EXPECT_EQ(findings[0].notes[0], GetParam().note);
}

INSTANTIATE_TEST_SUITE_P(
    Rows, BadTally,
    ::testing::Values(BadRow{"other format", R"({"tally": 2})", Code::format_unsupported, "2"},
                      BadRow{"no seed", R"({"tally": 1})", Code::tally_bad, "seed"},
                      BadRow{"other seed", R"({"tally": 1, "seed": "9"})", Code::tally_other_seed, "9"},
                      BadRow{"no rubric", R"({"tally": 1, "seed": "1"})", Code::tally_bad, "rubric"},
                      BadRow{"no counts", R"({"tally": 1, "seed": "1", "rubric": "r", "group": "g"})", Code::tally_bad, "answers"},
                      BadRow{"less than none", R"({"tally": 1, "seed": "1", "rubric": "r", "group": "g", "answers": -1})", Code::tally_bad,
                             "answers"},
                      BadRow{"steps not threes", R"({"tally": 1, "seed": "1", "rubric": "r", "group": "g", "answers": 1, "steps": {"s": [1, 2]}})",
                             Code::tally_bad, "steps"},
                      BadRow{"list without reasons", R"({"tally": 1, "seed": "1", "rubric": "r", "of": 6, "core": []})", Code::tally_bad, "reasons"}),
    test::row_name<BadRow>);

}  // namespace
}  // namespace retort
