// Worked examples with numbers as practicals give them: each once reckoned rightly and once with one usual slip.
//
// Where a handbook has the value that comes out, it stands in the row and the result must lie near it, as a good
// reading would. The handbooks: Kaye and Laby, "Tables of Physical and Chemical Constants" (densities 2.2.1,
// specific heat capacities 2.3.6, refractive indices 2.5.8, speed of sound 2.4.1), and the CRC "Handbook of Chemistry
// and Physics" (latent heats, section 6; densities of the elements, section 4). Values and sections are given from
// memory. The other rows are common practice, no source. Slips: the words of the JSON.
#include "../support.h"
#include "calc/calculations.h"
#include "worked_rows.h"

namespace retort {
namespace {

std::vector<calc::Calculation> check(const std::string& text) {
  Findings findings;
  static const std::shared_ptr<const calc::FormulaBook> book = open_formulas(test::shipped().files, findings);
  return calc::Calculator(*book).check(text);
}

std::string shown(const std::vector<calc::Calculation>& found) {
  std::string out;
  for (const calc::Calculation& one : found) {
    out += (out.empty() ? "" : ", ") + std::string(calc::name(one.verdict));
    for (calc::Slip slip : one.slips) out += " " + std::string(calc::name(slip));
    if (!one.correct.empty()) out += " (" + one.correct + ")";
  }
  return out.empty() ? "nothing found" : out;
}

class WorkedExample : public ::testing::TestWithParam<Worked> {};
class WorkedSlip : public ::testing::TestWithParam<Worked> {};

TEST_P(WorkedExample, IsRight) {
  std::vector<calc::Calculation> found = check(GetParam().right);
  ASSERT_FALSE(found.empty()) << GetParam().right;
  for (const calc::Calculation& one : found) EXPECT_EQ(calc::name(one.verdict), "right") << GetParam().right << ": " << shown(found);
}

TEST_P(WorkedSlip, IsFoundAndNamed) {
  std::vector<calc::Calculation> found = check(GetParam().wrong);
  ASSERT_FALSE(found.empty()) << GetParam().wrong;
  const calc::Calculation& last = found.back();
  EXPECT_EQ(calc::name(last.verdict), "wrong") << GetParam().wrong << ": " << shown(found);
  ASSERT_FALSE(last.slips.empty()) << GetParam().wrong << ": " << shown(found);
  EXPECT_EQ(calc::name(last.slips[0]), GetParam().slip) << GetParam().wrong << ": " << shown(found);
}

INSTANTIATE_TEST_SUITE_P(Rows, WorkedExample, ::testing::ValuesIn(kWorked), test::row_name<Worked>);
INSTANTIATE_TEST_SUITE_P(MoreRows, WorkedExample, ::testing::ValuesIn(kSlipsOfCare), test::row_name<Worked>);
INSTANTIATE_TEST_SUITE_P(Rows, WorkedSlip, ::testing::ValuesIn(kWorked), test::row_name<Worked>);
INSTANTIATE_TEST_SUITE_P(MoreRows, WorkedSlip, ::testing::ValuesIn(kSlipsOfCare), test::row_name<Worked>);

// The stated result lies within two per cent of the handbook's value: the examples are real ones.
TEST(WorkedExamples, GiveTheValuesOfTheHandbooks) {
  std::size_t compared = 0;
  for (const Worked& row : kWorked) {
    if (row.handbook == 0) continue;
    SCOPED_TRACE(std::string(row.name) + ", " + row.source);
    ++compared;
    std::vector<calc::Calculation> found = check(row.right);
    ASSERT_FALSE(found.empty()) << row.right;
    Span result = found.back().result;
    calc::Tokens tokens;
    calc::read_tokens(std::string_view(row.right).substr(result.begin, result.end - result.begin), tokens);
    ASSERT_EQ(tokens.numbers.size(), 1U) << row.right;
    EXPECT_NEAR(tokens.numbers[0].decimal.value.get_d() / row.handbook, 1.0, 0.02) << row.right;
  }
  EXPECT_GE(compared, 20U);
}

TEST(WorkedExamples, NumbersWithSpacesAreRight) {
  for (const SpacedNumber& row : kSpacedNumbers) EXPECT_EQ(shown(check(row.text)), "right") << row.text << ": " << row.reason;
}

// The sum of readings to the tenth is good to the tenth, however few figures one of them has; common practice, no source.
TEST(WorkedExamples, SumsKeepTheirPlacesNotTheirFigures) {
  std::vector<calc::Calculation> found = check("1.2 m + 30 cm = 1.5 m");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_TRUE(found[0].remarks.empty());
}

}  // namespace
}  // namespace retort
