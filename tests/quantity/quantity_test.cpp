#include "quantity/quantity.h"

#include <cmath>

#include "../support.h"

namespace retort {
namespace {

// "value unit; value unit"
std::string found(const std::string& text) {
  Reader reader;
  Document document = reader.read(text);
  std::vector<Quantity> quantities;
  find_quantities(document, quantities);
  std::string out;
  for (const Quantity& q : quantities) {
    char number[32];
    std::snprintf(number, sizeof number, "%g", q.value);
    out += (out.empty() ? "" : "; ") + std::string(number) + (q.unit != nullptr ? " " + std::string(q.unit->symbol) : "");
  }
  return out;
}

struct Row {
  const char* name;
  const char* text;
  const char* expected;
};

class Found : public ::testing::TestWithParam<Row> {};
TEST_P(Found, IsAsExpected) { EXPECT_EQ(found(GetParam().text), GetParam().expected); }

INSTANTIATE_TEST_SUITE_P(
    Quantities, Found,
    ::testing::Values(Row{"number and unit", "add 1.5 N", "1.5 N"}, Row{"glued", "100g then 200g", "100 g; 200 g"},
                      Row{"words", "fifteen minutes", "15 min"}, Row{"point in words", "one point five newtons", "1.5 N"},
                      Row{"hundred and fifty", "one hundred and fifty grams", "150 g"}, Row{"twenty five", "twenty five degrees", "25 \xC2\xB0"},
                      Row{"half a minute", "count for half a minute", "0.5 min"}, Row{"quarter of an hour", "a quarter of an hour", "0.25 h"},
                      Row{"decimal comma", "0,98 N", "0.98 N"}, Row{"degree sign", "15\xC2\xB0 and 25\xC2\xB0", "15 \xC2\xB0; 25 \xC2\xB0"},
                      Row{"celsius", "75 \xC2\xB0" "C", "75 \xC2\xB0" "C"}, Row{"degrees celsius in words", "20 degrees C", "20 \xC2\xB0" "C"},
                      Row{"cubic", "150 cm3, 150 cm\xC2\xB3", "150 cm\xC2\xB3; 150 cm\xC2\xB3"}, Row{"bare list", "30, 40 and 50", "30; 40; 50"},
                      Row{"no unit from small words", "20 in the tank, 5 at a time, 3 as well", "20; 5; 3"},
                      Row{"misspelt minutes", "15 minits", "15 min"}, Row{"none", "add some weights", ""}, Row{"kilo", "0.1 kg", "0.1 kg"},
                      Row{"a quotient unit is no force", "k is 40 N/m, c is 4200 J/kg, add 2 N / 10 cm", "40 ; 4200 ; 2 N; 10 cm"}),
    test::row_name<Row>);

TEST(Digits, RefusesWhatIsNotFinite) {
  double value = 0;
  EXPECT_TRUE(read_digits("1.5", value));
  EXPECT_FALSE(read_digits(std::string(400, '9'), value));
  EXPECT_FALSE(read_digits("", value));
}

// SI Brochure, 9th edition (BIPM 2019), table 7 (prefixes) and table 8 (min, h, L, degree).
TEST(Units, FactorsAreThoseOfTheSiBrochure) {
  struct {
    const char* word;
    double factor;
  } rows[] = {{"km", 1e3}, {"cm", 1e-2}, {"mm", 1e-3}, {"g", 1e-3}, {"mg", 1e-6}, {"ms", 1e-3}, {"min", 60}, {"h", 3600}, {"l", 1e-3}, {"ml", 1e-6},
              {"khz", 1e3}, {"\xC2\xB0", std::acos(-1.0) / 180}, {"kn", 1e3}, {"ma", 1e-3}};
  for (const auto& row : rows) {
    const Unit* unit = find_unit(row.word);
    ASSERT_NE(unit, nullptr) << row.word;
    EXPECT_DOUBLE_EQ(unit->factor, row.factor) << row.word;
  }
  EXPECT_EQ(find_unit("in"), nullptr);
  EXPECT_EQ(find_unit("as"), nullptr);
  EXPECT_EQ(find_unit("he"), nullptr);
}

}  // namespace
}  // namespace retort
