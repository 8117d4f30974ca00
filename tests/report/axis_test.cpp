#include "report/axis.h"

#include <cmath>
#include <random>

#include "../support.h"

namespace retort {
namespace {

struct Row {
  const char* name;
  double low, high;
  Zero zero;
  const char* expected;  // labels of the ticks
};

class Axes : public ::testing::TestWithParam<Row> {};
TEST_P(Axes, HaveStepsOfOneTwoOrFive) {
  Axis axis = make_axis(GetParam().low, GetParam().high, GetParam().zero, 8);
  std::string labels;
  for (double tick : axis.ticks()) labels += (labels.empty() ? "" : " ") + axis.label(tick);
  EXPECT_EQ(labels, GetParam().expected);
}

INSTANTIATE_TEST_SUITE_P(Report, Axes,
                         ::testing::Values(Row{"forces", 1.5, 7.5, Zero::if_room, "0 1 2 3 4 5 6 7 8"}, Row{"extensions", 3.7, 18.9, Zero::if_room, "0 5 10 15 20"},
                                           Row{"tenths", 0.2, 1.0, Zero::if_room, "0.0 0.2 0.4 0.6 0.8 1.0"}, Row{"far from zero", 20.1, 24.3, Zero::if_room, "20 21 22 23 24 25"},
                                           Row{"far from zero, asked for", 20.1, 24.3, Zero::show, "0 5 10 15 20 25"}, Row{"as it comes", 10.2, 24.3, Zero::as_comes, "10 12 14 16 18 20 22 24 26"}, Row{"both signs", -3, 4, Zero::if_room, "\u22123 \u22122 \u22121 0 1 2 3 4"},
                                           Row{"negative", -18, -3, Zero::if_room, "\u221220 \u221215 \u221210 \u22125 0"}, Row{"one value", 5, 5, Zero::if_room, "4.4 4.6 4.8 5.0 5.2 5.4 5.6"},
                                           Row{"zero alone", 0, 0, Zero::if_room, "\u22121.0 \u22120.5 0.0 0.5 1.0"}, Row{"thousands", 1e4, 3e4, Zero::if_room, "0 5000 10 000 15 000 20 000 25 000 30 000"},
                                           Row{"tens of millions", 1e7, 3e7, Zero::if_room, "0 5 \u00D7 10\u2076 1.0 \u00D7 10\u2077 1.5 \u00D7 10\u2077 2.0 \u00D7 10\u2077 2.5 \u00D7 10\u2077 3.0 \u00D7 10\u2077"}),
                         test::row_name<Row>);

// Any readings: every point on the axis, and over more than half of it unless zero was asked for.
TEST(Axes, HoldAllPointsOverMoreThanHalf) {
  std::mt19937 engine(7);
  std::uniform_real_distribution<double> power(-6, 6), part(0, 1);
  for (int i = 0; i < 2000; ++i) {
    double size = std::pow(10, power(engine));
    double low = size * (part(engine) - 0.3), high = low + size * (0.01 + part(engine));
    Axis axis = make_axis(low, high, Zero::if_room, 8);
    EXPECT_LE(axis.low, low + 1e-9 * size);
    EXPECT_GE(axis.high, high - 1e-9 * size);
    EXPECT_GT(axis.at(high) - axis.at(low), 0.5) << low << " to " << high;
    EXPECT_LE(axis.ticks().size(), 9U);
  }
}

}  // namespace
}  // namespace retort
