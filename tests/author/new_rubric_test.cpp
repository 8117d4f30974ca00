// Marking points as teachers type them, made into rubrics.
#include "author/new_rubric.h"

#include <algorithm>

#include "../support.h"
#include "base/messages.h"
#include "proof/labelled.h"
#include "proof/lint.h"
#include "review/review.h"

namespace retort::author {
namespace {

TEST(PlainPoints, AreReadAsTeachersTypeThem) {
  const struct {
    const char* name;
    const char* line;
    const char* text;  // null: no point
    bool core;
  } rows[] = {
      {"plain", "stir before each reading", "stir before each reading", true},
      {"hyphen", "- stir", "stir", true},
      {"bullet", "\u2022 stir", "stir", true},
      {"numbered", "3. stir", "stir", true},
      {"bracketed", "(12) stir", "stir", true},
      {"marks", "stir [1 mark]", "stir", true},
      {"a bare mark", "stir (1)", "stir", true},
      {"two marks", "* stir (2 marks)", "stir", true},
      {"brackets of the text stay", "stir (with a rod)", "stir (with a rod)", true},
      {"a number of the text stays", "1.5 N is hung on", "1.5 N is hung on", true},
      {"extra", "stir (extra)", "stir", false},
      {"a title", "Title: Soup", nullptr, true},
      {"a question in capitals", "QUESTION: Why?", nullptr, true},
      {"nothing", "   ", nullptr, true},
      {"carriage return", "stir\r", "stir", true},
  };
  for (const auto& row : rows) {
    Findings findings;
    PlainPoints points = read_plain_points(row.line, "points.txt", findings);
    if (row.text == nullptr) {
      EXPECT_TRUE(points.points.empty()) << row.name;
      continue;
    }
    ASSERT_EQ(points.points.size(), 1U) << row.name;
    EXPECT_EQ(points.points[0].text, row.text) << row.name;
    EXPECT_EQ(points.points[0].core, row.core) << row.name;
  }
}

TEST(PlainPoints, HeadingsAndTable) {
  Findings findings;
  PlainPoints points = read_plain_points("Title: Soup\nQuestion: How fast? [6 marks]\nTable: time: 2, 4 min and 6, and 8 min\n", "p", findings);
  EXPECT_EQ(points.title, "Soup");
  EXPECT_EQ(points.question, "How fast? [6 marks]");
  EXPECT_EQ(points.quantity, "time");
  EXPECT_EQ(points.values, (std::vector<std::string>{"2 min", "4 min", "6 min", "8 min"}));
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].code, Code::points_none);
}

TEST(PlainPoints, TooManyAndTooLongAreTold) {
  Findings findings;
  std::string many;
  for (int i = 0; i < 45; ++i) many += "stir it\n";
  EXPECT_EQ(read_plain_points(many + std::string(400, 'x'), "p", findings).points.size(), 40U);
  EXPECT_EQ(findings.size(), 6U);
}

// A teacher's points on how fast soup cools: no shipped rubric is about it.
constexpr const char* kSoup =
    "Title: Cooling soup\nQuestion: Describe how to find out how the depth of soup changes how fast it cools. [6 marks]\nTable: depth 2 cm, 4 cm, 6 "
    "cm, 8 cm\n"
    "- measure the depth with a ruler\n- change the depth of the soup: values 2 cm to 8 cm\n- use a thermometer\n- record the starting temperature\n"
    "- time with a stop clock / timer\n- keep the starting temperature the same\n- stir the soup before each reading (extra)\n- work out the fall in "
    "temperature\n"
    "- repeat and calculate a mean\n- hot soup can scald: wear gloves\n";

NewRubric made_of(const std::string& text) {
  Findings findings;
  PlainPoints points = read_plain_points(text, "points.txt", findings);
  Result<NewRubric> made = make_rubric("soup", points, "points.txt", test::shipped());
  EXPECT_TRUE(made) << (made ? "" : describe(made.finding(), {}));
  return made ? std::move(made).value() : NewRubric{};
}

TEST(NewRubric, PassesLintAndItsOwnExamples) {
  NewRubric made = made_of(kSoup);
  RubricFolder folder = test::shipped();
  folder.files["soup.json"] = made.file;
  LintResult result = lint("soup.json", folder.files, folder.real_words);
  EXPECT_GE(result.examples, 18U);
  for (const Finding& finding : result.findings) {
    if (message(finding.code).severity != Severity::note) ADD_FAILURE() << describe(finding, made.file);
  }
}

TEST(NewRubric, KnowsTheKindOfEachPoint) {
  NewRubric made = made_of(kSoup);
  const char* facets[] = {"instrument", "values", "instrument", "dependent", "instrument", "control", "dependent", "processing", "repeats", "safety"};
  ASSERT_EQ(made.placed.size(), std::size(facets));
  for (std::size_t i = 0; i < made.placed.size(); ++i) EXPECT_EQ(made.placed[i].facet, facets[i]) << made.placed[i].point;
}

