#include "quantity/exact.h"

#include "../support.h"

namespace retort {
namespace {

struct Row {
  const char* name;
  const char* digits;
  int figures;
  const char* expected;
};

class Written : public ::testing::TestWithParam<Row> {};
TEST_P(Written, IsAsExpected) {
  EXPECT_EQ(written(read_decimal(GetParam().digits)->value, GetParam().figures), GetParam().expected);
}
INSTANTIATE_TEST_SUITE_P(Exact, Written,
                         ::testing::Values(Row{"plain", "40", 2, "40"}, Row{"more figures", "40", 3, "40.0"}, Row{"small", "0.0372", 2, "0.037"},
                                           Row{"half goes up", "2.25", 2, "2.3"}, Row{"carries", "9.96", 2, "10"},
                                           Row{"thousands", "27612", 5, "27 612"}, Row{"to tens", "1234", 3, "1230"},
                                           Row{"large", "200000000", 2, "2.0 \u00D7 10\u2078"},
                                           Row{"tiny", "0.000096", 2, "9.6 \u00D7 10\u207B\u2075"}, Row{"zero", "0", 2, "0"},
                                           Row{"one figure", "0.05", 1, "0.05"}),
                         test::row_name<Row>);

TEST(Decimals, RememberHowTheyWereWritten) {
  EXPECT_EQ(read_decimal("0.150")->figures, 3);
  EXPECT_EQ(read_decimal("0.150")->last_place, -3);
  EXPECT_EQ(read_decimal("12000")->trailing_zeros, 3);
  EXPECT_EQ(read_decimal("0.10")->value, Exact(1, 10));
  EXPECT_FALSE(read_decimal("1.2.3"));
  EXPECT_FALSE(read_decimal(""));
  EXPECT_FALSE(read_decimal(std::string(50, '9')));
  EXPECT_FALSE(scaled(*read_decimal("1"), 9999));
}

TEST(Exact, RoundsAsTaughtInSchools) {
  EXPECT_EQ(rounded(Exact(5, 2), 0), 3);
  EXPECT_EQ(rounded(Exact(-5, 2), 0), -3);
  EXPECT_EQ(cut(Exact(29, 10), 0), 2);
  EXPECT_EQ(first_place(Exact(999, 1000)), -1);
  EXPECT_EQ(first_place(Exact(1000)), 3);
  EXPECT_TRUE(ends_by(Exact(1, 4), -2));
  EXPECT_FALSE(ends_by(Exact(1, 3), -9));
}

}  // namespace
}  // namespace retort
