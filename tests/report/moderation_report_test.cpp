// What moderations look like, whatever the names in them.
#include "../cohort/entries.h"
#include "../support.h"
#include "report/moderation_csv.h"
#include "report/moderation_html.h"
#include "report/moderation_json.h"
#include "report/moderation_text.h"
#include "report/moderation_words.h"
#include "report/page.h"
#include "rubric/json.h"

namespace retort {
namespace {

cohort::Moderation moderation_of(std::vector<cohort::Entry> entries) {
  cohort::Tally tally(1);
  for (const cohort::Entry& entry : entries) tally.add(entry);
  return cohort::moderate(tally, {{"small", {"A small one", {{"ruler", "Name the ruler"}}}}}, 12);
}

// Entries whose id, group and step hold what could do harm.
cohort::Moderation hostile() {
  std::vector<cohort::Entry> entries = test::some_entries(60, 4);
  for (cohort::Entry& entry : entries) {
    entry.id = "<script>alert(1)</script>" + entry.id;
    entry.group += "\"'><img src=x>\x1b[2J=1+1";
    entry.rubric = "</style><b>";
    entry.steps.push_back({"</td>&amp;", StepStatus::missing, true});
  }
  return moderation_of(entries);
}

TEST(ModerationText, FitsItsColumnsAndHasNoControlCharacters) {
  for (std::size_t width : {40U, 80U, 120U}) {
    std::string out = moderation_text(hostile(), width);
    EXPECT_EQ(out.find('\x1b'), std::string::npos);
    std::istringstream in(out);
    for (std::string line; std::getline(in, line);) EXPECT_LE(columns(line), width) << line;
  }
}

TEST(ModerationHtml, IsInertWhateverTheNames) {
  std::string out = moderation_html(hostile());
  for (const char* harm : {"<script", "<img", "</style><b>", "\x1b", " style=", "</td>&amp;</"}) EXPECT_EQ(out.find(harm), std::string::npos) << harm;
  EXPECT_NE(out.find("&lt;script&gt;"), std::string::npos);
}

TEST(ModerationHtml, HasHeadingsInOrderAndNamedTables) {
  std::string out = moderation_html(moderation_of(test::some_entries(80, 2)));
  int before = 0;
  for (std::size_t at = out.find("<h"); at != std::string::npos; at = out.find("<h", at + 1)) {
    int level = out[at + 2] - '0';
    if (level < 1 || level > 6) continue;  // <head>, <html>
    EXPECT_LE(level, before + 1);
    before = level;
  }
  EXPECT_GT(before, 1);
  auto count = [&](const std::string& what) {
    std::size_t times = 0;
    for (std::size_t at = out.find(what); at != std::string::npos; at = out.find(what, at + 1)) ++times;
    return times;
  };
  EXPECT_GT(count("<table"), 4U);
  EXPECT_EQ(count("<table"), count("<caption"));
  EXPECT_EQ(count("<table"), count("tabindex=\"0\""));
  EXPECT_EQ(count("<th "), count(" scope=\""));
}

TEST(ModerationCsv, EachRowHasTenCellsAndNoneIsAFormula) {
  std::string out = moderation_csv(hostile());
  std::istringstream in(out);
  std::size_t rows = 0;
  for (std::string line; std::getline(in, line); ++rows) {
    bool quoted = false;
    std::size_t cells = 1;
    for (char c : line) {
      if (c == '"') quoted = !quoted;
      if (c == ',' && !quoted) ++cells;
    }
    EXPECT_EQ(cells, 10U) << line;
  }
  EXPECT_GT(rows, 20U);
}

TEST(ModerationJson, IsValid) {
  Findings findings;
  Result<json::Value> value = json::parse(moderation_json(hostile()), "out", findings);
  ASSERT_TRUE(value.ok());
  EXPECT_TRUE(findings.empty());
  EXPECT_EQ(value->find("format")->integer, kModerationFormat);
}

struct PercentRow {
  const char* name;
  cohort::Count count, of;
  const char* words;
};

class Percent : public ::testing::TestWithParam<PercentRow> {};

TEST_P(Percent, IsSaidWithItsRange) {
  EXPECT_EQ(percent_range(cohort::share(GetParam().count, GetParam().of)), GetParam().words);
}

INSTANTIATE_TEST_SUITE_P(Rows, Percent,
                         ::testing::Values(PercentRow{"none", 0, 20, "0 % (0 to 16 %)"}, PercentRow{"all", 20, 20, "100 % (84 to 100 %)"},
                                           PercentRow{"some", 81, 263, "31 % (26 to 37 %)"},
                                           PercentRow{"hardly any", 1, 1000, "under 1 % (under 1 to 1 %)"},
                                           PercentRow{"nearly all", 999, 1000, "over 99 % (99 to over 99 %)"}),
                         test::row_name<PercentRow>);

struct ModerationRow {
  const char* name;
  double marks;
  const char* words;
};

TEST(ModerationWords, MarksHaveASignButNothingHasNone) {
  const ModerationRow rows[] = {{"more", 0.4, "+0.40"}, {"less", -0.254, "-0.25"}, {"nothing", 0.0, "0.00"}, {"hardly less", -0.001, "0.00"}};
  for (const ModerationRow& row : rows) EXPECT_EQ(signed_marks(row.marks), row.words) << row.name;
}

TEST(Moderation, DrawsFromEachMarkInTurn) {
  cohort::Moderation moderation = moderation_of(test::some_entries(900, 8));
  for (const cohort::RubricPart& part : moderation.rubrics) {
    ASSERT_EQ(part.sample.size(), 12U);
    std::map<int, int> drawn;
    for (const cohort::Script& script : part.sample)
      ++drawn[script.mark >= 0 ? script.mark : script.mark2 >= 0 ? script.mark2 : (script.low + script.high) / 2];
    for (const auto& [mark, count] : drawn) EXPECT_LE(count, 2) << mark;
    EXPECT_GE(drawn.size(), 6U);
  }
}

TEST(Moderation, FindsTheGroupThatDiffersAndNoOther) {
  std::vector<cohort::Entry> entries;
  for (int i = 0; i < 90; ++i) {
    cohort::Entry entry;
    entry.rubric = "small";
    entry.id = std::to_string(i);
    entry.group = i % 3 == 0 ? "a" : i % 3 == 1 ? "b" : "c";
    bool gone = entry.group == "b" ? i % 5 != 0 : i % 5 == 0;
    entry.steps = {{"ruler", gone ? StepStatus::missing : StepStatus::present, true},
                   {"repeat", i % 2 == 0 ? StepStatus::missing : StepStatus::vague, false}};
    entries.push_back(entry);
  }
  cohort::RubricPart part = moderation_of(entries).rubrics.at(0);
  EXPECT_EQ(part.comparisons, 6U);
  EXPECT_EQ(part.steps.at(0).id, "repeat");  // 45 of 90 against 36 of 90
  const cohort::StepPart& ruler = part.steps.at(1);
  EXPECT_EQ(ruler.title, "Name the ruler");
  EXPECT_EQ(ruler.groups.at(0).differs, cohort::Differs::less);
  EXPECT_EQ(ruler.groups.at(1).differs, cohort::Differs::more);
  EXPECT_EQ(ruler.groups.at(2).differs, cohort::Differs::less);
  for (const cohort::StepGroup& group : part.steps.at(0).groups) EXPECT_EQ(group.differs, cohort::Differs::no);
}

}  // namespace
}  // namespace retort