TEST(NewRubric, FindsPupilsWordsForThePoints) {
  NewRubric made = made_of(kSoup);
  RubricFolder folder = test::shipped();
  folder.files["soup.json"] = made.file;
  Checker::Made checker = Checker::make("soup.json", folder.files, folder.real_words);
  ASSERT_NE(checker.checker, nullptr);
  Reviewer reviewer(*checker.checker);
  using enum StepStatus;
  const struct {
    const char* name;
    const char* text;
    std::size_t step;
    StepStatus status;
  } rows[] = {
      {"another wording of the instrument", "use a 30 cm rular to see how deep it is", 0, present},
      {"the table's values", "do it with 2 cm, 4cm, 6 cm and 8 cm of soup", 1, present},
      {"values left out", "then do it with different depths", 1, vague},
      {"misspelt instrument", "put a thermomiter in the soup", 2, present},
      {"the start in other words", "take the temp at the begining", 3, present},
      {"one of two instruments", "start the stopwatch", 4, present},
      {"kept the same", "make sure the starting temprature is the same every time", 5, present},
      {"repeats alone", "repeat it 3 times", 8, vague},
      {"repeats and mean", "repeat it 3 times and work out the average", 8, present},
      {"nothing of it", "I had a nice lunch", 9, missing},
  };
  for (const auto& row : rows) EXPECT_EQ(reviewer.review(row.text).steps[row.step].status, row.status) << row.name;
}

TEST(NewRubric, MakesWaysThatAreNeitherTooWideNorTooNarrow) {
  NewRubric made = made_of(
      "Title: Bounce of a ball\nTable: length 20 cm, 40 cm, 60 cm\n- the rule is upright, clamped or against a wall\n- uses the heights in the table "
      "(20 cm, 40 cm, "
      "60 cm)\n- measure the height of the first bounce\n- plot a graph of bounce height against drop height\n");
  RubricFolder folder = test::shipped();
  folder.files["soup.json"] = made.file;
  Checker::Made checker = Checker::make("soup.json", folder.files, folder.real_words);
  ASSERT_NE(checker.checker, nullptr);
  Reviewer reviewer(*checker.checker);
  using enum StepStatus;
  const struct {
    const char* name;
    const char* text;
    std::size_t step;
    StepStatus status;
  } rows[] = {
      {"one of three alternatives", "hold it against the wall", 0, present},
      {"and, by, on say nothing", "and then by noon go on", 0, missing},
      {"a table's values are values", "drop it from 20 cm, 40 cm and 60 cm", 1, present},
      {"heights without figures", "drop it from different heights", 1, vague},
      {"the height and what it is of", "measure the height of the bounce", 2, present},
      {"a height alone is not enough", "measure the height", 2, vague},
      {"results recorded", "write down the results", 2, vague},
      {"a graph of something", "plot a graph of the heights", 3, present},
      {"a graph", "draw a graph", 3, vague},
      {"no graph", "drop it and see the height of the bounce", 3, missing},
  };
  for (const auto& row : rows) EXPECT_EQ(reviewer.review(row.text).steps[row.step].status, row.status) << row.name;
}

// Ten points of an investigation that has no rubric, and 20 answers labelled before the rubric was made (by one who knows the
// program, and looked at since: no honest figure). The rubric is used as it comes, with nothing changed by hand.
TEST(NewRubric, AgreesWithLabelsAsItComes) {
  NewRubric made = made_of(test::read_all(test::source_path("tests/author/data/bounce.txt")));
  RubricFolder folder = test::shipped();
  folder.files["soup.json"] = made.file;
  Checker::Made checker = Checker::make("soup.json", folder.files, folder.real_words);
  ASSERT_NE(checker.checker, nullptr);
  Findings findings;
  std::string content = test::read_all(test::source_path("tests/author/data/bounce.jsonl"));
  auto answers = read_labelled(content, "bounce.jsonl", checker.checker->rubric(), findings);
  EXPECT_TRUE(findings.empty());
  ASSERT_EQ(answers.size(), 20U);
  Agreement agreement = compare(*checker.checker, answers);
  EXPECT_GE(agreement.all.kappa(), 0.60);
}

TEST(NewRubric, TellsWhatItCouldNotPlace) {
  NewRubric made = made_of("the of and\nmeasure the glorp with a ruler\nchange the range of values\n");
  auto told = [&](Code code) { return std::any_of(made.findings.begin(), made.findings.end(), [&](const Finding& f) { return f.code == code; }); };
  EXPECT_TRUE(told(Code::point_not_placed));
  EXPECT_TRUE(told(Code::point_word_new));
  EXPECT_TRUE(told(Code::point_is_table));
}

TEST(NewRubric, NeedsItsData) {
  Findings findings;
  PlainPoints points = read_plain_points("use a ruler", "p", findings);
  RubricFolder folder = test::shipped();
  folder.files.erase(std::string(kKindsFile));
  Result<NewRubric> made = make_rubric("x", points, "p", folder);
  ASSERT_FALSE(made);
  EXPECT_EQ(made.finding().code, Code::file_missing);
  folder.files[std::string(kKindsFile)] = "{\"kinds\": 5}";
  made = make_rubric("x", points, "p", folder);
  ASSERT_FALSE(made);
  EXPECT_EQ(made.finding().code, Code::wrong_type);
}

}  // namespace
}  // namespace retort::author
