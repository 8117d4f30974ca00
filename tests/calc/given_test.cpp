// What a rubric's question gives: units of its table, a result to be expected, a formula of its own.
#include "review/given.h"

#include "calc_support.h"

namespace retort {
namespace {

calc::Given table() {
  Rubric rubric;
  rubric.given.quantity = "force";
  rubric.given.wordings = {"3.0 N", "6.0 N"};
  rubric.given.data = {{"extension", {"7.5 cm", "15 cm"}, "r.json", {}}};
  rubric.given.expected = {{"spring constant", "40 N/m", "10 %", "r.json", {}}};
  Findings findings;
  calc::Given given = given_for_calculations(rubric, test::book(), findings);
  EXPECT_TRUE(findings.empty());
  return given;
}

struct Row {
  const char* name;
  const char* text;
  const char* expected;
};

class GivenData : public ::testing::TestWithParam<Row> {};
TEST_P(GivenData, JudgesTheResult) {
  EXPECT_EQ(test::shown(GetParam().text, table()), GetParam().expected);
}

INSTANTIATE_TEST_SUITE_P(Spring, GivenData,
                         ::testing::Values(Row{"unit of the table unconverted", "k = 6.0 / 15 = 0.4", "0.4 wrong power-of-ten (40 N/m)"},
                                           Row{"converted", "k = 6.0 / 0.15 = 40 N/m", "40 right"},
                                           Row{"by the expected value alone", "k = 5.9 / 14.8 = 0.40", "0.40 wrong power-of-ten (40 N/m)"},
                                           Row{"upside down", "k = 0.15 / 6.0 = 0.025", "0.025 wrong upside-down (40 N/m)"},
                                           Row{"near enough", "k = 3.0 / 0.0765 = 39.2 N/m", "39.2 right"},
                                           Row{"other things are left alone", "mass = 6.0 / 9.8 = 0.61 kg", "0.61 right"}),
                         test::row_name<Row>);

TEST(GivenData, ReportsWhatItCannotRead) {
  Rubric rubric;
  rubric.given.data = {{"extensoin", {"7.5 cm"}, "r.json", {}}, {"extension", {"seven"}, "r.json", {}}};
  rubric.given.expected = {{"spring constant", "40", "", "r.json", {}}};
  rubric.given.formulas = {{"spring constant = force over extension squared", "", "r.json", {}}};
  Findings findings;
  given_for_calculations(rubric, test::book(), findings);
  with_own_formulas(test::book(), rubric, findings);
  ASSERT_EQ(findings.size(), 4U);
  EXPECT_EQ(findings[0].code, Code::quantity_unknown);
  EXPECT_EQ(findings[1].code, Code::value_unreadable);
  EXPECT_EQ(findings[2].code, Code::value_unreadable);
  EXPECT_EQ(findings[3].code, Code::formula_unreadable);
}

TEST(GivenData, AddsTheRubricsOwnFormula) {
  Rubric rubric;
  rubric.given.formulas = {{"rate = volume / time", "common practice, no source", "r.json", {}}};
  Findings findings;
  auto own = with_own_formulas(test::book(), rubric, findings);
  ASSERT_TRUE(own != nullptr && findings.empty());
  EXPECT_FALSE(own->giving(own->find("rate")).empty());
}

}  // namespace
}  // namespace retort
