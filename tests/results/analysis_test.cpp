// Gradient, units, constants and refraction: whole tables through the whole stage.
#include "results/analysis.h"

#include "tables.h"

namespace retort::results {
namespace {

struct Row {
  const char* name;
  const char* csv;
  const char* gradient;
  const char* intercept;
  const char* points;  // two points on the line, and what they give
};

class Gradients : public ::testing::TestWithParam<Row> {};
TEST_P(Gradients, HaveUnitsAndSensibleFigures) {
  Analysis a = test::analysed(GetParam().csv);
  ASSERT_TRUE(a.gradient.has_value());
  const Gradient& g = *a.gradient;
  EXPECT_EQ(g.gradient.with_unit(), GetParam().gradient);
  EXPECT_EQ(g.intercept.with_unit(), GetParam().intercept);
  EXPECT_EQ("(" + g.low.x + ", " + g.low.y + ") (" + g.high.x + ", " + g.high.y + ") " + g.from_points, GetParam().points);
}

INSTANTIATE_TEST_SUITE_P(
    Results, Gradients,
    ::testing::Values(
        Row{"spring", "Force / N,Extension / cm\n1.5,3.8\n3.0,7.5\n4.5,11.3\n6.0,15.0\n7.5,18.8\n", "2.5 cm/N", "0.0 cm", "(1.5, 3.8) (7.5, 18.8) 2.5"},
        Row{"pendulum", "Length / m,T\u00B2 / s\u00B2\n0.200,0.806\n0.400,1.611\n0.600,2.416\n0.800,3.222\n", "4.03 s\u00B2/m", "0.001 s\u00B2", "(0.20, 0.806) (0.80, 3.222) 4.03"},
        Row{"no unit on x", "Coins,Mass / g\n1,5.1\n2,10.0\n3,15.1\n4,20.0\n", "5.0 g", "0.1 g", "(1.0, 5.1) (4.0, 20.0) 5.0"},
        Row{"no units", "a,b\n1,2.0\n2,4.1\n3,6.0\n4,8.0\n", "2.0", "0.1", "(1.0, 2.04) (4.0, 8.01) 2.0"},
        Row{"unknown unit", "Layers,Brightness / lux\n1,80\n2,61\n3,40\n4,19\n", "\u221220 lux", "101 lux", "(1.0, 80.6) (4.0, 19.4) \u221220"},
        Row{"unknown below", "Light / lux,Current / mA\n10,2.0\n20,4.1\n30,6.0\n40,8.1\n", "0.20 mA per lux", "0.0 mA", "(10, 2.02) (40, 8.08) 0.20"},
        Row{"scatter leaves two figures", "F / N,x / cm\n1.00,10.0\n2.00,21.9\n3.00,29.0\n4.00,41.5\n5.00,49.0\n", "9.8 cm/N", "1.0 cm", "(1.0, 10.8) (5.0, 49.8) 9.8"}),
    test::row_name<Row>);

Guide guide(const char* x, const char* y, ConstantFrom from, const char* unit) {
  Guide out{{x}, {y}, GradientMeaning{}};
  out.gradient->name = "constant";
  out.gradient->from = from;
  if (*unit != '\0') out.gradient->unit = read_unit(unit);
  return out;
}

struct ConstantRow {
  const char* name;
  const char* csv;
  Guide guide;
  const char* expected;  // "value unit", or the codes of the findings
};

class Constants : public ::testing::TestWithParam<ConstantRow> {};
TEST_P(Constants, AreWorkedOutWithTheirUnits) {
  Wanted wanted{"", "", &GetParam().guide};
  Analysis a = test::analysed(GetParam().csv, wanted);
  EXPECT_EQ(a.constant ? a.constant->value.with_unit() : test::codes_of(a.findings, GetParam().csv), GetParam().expected);
}

constexpr const char* kSpring = "Force / N,Extension / cm\n1.5,3.8\n3.0,7.5\n4.5,11.3\n6.0,15.0\n7.5,18.8\n";
constexpr const char* kBlock = "Angle of incidence / \u00B0,Angle of refraction / \u00B0\n10,6.6\n20,13.2\n30,19.5\n40,25.4\n50,30.7\n60,35.3\n";

INSTANTIATE_TEST_SUITE_P(
    Results, Constants,
    ::testing::Values(
        ConstantRow{"centimetres become metres", kSpring, guide("force", "extension", ConstantFrom::inverse, "N/m"), "40 N/m"},
        ConstantRow{"columns in the other order", "Extension / mm,Force / N\n38,1.5\n75,3.0\n113,4.5\n150,6.0\n188,7.5\n", guide("force", "extension", ConstantFrom::inverse, "N/m"), "40 N/m"},
        ConstantRow{"the gradient itself", "Time / s,Distance / cm\n1.0,50\n2.0,101\n3.0,149\n4.0,200\n", guide("time", "distance", ConstantFrom::gradient, "m/s"), "0.50 m/s"},
        ConstantRow{"mass from newtons", "Force / N,Acceleration / m/s\u00B2\n0.20,0.41\n0.40,0.79\n0.60,1.20\n0.80,1.61\n", guide("force", "acceleration", ConstantFrom::inverse, "kg"), "0.50 kg"},
        ConstantRow{"units that do not fit", "Force / N,Extension / s\n1,2\n2,4\n3,6\n4,8\n", guide("force", "extension", ConstantFrom::inverse, "N/m"), "results-unit-misfit"},
        ConstantRow{"no units", "Force,Extension\n1,2\n2,4\n3,6\n4,8\n", guide("force", "extension", ConstantFrom::inverse, "N/m"), "results-unit-misfit"},
        ConstantRow{"unknown units", "Force / N,Extension / squares\n1,2\n2,4\n3,6\n4,8\n", guide("force", "extension", ConstantFrom::inverse, "N/m"), "results-unit-unknown"},
        ConstantRow{"other columns", "Mass / g,Time / s\n1,2\n2,4\n3,6\n4,8\n", guide("force", "extension", ConstantFrom::inverse, "N/m"), "results-guide-misfit"},
        ConstantRow{"curved: no constant", "Force / N,Extension / cm\n1,1\n2,4\n3,9\n4,16\n5,25\n6,36\n", guide("force", "extension", ConstantFrom::inverse, "N/m"), ""},
        ConstantRow{"sines", kBlock, guide("incidence", "refraction", ConstantFrom::sines, ""), "1.5"}),
    test::row_name<ConstantRow>);

// sin i = 1.50 sin r, the angles rounded to a tenth of a degree; sin c = 1/1.50 gives 41.8°.
TEST(Sines, GiveTheRefractiveIndexAndTheCriticalAngle) {
  Analysis a = test::analysed(kBlock);
  ASSERT_TRUE(a.sines.has_value());
  EXPECT_NEAR(a.sines->index.value.value(), 1.50, 0.005);
  EXPECT_NEAR(a.sines->mean_ratio->value(), 1.50, 0.005);
  ASSERT_TRUE(a.sines->critical.has_value());
  EXPECT_NEAR(a.sines->critical->value.value(), 41.8, 0.2);
  EXPECT_FALSE(a.proportional());
}

TEST(Sines, AreNotForReflectionNorForOtherQuantities) {
  EXPECT_FALSE(test::analysed("Angle of incidence / \u00B0,Angle of reflection / \u00B0\n10,10\n20,21\n30,30\n").sines.has_value());
  EXPECT_FALSE(test::analysed(kSpring).sines.has_value());
}

TEST(Sines, PassOverAnglesThatCannotBe) {
  Analysis a = test::analysed("i / \u00B0,r / \u00B0\n-10,5\n0,0\n30,19\n45,28\n60,35\n200,40\n");
  ASSERT_TRUE(a.sines.has_value());
  EXPECT_EQ(a.sines->groups, (std::vector<std::size_t>{1, 2, 3, 4}));
}

TEST(Sines, GiveNoCriticalAngleIntoADenserMedium) {
  Analysis a = test::analysed("i / \u00B0,r / \u00B0\n10,15\n20,31\n30,49\n35,59\n");
  ASSERT_TRUE(a.sines.has_value());
  EXPECT_FALSE(a.sines->critical.has_value());
}

}  // namespace
}  // namespace retort::results
