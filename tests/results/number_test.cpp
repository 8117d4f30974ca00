#include "results/number.h"

#include "../support.h"

namespace retort::results {
namespace {

struct Row {
  const char* name;
  const char* text;
  Comma comma;
  const char* expected;  // "value | last place | figures | rest"; empty: no number
};

class Numbers : public ::testing::TestWithParam<Row> {};
TEST_P(Numbers, AreReadAsWritten) {
  auto got = read_number(GetParam().text, GetParam().comma);
  std::string shown;
  if (got) {
    shown = got->number.value.get_str() + " | " + std::to_string(got->number.last_place) + " | " + std::to_string(got->number.figures) + " | " + std::string(got->rest);
  }
  EXPECT_EQ(shown, GetParam().expected);
}

constexpr Comma kDecimal = Comma::decimal;
constexpr Comma kThousands = Comma::thousands;

INSTANTIATE_TEST_SUITE_P(
    Results, Numbers,
    ::testing::Values(Row{"plain", "1.50", kThousands, "3/2 | -2 | 3 | "}, Row{"decimal comma", "1,50", kDecimal, "3/2 | -2 | 3 | "},
                      Row{"thousands", "1,234", kThousands, "1234 | 0 | 4 | "}, Row{"comma that is neither", "1,5", kThousands, "1 | 0 | 1 | ,5"},
                      Row{"space between thousands", "12 345", kThousands, "12345 | 0 | 5 | "}, Row{"two numbers", "12 34", kThousands, "12 | 0 | 2 | 34"},
                      Row{"hyphen for minus", "-0.25", kThousands, "-1/4 | -2 | 2 | "}, Row{"minus sign", "\u22120.25", kThousands, "-1/4 | -2 | 2 | "},
                      Row{"plus", "+3", kThousands, "3 | 0 | 1 | "}, Row{"exponent", "3.0e-2", kThousands, "3/100 | -3 | 2 | "},
                      Row{"times ten", "3 \u00D7 10\u2078", kThousands, "300000000 | 8 | 1 | "}, Row{"x ten", "2.5 x 10^-3 s", kThousands, "1/400 | -4 | 2 | s"},
                      Row{"unit", "12.0 cm", kThousands, "12 | -1 | 3 | cm"}, Row{"glued unit", "20\u00B0", kThousands, "20 | 0 | 2 | \u00B0"},
                      Row{"no digit in front", ".5", kThousands, "1/2 | -1 | 1 | "}, Row{"point at the end", "5.", kThousands, "5 | 0 | 1 | "},
                      Row{"two points", "1.5.2", kThousands, "3/2 | -1 | 2 | .2"}, Row{"word", "twelve", kThousands, ""}, Row{"nothing", "", kThousands, ""},
                      Row{"sign alone", "-", kThousands, ""}, Row{"forty digits", "1234567890123456789012345678901234567890", kThousands, ""},
                      Row{"huge power", "1e31", kThousands, ""}, Row{"no end of power", "1e99999999999999999999", kThousands, ""},
                      Row{"tiny", "0.0000000000000000000000000000000001", kThousands, ""}, Row{"zero", "0.00", kThousands, "0 | -2 | 1 | "}),
    test::row_name<Row>);

TEST(Numbers, GoToTwofoldAndBack) {
  for (const char* text : {"0.1", "3.14159265358979323846264338327", "-1e-20", "12345678901234567890", "0"}) {
    Exact value = read_number(text, Comma::thousands)->number.value;
    Exact error = abs(to_exact(to_twofold(value)) - value);
    EXPECT_LE(error, abs(value) * power_of_ten(-24)) << text;
  }
  EXPECT_EQ(to_exact(to_twofold(Exact(1, 20))), Exact(1, 20));
  EXPECT_EQ(to_exact(Twofold()), 0);
  EXPECT_EQ(to_double(Exact(149, 10)), 14.9);
  EXPECT_EQ(to_double(Exact(1, 3)), 1.0 / 3.0);
}

TEST(Twofold, KeepsThirtyDigits) {
  Twofold third = Twofold(1.0) / 3.0;
  EXPECT_LT(std::fabs((third * 3.0 - 1.0).value()), 1e-31);
  Twofold root = sqrt(Twofold(2.0));
  EXPECT_LT(std::fabs((root * root - 2.0).value()), 1e-30);
  EXPECT_EQ((Twofold(1e16) + 1.0 - 1e16).value(), 1.0);
  EXPECT_EQ(sqrt(Twofold(0.0)).value(), 0.0);
}

}  // namespace
}  // namespace retort::results
