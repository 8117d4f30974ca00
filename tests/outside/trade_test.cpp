// Facts of the trade, as a science teacher would say them; each is common practice, no source.
#include "../support.h"

namespace retort {
namespace {

struct Fact {
  const char* name;
  const char* rubric;
  const char* step;
  const char* text;
  const char* expected;
};

class Trade : public ::testing::TestWithParam<Fact> {};

TEST_P(Trade, IsJudgedAsATeacherWould) {
  const Fact& fact = GetParam();
  const RubricFolder& folder = test::shipped();
  auto made = Checker::make(std::string(fact.rubric) + ".json", folder.files, folder.real_words);
  ASSERT_NE(made.checker, nullptr);
  std::size_t step = made.checker->rubric().step_index(fact.step);
  ASSERT_LT(step, made.checker->rubric().steps.size());
  EXPECT_EQ(status_word(Reviewer(*made.checker).review(fact.text).steps[step].status), fact.expected) << fact.text;
}

INSTANTIATE_TEST_SUITE_P(
    Outside, Trade,
    ::testing::Values(
        Fact{"extension is new length minus original", "spring-extension", "extension-calculation", "The extension is the new length minus the original length.", "present"},
        Fact{"100 g weigh about 1 N", "spring-extension", "values-force", "Hang 150 g, 300 g, 450 g, 600 g and 750 g.", "present"},
        Fact{"a scale is read at eye level", "spring-extension", "inaccuracy", "Read the ruler at eye level to avoid parallax.", "present"},
        Fact{"two loops are one wavelength", "string-waves", "loops", "Two loops make one wavelength.", "present"},
        Fact{"tension is the weight of the masses", "string-waves", "tension-calculation", "The tension is the mass times 9.8 N/kg.", "present"},
        Fact{"speed is frequency times wavelength", "ripple-tank", "speed-calculation", "speed = frequency x wavelength", "present"},
        Fact{"several waves because one is too short", "ripple-tank", "many-waves", "Measure the length of ten waves with a ruler.", "present"},
        Fact{"frequency is waves over time", "ripple-tank", "frequency-calculation", "Count the waves for 20 s and divide the number by 20 to get the frequency.", "present"},
        Fact{"the normal stands at 90 degrees", "reflection-mirror", "normal", "Draw a line at 90 degrees to the mirror.", "present"},
        Fact{"angles are measured from the normal", "reflection-mirror", "incidence-angle", "With a protractor measure the angle of incidence between the ray and the normal.", "present"},
        Fact{"a narrow ray is easier to measure", "refraction-block", "precision", "Use a narrow slit so the ray is thin.", "present"},
        Fact{"matt black gives out most", "infrared-emission", "hypothesis-link", "If the black can has the greater fall in temperature the hypothesis is right.", "present"},
        Fact{"the best absorber warms most", "infrared-absorption", "conclusion", "The can with the greatest temperature rise is the best absorber.", "present"},
        Fact{"acceleration is change in velocity over time", "trolley-acceleration", "acceleration-calculation", "acceleration = (final velocity - initial velocity) / time", "present"},
        Fact{"repeats show anomalies", "trolley-acceleration", "repeat-mean", "Repeat each force three times, leave out anomalies and find the mean.", "present"},
        Fact{"repeats alone are half", "trolley-acceleration", "repeat-mean", "Repeat each run three times at the same force.", "vague"},
        Fact{"a fair test names its variable", "string-waves", "control", "Make it a fair test.", "vague"},
        Fact{"friction is made up for by a slope", "trolley-acceleration", "friction", "Tilt the runway a little to compensate for friction.", "present"}),
    test::row_name<Fact>);

}  // namespace
}  // namespace retort
