// Facts of the trade about results tables, as a science teacher would say them; each is common practice, no source.
#include "../results/tables.h"
#include "report/results_words.h"

namespace retort::results {
namespace {

struct Fact {
  const char* name;
  const char* csv;
  const char* expected;  // "mean ± half range; relation"
};

std::string judged(const std::string& csv) {
  Analysis a = test::analysed(csv);
  const Summary& s = a.summaries.back();
  std::string relation = a.proportional() ? "directly proportional" : a.line.state != LineState::fitted ? "no line" : a.line.curved() ? "curved" : a.line.shape == Shape::straight ? "linear" : "open";
  return mean_text(s) + " \u00B1 " + uncertainty_text(s) + "; " + relation;
}

class ResultsTrade : public ::testing::TestWithParam<Fact> {};
TEST_P(ResultsTrade, IsJudgedAsATeacherWould) { EXPECT_EQ(judged(GetParam().csv), GetParam().expected); }

INSTANTIATE_TEST_SUITE_P(
    Outside, ResultsTrade,
    ::testing::Values(
        Fact{"a mean leaves out the anomaly", "F / N,t 1 / s,t 2 / s,t 3 / s\n1,1.0,1.1,1.0\n2,2.1,2.0,2.1\n3,3.0,3.1,3.0\n4,4.1,4.1,4.0\n5,5.0,5.1,9.8\n", "5.1 \u00B1 0.05; directly proportional"},
        Fact{"the uncertainty is half the range", "F / N,t 1 / s,t 2 / s,t 3 / s\n1,12.1,12.5,12.3\n", "12.3 \u00B1 0.2; no line"},
        Fact{"a mean has the readings' decimal places", "F / N,t 1 / s,t 2 / s,t 3 / s\n1,1.21,1.22,1.25\n", "1.23 \u00B1 0.02; no line"},
        Fact{"straight through the origin is directly proportional", "Force / N,Extension 1 / cm,Extension 2 / cm\n1,4.0,4.1\n2,8.0,8.1\n3,12.1,12.0\n4,16.0,16.1\n", "16.1 \u00B1 0.05; directly proportional"},
        Fact{"the length of a spring is linear in the force", "Force / N,Length 1 / cm,Length 2 / cm\n0,5.0,5.1\n1,9.0,9.1\n2,13.1,13.0\n3,17.0,17.1\n", "17.1 \u00B1 0.05; linear"},
        Fact{"a stopping distance grows with the square of the speed", "Speed / m/s,Distance 1 / m,Distance 2 / m\n5,2.0,2.1\n10,8.1,8.0\n15,18.0,18.2\n20,32.1,32.0\n25,50.0,50.2\n", "50.1 \u00B1 0.1; curved"},
        Fact{"a hot can cools along a curve", "Time / min,Temperature 1 / \u00B0C,Temperature 2 / \u00B0C\n0,80,81\n2,65,66\n4,54,54\n6,46,45\n8,39,40\n10,35,34\n", "35 \u00B1 0.5; curved"}),
    test::row_name<Fact>);

// 9.8 m/s² from T² = 4π² l / g: lengths in metres, times invented to the nearest hundredth.
TEST(ResultsTrade, APendulumGivesG) {
  Analysis a = test::analysed("Length / m,T\u00B2 / s\u00B2\n0.20,0.81\n0.40,1.61\n0.60,2.42\n0.80,3.22\n1.00,4.03\n");
  EXPECT_NEAR(4 * 9.8696 / a.line.gradient().value(), 9.8, 0.05);
  EXPECT_TRUE(a.proportional());
}

}  // namespace
}  // namespace retort::results
