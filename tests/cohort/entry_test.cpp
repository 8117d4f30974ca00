#include "cohort/entry.h"

#include "../support.h"
#include "intake/answer.h"
#include "report/review_json.h"

namespace retort {
namespace {

TEST(Entry, IsTheSameFromALineAsFromTheReview) {
  test::Small small(test::one_step(R"("core": true, "present": ["ruler"], "vague": ["stick"], "lacks": "which stick")"));
  ASSERT_NE(small.checker, nullptr);
  Answer answer;
  Findings findings;
  ASSERT_TRUE(
      read_answer_line(R"({"id": "a7", "text": "use a ruler. k = 6.0 N / 15 cm = 4 N/m", "group": "9B", "mark": 3, "mark2": 4, "position": 12})", "f",
                       1, answer, findings));
  Review review = small.review(answer.text);
  std::string line;
  append_review_json(small.checker->rubric(), answer, review, line);
  Result<json::Value> value = json::parse(line, "f", findings);
  ASSERT_TRUE(value.ok());
  cohort::Entry read;
  ASSERT_TRUE(cohort::read_checked(*value, "f", read, findings));
  cohort::Entry made = cohort::entry_of(small.checker->rubric(), review);
  EXPECT_EQ(read.rubric, made.rubric);
  EXPECT_EQ(read.id, "a7");
  EXPECT_EQ(read.group, "9B");
  EXPECT_EQ(read.mark, 3);
  EXPECT_EQ(read.mark2, 4);
  EXPECT_EQ(read.place, 12);
  ASSERT_EQ(read.steps.size(), made.steps.size());
  EXPECT_EQ(read.steps[0].id, made.steps[0].id);
  EXPECT_EQ(read.steps[0].status, made.steps[0].status);
  EXPECT_TRUE(read.steps[0].core);
  EXPECT_TRUE(made.steps[0].core);
  EXPECT_EQ(read.level.high, made.level.high);
  EXPECT_EQ(read.wrong, 1U);
  EXPECT_EQ(read.slips, made.slips);
}

struct LineRow {
  const char* name;
  const char* line;
  const char* fault;  // the member that cannot be used; "" if all can
};

class CheckedLine : public ::testing::TestWithParam<LineRow> {};

TEST_P(CheckedLine, IsReadOrItsFaultNamed) {
  Findings findings;
  Result<json::Value> value = json::parse(GetParam().line, "f", findings);
  ASSERT_TRUE(value.ok());
  cohort::Entry entry;
  bool good = cohort::read_checked(*value, "f, line 3", entry, findings);
  EXPECT_EQ(good, std::string(GetParam().fault).empty());
  if (good) return;
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].file, "f, line 3");
  EXPECT_EQ(findings[0].notes[0], GetParam().fault);
}

INSTANTIATE_TEST_SUITE_P(
    Rows, CheckedLine,
    ::testing::Values(LineRow{"least", R"({"id": "a", "rubric": "r", "steps": []})", ""}, LineRow{"no id", R"({"rubric": "r", "steps": []})", "id"},
                      LineRow{"no rubric", R"({"id": "a", "steps": []})", "rubric"},
                      LineRow{"steps no list", R"({"id": "a", "rubric": "r", "steps": 1})", "steps"},
                      LineRow{"unknown status", R"({"id": "a", "rubric": "r", "steps": [{"id": "s", "status": "good"}]})", "steps"},
                      LineRow{"mark in words", R"({"id": "a", "rubric": "r", "steps": [], "mark": "three"})", "mark"},
                      LineRow{"mark too high", R"({"id": "a", "rubric": "r", "steps": [], "mark2": 101})", "mark2"},
                      LineRow{"level upside down", R"({"id": "a", "rubric": "r", "steps": [], "level": {"low": 4, "high": 3, "of": 6}})", "level"},
                      LineRow{"unknown verdict", R"({"id": "a", "rubric": "r", "steps": [], "calculations": [{"verdict": "odd"}]})", "calculations"},
                      LineRow{"group a number", R"({"id": "a", "rubric": "r", "steps": [], "group": 9})", "group"},
                      LineRow{"newer format", R"({"format": 2, "id": "a", "rubric": "r", "steps": []})", "2"}),
    test::row_name<LineRow>);

TEST(Entry, NamesAreCutAtACodePoint) {
  std::string long_name = "x";
  while (long_name.size() < 200) long_name += "\xC3\xA9";
  EXPECT_EQ(cohort::short_name(long_name).size(), cohort::kLongestName - 1);
  EXPECT_EQ(cohort::short_name("9B"), "9B");
}

}  // namespace
}  // namespace retort
