#include "results/line.h"

#include "report/results_words.h"
#include "results/student.h"
#include "tables.h"

namespace retort::results {
namespace {

struct Row {
  const char* name;
  std::vector<double> x, y;
  double step;
  const char* expected;  // "gradient, intercept; shape; origin; left out …; suggestion"
};

std::string shown(const Row& row) {
  Points points{Column(row.x.begin(), row.x.end()), Column(row.y.begin(), row.y.end()), row.step, 0.0};
  Line line = fit_line(points);
  if (line.state == LineState::too_few_points) return "too few";
  if (line.state == LineState::x_all_the_same) return "x all the same";
  char numbers[64];
  std::snprintf(numbers, sizeof numbers, "%.3g, %.3g; ", line.gradient().value(), std::fabs(line.intercept().value()) < 1e-9 ? 0.0 : line.intercept().value());
  std::string out = numbers + std::string(shape_name(line.shape)) + "; " + std::string(origin_name(line.origin));
  for (std::size_t i : line.left_out) out += "; -" + std::to_string(i);
  if (line.flat) out += "; flat";
  if (line.proportional()) out += "; proportional";
  if (line.suggestion) out += "; " + std::string(plot_name(line.suggestion->plot)) + (line.suggestion->through_origin ? " through the origin" : "");
  return out;
}

class Lines : public ::testing::TestWithParam<Row> {};
TEST_P(Lines, AreJudged) { EXPECT_EQ(shown(GetParam()), GetParam().expected); }

INSTANTIATE_TEST_SUITE_P(
    Results, Lines,
    ::testing::Values(
        Row{"proportional", {1, 2, 3, 4, 5}, {2.0, 4.1, 6.0, 7.9, 10.0}, 0.1, "1.98, 0.06; straight; through; proportional"},
        Row{"exactly proportional", {1, 2, 3, 4, 5}, {2, 4, 6, 8, 10}, 1, "2, 0; straight; through; proportional"},
        Row{"not from the origin", {1, 2, 3, 4, 5}, {12.1, 14.0, 15.9, 18.1, 20.0}, 0.1, "1.99, 10; straight; misses"},
        Row{"falling", {1, 2, 3, 4, 5}, {9.0, 8.1, 6.9, 6.0, 5.1}, 0.1, "-0.99, 9.99; straight; misses"},
        Row{"square", {1, 2, 3, 4, 5, 6}, {1.0, 4.1, 9.0, 15.9, 25.1, 36.0}, 0.1, "7, -9.31; steeper; misses; x-squared through the origin"},
        Row{"exact square", {0, 1, 2, 3, 4}, {0, 1, 4, 9, 16}, 0.1, "4, -2; steeper; unsure; x-squared through the origin"},
        Row{"square root", {0.2, 0.4, 0.6, 0.8, 1.0}, {9.0, 12.7, 15.5, 18.0, 20.1}, 0.1, "13.8, 6.81; shallower; misses; root-x through the origin"},
        Row{"inverse", {1, 2, 3, 4, 5, 6}, {60, 30, 20, 15, 12, 10}, 1, "-8.83, 55.4; shallower; misses; one-over-x through the origin"},
        Row{"one point off", {1, 2, 3, 4, 5, 6}, {2.0, 4.1, 9.0, 8.1, 9.9, 12.0}, 0.1, "1.98, 0.0744; straight; through; -2; proportional"},
        Row{"last point off", {1, 2, 3, 4, 5, 6}, {2.0, 4.1, 6.0, 8.1, 9.9, 15.0}, 0.1, "1.98, 0.08; straight; through; -5; proportional"},
        Row{"a step is no curve", {1, 2, 3, 4, 5}, {2, 4, 6, 8, 11}, 1, "2.2, -0.4; straight; through; proportional"},
        Row{"four with one off keep it", {1, 2, 3, 4}, {2.0, 4.0, 9.0, 8.0}, 0.1, "2.3, 0; straight; unsure; flat"},
        Row{"three points", {1, 2, 3}, {2, 4, 6}, 1, "2, 0; unknown; unsure"}, Row{"two points", {1, 2}, {2, 4}, 1, "2, 0; unknown; unsure"},
        Row{"one point", {1}, {2}, 1, "too few"}, Row{"none", {}, {}, 1, "too few"}, Row{"one x", {3, 3, 3}, {1, 2, 3}, 1, "x all the same"},
        Row{"flat", {1, 2, 3, 4, 5}, {5.0, 5.1, 4.9, 5.0, 5.1}, 0.1, "0.01, 4.99; straight; misses; flat"}, Row{"y all the same", {1, 2, 3, 4}, {5, 5, 5, 5}, 1, "0, 5; straight; misses; flat"},
        Row{"scattered far from the origin", {50, 52, 54, 56, 58}, {101, 103, 109, 111, 117}, 1, "2, 0.2; straight; unsure"},
        Row{"wavy", {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16}, {5, 5, 5, 5, 5, 5, 5, 5, 10, 10, 10, 10, 10, 10, 10, 10}, 1, "0.471, 3.5; uneven; misses"}),
    test::row_name<Row>);

TEST(Student, RunsOfSignsAreCounted) {
  // Swed and Eisenhart, Annals of Mathematical Statistics 14 (1943) 66-87, table I: P(runs <= u) for m, n
  EXPECT_NEAR(runs_tail(2, 2, 3), 0.2, 5e-4);
  EXPECT_NEAR(runs_tail(3, 4, 4), 0.114, 5e-4);
  EXPECT_NEAR(runs_tail(3, 5, 5), 0.040, 5e-4);
  EXPECT_NEAR(runs_tail(10, 5, 5), 1.0, 1e-12);
  EXPECT_EQ(runs_tail(1, 0, 5), 1.0);
}

TEST(LeastSquares, SaysWhenTheParametersAreNotFixed) {
  EXPECT_FALSE(fit_polynomial({1.0, 1.0, 1.0}, {1.0, 2.0, 3.0}, 1).has_value());
  EXPECT_FALSE(fit_polynomial({1.0}, {1.0}, 1).has_value());
  EXPECT_FALSE(least_squares({{1.0, 2.0, 3.0}, {2.0, 4.0, 6.0}}, {1.0, 2.0, 3.0}, false).has_value());
  EXPECT_FALSE(least_squares({}, {1.0}, false).has_value());
  EXPECT_FALSE(fit_polynomial({1.0, 2.0}, {3.0, 3.0}, 1)->r_squared.has_value());
}

}  // namespace
}  // namespace retort::results
