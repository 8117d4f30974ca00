// Calculations as pupils write them, each with what is found and said of it.
#include "calc_support.h"

namespace retort {
namespace {

struct Row {
  const char* name;
  const char* text;
  const char* expected;
};

class Found : public ::testing::TestWithParam<Row> {};
TEST_P(Found, IsAsExpected) {
  EXPECT_EQ(test::shown(GetParam().text), GetParam().expected);
}

INSTANTIATE_TEST_SUITE_P(
    UnitsAndQuotients, Found,
    ::testing::Values(Row{"a count beside a number with a unit", "one tile has 3 cm\u00B2. three tiles so 3 x 3 = 9 cm\u00B2", "9 right"},
                      Row{"a square of a length", "the side is 3 cm so 3 x 3 = 9 cm\u00B2", "9 right"},
                      Row{"capitals of the keyboard", "1 kg took 9000 J for 20 degrees, so c is 9000/20 = 450 j/KGc", "450 right"},
                      Row{"kgC without a ring", "2 kg block, E = 2 x 450 J/kgC x 10 = 9000 J", "9000 right"},
                      Row{"negative powers of kg and C", "1 kg took 9000 J for 20 degrees, so c is 9000/20 = 450 J kg-1 C-1", "450 right"},
                      Row{"a quotient named, with no verb", "mass 45 g volume 18 cm3 density 2.5 g/cm3", "2.5 right"},
                      Row{"a quotient of one figure", "we had 48 cm3 in 80 secs, rate 0.6 cm3/s", "0.6 right"},
                      Row{"two quotients in a row", "It went 36 mm in 5 mins and 42 mm in 5 mins. Rates are 7.2 mm/min and 8.4 mm/min",
                          "7.2 right; 8.4 right"},
                      Row{"a quotient that does not fit is left alone", "It went 36 mm in 5 mins. The label said 9.1 mm/min", ""},
                      Row{"a percentage cut short", "got 2.0 g out of 3.0 g so the yield was 66.6 %", "66.6 wrong rounding (66.7 %)"}),
    test::row_name<Row>);

INSTANTIATE_TEST_SUITE_P(
    Written, Found,
    ::testing::Values(Row{"tidy", "v = f\u03BB = 12 \u00D7 0.031 = 0.37 m/s", "0.37 right"},
                      Row{"words for operators", "i did 6 devided by 0.15 and got 40", "40 right"},
                      Row{"no spaces", "speed= 8x2.5 =20cm/s", "20 right"}, Row{"arrow", "1/80 --> 0.0125 s-1", "0.0125 right"},
                      Row{"brackets and lines", "a = (0.95-0.20)/1.5\n=0.5 m/s/s", "0.5 right"},
                      Row{"standard form", "f = 3.0 \u00D7 10^8 / 250 = 1.2 x 10^6 Hz", "1.2 x 10^6 right"},
                      Row{"superscripts", "0.025 \u00D7 0.120 = 3.00 \u00D7 10\u207B\u00B3 mol", "3.00 \u00D7 10\u207B\u00B3 right"},
                      Row{"thousands", "0.0500*334000 comes to 16,700 J", "16,700 right"},
                      Row{"numbers in words", "thirty divided by twenty which is 1.5 seconds", "1.5 right"},
                      Row{"take away", "384 take away 24 = 360", "360 right"},
                      Row{"half in glyph", "Ee = \u00BD \u00D7 32 \u00D7 0.25\u00B2 = 1.0 J", "1.0 right"},
                      Row{"sines", "n = sin 40 / sin 25 = 0.643/0.423 = 1.52", "1.52 right"},
                      Row{"inverse sine", "c = sin\u207B\u00B9(1/1.33) \u2248 48.8\u00B0", "48.8 right"},
                      Row{"decimal comma", "v = 5 Hz \u00D7 0,03 m = 0,15 m/s", "0,15 right"},
                      Row{"result first", "I got 40 by doing 6 / 0.15", "40 right"}, Row{"minutes and seconds", "2 min 15 s is 135 s", "135 right"},
                      Row{"operand before", "it was 25.2 seconds for 20 swings. i divided by 20 so one swing is 1.26 s", "1.26 right"},
                      Row{"unit of a bracket", "(2.35 \u2212 0.75) m s\u207B\u00B9 \u00F7 0.80 s = 2.0 m s\u207B\u00B2", "2.0 right"},
                      Row{"equation with an unknown", "100 kPa \u00D7 30 = p \u00D7 20 so p = 150 kPa", "150 right"},
                      Row{"square undone", "v\u00B2 = 2 \u00D7 9.8 \u00D7 1.8 = 35.28, so v = 5.94 m/s", "35.28 right; 5.94 right"},
                      Row{"sine undone", "sin c = 1/1.5 = 0.667 so c = 42\u00B0", "0.667 right; 42 right"}),
    test::row_name<Row>);

INSTANTIATE_TEST_SUITE_P(Converted, Found,
                         ::testing::Values(Row{"by equals", "20 cm = 0.2 m", "0.2 right"},
                                           Row{"in words", "i changed 350 g into 0.35 kg", "0.35 right"},
                                           Row{"in brackets", "the wave was 3.2 cm (0.032 m)", "0.032 right"},
                                           Row{"wrong", "300 cm\u00B2 = 3 m\u00B2", "3 wrong power-of-ten (0.03 m\u00B2)"},
                                           Row{"at the end of a chain", "8 \u00D7 2.5 = 20 cm/s = 0.2 m/s", "0.2 right"},
                                           Row{"kelvin", "10 mins = 600 s", "600 right"},
                                           Row{"density", "2.7 g/cm\u00B3 = 2700 kg/m\u00B3", "2700 right"}),
                         test::row_name<Row>);

INSTANTIATE_TEST_SUITE_P(
    InSentences, Found,
    ::testing::Values(Row{"formula", "the frequency was 8 Hz and the wavelength 2.5 cm so the speed is 0.2 m/s", "0.2 right"},
                      Row{"formula, unit unconverted", "the frequency was 8 Hz and the wavelength 2.5 cm so the speed is 20 m/s",
                          "20 wrong power-of-ten (0.2 m/s)"},
                      Row{"mean", "the mean of 14, 15 and 13 cm is 14 cm", "14 right"},
                      Row{"mean, wrong count", "my times 0.21, 0.19 and 0.23 s, so the mean was 0.315 s", "0.315 wrong count (0.21 s)"},
                      Row{"mean without an anomaly", "22, 23 and 29 but the 29 is an anomaly so the mean is 22.5", "22.5 right"},
                      Row{"change", "it went from 21.5 to 37.0 so that's a rise of 15.5 degrees", "15.5 right"},
                      Row{"percentage", "the chip went from 3.20 g to 2.72 g which is a loss of 15 %", "15 right"},
                      Row{"proportion", "the acceleration was 0.15 m/s2. three times the force so three times the acceleration, 0.45 m/s2",
                          "0.45 right"},
                      Row{"several waves", "10 waves in 25 cm so one wave is 2.5 cm", "2.5 right"},
                      Row{"half the range", "5.2, 5.6 and 5.4 cm, half the range is 0.2 cm", "0.2 right"},
                      Row{"reason behind", "0.2 Hz is the frequency, because 10 waves went past in 2 s.", "0.2 wrong upside-down (5 Hz)"},
                      Row{"a value is missing", "I used v = f\u03BB and the wavelength was 4 cm and I got 0.3 m/s.", "0.3 unclear"}),
    test::row_name<Row>);

INSTANTIATE_TEST_SUITE_P(
    Slipped, Found,
    ::testing::Values(Row{"arithmetic", "250 - 137 = 123 g", "123 wrong arithmetic (113 g)"},
                      Row{"unit unconverted", "V was 6.0 V and I was 40 mA. R = V/I = 6.0/40 = 0.15 \u03A9", "0.15 wrong power-of-ten (150 \u03A9)"},
                      Row{"upside down by units", "I hung 4 N and it stretched 0.08 m. k = 0.08 / 4 = 0.02 N/m", "0.02 wrong upside-down (50 N/m)"},
                      Row{"operation by units", "The current was 0.6 A for 50 s, Q = 0.6/50 = 0.012 C", "0.012 wrong operation (30 C)"},
                      Row{"square by units", "k = 40 N/m and e = 0.15 m. Ee = 0.5 \u00D7 40 \u00D7 0.15 = 3 J", "3 wrong square (0.45 J)"},
                      Row{"half by the formula", "m = 60 kg and v = 4 m/s. Ek = 60 \u00D7 4\u00B2 = 960 J", "960 wrong square (480 J)"},
                      Row{"rounding", "36/22 = 1.63 cm3/s", "1.63 wrong rounding (1.64 cm\u00B3/s)"},
                      Row{"radians", "20 cos 30 = 3.09 N", "3.09 wrong angle-mode (17.3 N)"},
                      Row{"count of readings", "mean = (3+6+2+8+6)\u00F74 = 6.25", "6.25 wrong count (5)"},
                      Row{"gaps", "From the first crest to the sixth crest was 20 cm. wavelength = 20 \u00F7 6 = 3.3 cm", "3.3 wrong count (4 cm)"},
                      Row{"loops", "3 loops on a string of 1.8 m. wavelength = 1.8/3 = 0.6 m", "0.6 wrong count (1.2 m)"},
                      Row{"unit of another kind", "3 metres with 5 newtons, so work done 5x3 = 15 N", "15 wrong unit-wrong (15 J)"},
                      Row{"running equals", "ke = 0.5 x 2 = 1 x 3^2 = 9 J", "9 wrong chain (9 J)"},
                      Row{"formula in words", "spring constant is extension over force so 0.08/2 which is 0.04 N/m",
                          "0.04 wrong upside-down (25 N/m)"},
                      Row{"formula in symbols", "T = 2\u03C0\u221A(L/g) = 2\u03C0 \u00D7 0.4/9.8 = 0.26 s", "0.26 wrong square (1.3 s)"},
                      Row{"beyond its bounds", "efficiency = 200/150 = 1.33", "1.33 wrong upside-down (0.75)"},
                      Row{"carried forward", "300 cm\u00B2 = 3 m\u00B2. P = 510 / 3 = 170 Pa", "3 wrong power-of-ten (0.03 m\u00B2); 170 right"}),
    test::row_name<Row>);

INSTANTIATE_TEST_SUITE_P(Remarked, Found,
                         ::testing::Values(Row{"unit missing", "k = 6.0 N / 0.15 m = 40", "40 right, unit-missing"},
                                           Row{"too many figures", "v = 0.52 / 1.4 = 0.3714286 m/s", "0.3714286 right, too-many-figures"},
                                           Row{"a difference keeps its places", "mass lost = 152.4 - 150.1 = 2.3 g", "2.3 right"},
                                           Row{"zeros are no figures", "E = 0.25 x 4200 x 20 = 21000 J", "21000 right"},
                                           Row{"too few figures", "v = 0.521 m / 1.41 s = 0.4 m/s", "0.4 right, too-few-figures"}),
                         test::row_name<Row>);

INSTANTIATE_TEST_SUITE_P(SharedOut, Found,
                         ::testing::Values(Row{"so many in a time", "15 bubbles in 3 mins is 5 bubbles per min", "5 right"},
                                           Row{"per minute with a sign", "15 in 3 mins = 5 bubbles/min", "5 right"},
                                           Row{"a minute in seconds", "30 drops in 2 minutes so 0.25 drops per second", "0.25 right"},
                                           Row{"upside down", "15 bubbles in 3 mins so 0.2 bubbles per min", "0.2 wrong upside-down (5)"},
                                           Row{"next step in proportion", "2 N stretches it 5 cm so 6 N will stretch it 15 cm", "15 right"},
                                           Row{"measured, not in proportion", "2 N stretches it 5 cm so then 6 N stretches it 13 cm", ""},
                                           Row{"half a second", "it took half a second to go 0.6 m so speed = 1.2 m/s", "1.2 right"},
                                           Row{"half a minute to wait", "wait half a minute between readings", ""},
                                           Row{"5 is not cut to 10", "0.4 kg at 5 m/s so KE = 10 J", "10 wrong square (5 J)"},
                                           Row{"given, but a slip tells", "mass 0.4 kg, speed 5 m/s, kinetic energy = 10 J",
                                               "10 wrong square (5 J)"}),
                         test::row_name<Row>);

INSTANTIATE_TEST_SUITE_P(Unclear, Found,
                         ::testing::Values(Row{"division by zero", "5 / 0 = 0", "0 unclear"},
                                           Row{"no such angle", "r = sin-1(1.5) = 90", "90 unclear"},
                                           Row{"too large", "1e9999 \u00D7 2 = 5", "5 unclear"},
                                           Row{"too large a result", "3 \u00D7 2 = 6e9999", "6e9999 wrong arithmetic (6)"},
                                           Row{"unknown factor", "power = 12 x I = 30 W", "30 unclear"}),
                         test::row_name<Row>);

INSTANTIATE_TEST_SUITE_P(
    LeftAlone, Found,
    ::testing::Values(Row{"range", "10-50 cm in steps of 10 cm", ""}, Row{"apparatus", "2 \u00D7 100 g masses, 1 x clamp stand", ""},
                      Row{"from to", "it fell from 80 to 60 while we waited", ""}, Row{"date and time", "On 14/03 at 11:20 we got 5 results", ""},
                      Row{"list", "1) fill the tray to 5 mm 2) turn on the motor", ""}, Row{"scale", "the map has a scale of 1:50", ""},
                      Row{"formula alone", "v = f \u00D7 \u03BB where v is the speed", ""}, Row{"chemical equation", "2Mg + O2 \u2192 2MgO", ""},
                      Row{"angles", "30\u00B0, 40\u00B0, 50\u00B0 and 60\u00B0", ""},
                      Row{"table", "length (cm): 10, 20, 30\ncurrent (A): 0.92, 0.47, 0.31", ""},
                      Row{"plain readings", "trial 1 was 8.4, trial 2 was 8.9", ""}, Row{"nothing", "", ""}, Row{"not utf-8", "\xFF\xFE 3 \xC3", ""}),
    test::row_name<Row>);

}  // namespace
}  // namespace retort
