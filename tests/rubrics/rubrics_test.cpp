// The rubrics that come with the program.
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "../support.h"
#include "base/messages.h"
#include "proof/labelled.h"
#include "proof/lint.h"

namespace retort {
namespace {

const std::vector<std::string> kInvestigations = {"infrared-absorption", "infrared-emission", "reflection-mirror", "refraction-block",
                                                  "ripple-tank",         "spring-extension",  "string-waves",      "trolley-acceleration"};

// The investigations that came later; some of them have labelled answers.
const std::vector<std::string> kLater = {"chromatography",
                                         "density",
                                         "enzyme-ph",
                                         "food-tests",
                                         "iv-characteristic",
                                         "neutralisation-temperature",
                                         "osmosis-potato",
                                         "pendulum-period",
                                         "photosynthesis-light",
                                         "quadrats-transect",
                                         "rate-cross",
                                         "rate-gas-volume",
                                         "reaction-time",
                                         "resistance-wire",
                                         "resistors-combined",
                                         "soluble-salt",
                                         "specific-heat-capacity",
                                         "thermal-insulation",
                                         "titration"};

// The short questions that follow a practical: all files with "kind": "points".
std::vector<std::string> short_questions() {
  std::vector<std::string> out;
  for (const auto& [name, content] : test::shipped().files) {
    if (content.find("\"kind\": \"points\"") != std::string::npos) out.push_back(name.substr(0, name.size() - 5));
  }
  return out;
}

// All investigations and short questions of which the corpus has labelled answers.
std::vector<std::string> labelled() {
  std::set<std::string> out;
  std::istringstream lines(test::read_all(test::source_path("corpus/labelled.jsonl")));
  for (std::string line; std::getline(lines, line);) out.insert(nlohmann::json::parse(line).at("investigation").get<std::string>());
  return {out.begin(), out.end()};
}

class Shipped : public ::testing::TestWithParam<std::string> {};
class ShortQuestion : public ::testing::TestWithParam<std::string> {};
class Labelled : public ::testing::TestWithParam<std::string> {};

TEST_P(Shipped, HasNoFaultAndItsExamplesHold) {
  const RubricFolder& folder = test::shipped();
  LintResult result = lint(GetParam() + ".json", folder.files, folder.real_words);
  for (const Finding& f : result.findings) {
    if (message(f.code).severity != Severity::note) ADD_FAILURE() << describe(f, folder.files.at(f.file));
  }
  EXPECT_GT(result.examples, 20U);
}

TEST_P(Shipped, HasCautions) {
  const RubricFolder& folder = test::shipped();
  Loaded loaded = load_rubric(GetParam() + ".json", folder.files);
  ASSERT_TRUE(loaded.rubric.has_value());
  EXPECT_FALSE(loaded.rubric->cautions.empty());
}

// A guard against losing ground on answers that are no longer unseen; the honest figures are in
// corpus/README.md.
TEST_P(Labelled, AgreesWithTheLabelledAnswers) {
  const RubricFolder& folder = test::shipped();
  Checker::Made made = Checker::make(GetParam() + ".json", folder.files, folder.real_words);
  ASSERT_NE(made.checker, nullptr);
  Findings findings;
  auto answers = read_labelled(test::read_all(test::source_path("corpus/labelled.jsonl")), "labelled.jsonl", made.checker->rubric(), findings);
  EXPECT_TRUE(findings.empty());
  ASSERT_GE(answers.size(), 20U);
  Agreement agreement = compare(*made.checker, answers);
  bool few_steps = made.checker->rubric().kind == RubricKind::points;  // 20 short answers with one to three points each
  EXPECT_GE(agreement.all.kappa(), few_steps ? 0.70 : 0.80);
  EXPECT_GE(agreement.all.f1(StepStatus::present), few_steps ? 0.85 : 0.90);
}

// An answer made of the question alone earns nothing.
TEST_P(Shipped, GivesNothingForTheQuestionItself) {
  const RubricFolder& folder = test::shipped();
  Checker::Made made = Checker::make(GetParam() + ".json", folder.files, folder.real_words);
  ASSERT_NE(made.checker, nullptr);
  Review review = Reviewer(*made.checker).review(made.checker->rubric().question);
  for (std::size_t i = 0; i < review.steps.size(); ++i) {
    EXPECT_NE(review.steps[i].status, StepStatus::present) << made.checker->rubric().steps[i].id;
  }
}

TEST_P(ShortQuestion, HasNoFaultAndItsExamplesHold) {
  const RubricFolder& folder = test::shipped();
  LintResult result = lint(GetParam() + ".json", folder.files, folder.real_words);
  for (const Finding& f : result.findings) {
    if (message(f.code).severity != Severity::note) ADD_FAILURE() << describe(f, folder.files.at(f.file));
  }
  EXPECT_GE(result.examples, 9U);
}

TEST_P(ShortQuestion, GivesNothingForTheQuestionItself) {
  const RubricFolder& folder = test::shipped();
  Checker::Made made = Checker::make(GetParam() + ".json", folder.files, folder.real_words);
  ASSERT_NE(made.checker, nullptr);
  const Rubric& rubric = made.checker->rubric();
  Review review = Reviewer(*made.checker).review(rubric.question);
  for (std::size_t i = 0; i < review.steps.size(); ++i) EXPECT_NE(review.steps[i].status, StepStatus::present) << rubric.steps[i].id;
}

// Each of the eight investigations has at least four.
TEST(ShortQuestions, FollowEachInvestigation) {
  std::vector<std::string> all = short_questions();
  for (const std::string& investigation : kInvestigations) {
    auto follows = [&](const std::string& id) { return id.starts_with(investigation + "-"); };
    EXPECT_GE(std::count_if(all.begin(), all.end(), follows), 4) << investigation;
  }
}

std::string name_of(const ::testing::TestParamInfo<std::string>& row) {
  std::string name = row.param;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Rubrics, Shipped, ::testing::ValuesIn(kInvestigations), name_of);
INSTANTIATE_TEST_SUITE_P(Later, Shipped, ::testing::ValuesIn(kLater), name_of);
INSTANTIATE_TEST_SUITE_P(Rubrics, ShortQuestion, ::testing::ValuesIn(short_questions()), name_of);
INSTANTIATE_TEST_SUITE_P(Rubrics, Labelled, ::testing::ValuesIn(labelled()), name_of);

}  // namespace
}  // namespace retort
