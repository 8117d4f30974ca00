#include "proof/labelled.h"

#include "../support.h"

namespace retort {
namespace {

using enum StepStatus;

// J. Cohen, "A coefficient of agreement for nominal scales", Educational and Psychological Measurement 20
// (1960) 37-46, table 1 (three diagnoses by two judges, 200 patients, as proportions): po = 0.70, pe = 0.41,
// kappa = 0.492. Value from memory of the paper; the arithmetic is checked here.
TEST(Kappa, IsCohensOwn) {
  const std::uint32_t table[3][3] = {{88, 14, 18}, {10, 40, 10}, {2, 6, 12}};
  Confusion confusion;
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t j = 0; j < 3; ++j) confusion.counts[i][j] = table[i][j];
  }
  EXPECT_EQ(confusion.total(), 200U);
  EXPECT_NEAR(confusion.agreement(), 0.70, 1e-9);
  EXPECT_NEAR(confusion.kappa(), (0.70 - 0.41) / (1 - 0.41), 1e-9);
}

TEST(Kappa, OfFullAndOfChanceAgreement) {
  Confusion all;
  for (int i = 0; i < 5; ++i) all.add(present, present);
  EXPECT_DOUBLE_EQ(all.kappa(), 1.0);
  Confusion chance;
  for (StepStatus a : {missing, present}) {
    for (StepStatus b : {missing, present}) chance.add(a, b);
  }
  EXPECT_DOUBLE_EQ(chance.kappa(), 0.0);
  EXPECT_DOUBLE_EQ(chance.f1(present), 0.5);
}

TEST(Labelled, FaultsAreNamedAndOtherInvestigationsLeftOut) {
  test::Small small(test::one_step(R"("present": ["ruler"])"));
  Findings findings;
  std::string lines = R"({"id": "1", "investigation": "small", "text": "ruler", "labels": {"s": "present"}, "mark": 1}
{"id": "2", "investigation": "other", "text": "ruler", "labels": {"zz": "present"}}
{"id": "3", "text": "stick", "labels": {"s": "maybe", "t": "present"}}
broken
)";
  auto answers = read_labelled(lines, "f", small.checker->rubric(), findings);
  ASSERT_EQ(answers.size(), 2U);
  EXPECT_TRUE(answers[0].labelled[0]);
  EXPECT_FALSE(answers[1].labelled[0]);
  std::vector<Code> codes;
  for (const Finding& f : findings) codes.push_back(f.code);
  EXPECT_EQ(codes, (std::vector<Code>{Code::label_bad_status, Code::label_unknown_step, Code::label_missing_step, Code::json_syntax}));
  Agreement agreement = compare(*small.checker, answers);
  EXPECT_EQ(agreement.all.total(), 1U);
  EXPECT_DOUBLE_EQ(agreement.all.agreement(), 1.0);
}

}  // namespace
}  // namespace retort
