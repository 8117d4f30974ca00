// Sums as they stand in pupils' sentences: parts and differences said in words, statements behind each other, units left out.
// Values: common practice, no source; each row was reckoned by hand.
#include "calc_support.h"

namespace retort {
namespace {

struct Row {
  const char* name;
  const char* text;
  const char* expected;
};

class Sentences : public ::testing::TestWithParam<Row> {};
TEST_P(Sentences, AreJudged) {
  EXPECT_EQ(test::shown(GetParam().text), GetParam().expected);
}

INSTANTIATE_TEST_SUITE_P(
    Calc, Sentences,
    ::testing::Values(Row{"a third of", "a third of 9 N is 3 N", "3 right"}, Row{"a part by its percentage", "20% of 40 is 8", "8 right"},
                      Row{"out of, as a percentage", "there were 3 squares out of 25 covered so 12%", "12 right"},
                      Row{"out of, as a fraction", "useful 40 J out of total 200 J, efficiency 0.2", "0.2 right"},
                      Row{"the difference said", "the difference between 45 and 18 is 27", "27 right"},
                      Row{"from a to b, with a sign", "temp rise 21 to 34 = 13", "13 right"},
                      Row{"a mean with a sign behind its list", "mean of 4.1, 4.3, 4.2 = 4.25", "4.25 wrong arithmetic (4.2)"},
                      Row{"sines in symbols only", "i = 40°, r = 25°, n = sin i / sin r = 1.52", "1.52 right"},
                      Row{"a rate without a unit", "24 cm3 in 30 secs so the rate is 0.8", "0.8 right, unit-missing"},
                      Row{"minutes as hundredths of an hour", "45 mins is 0.45 hours", "0.45 wrong power-of-ten (0.75 h)"},
                      Row{"ten for g where units need it", "300 g x 10 = 3000 N", "3000 wrong power-of-ten (3 N)"},
                      Row{"ten is no constant elsewhere", "20 N x 10 = 200 N", "200 right"},
                      Row{"a conversion written out", "25.0cm3 of 0.10 mol/dm3 is 25.0 x 0.10 / 1000 = 0.0025 mol", "0.0025 right"},
                      Row{"a conversion by 3.6", "72 km/h is 72 / 3.6 = 20 m/s", "20 right"},
                      Row{"per gram is no energy", "energy per gram = 7560/0.5 = 15120 J/g = 15.1 kJ/g", "15.1 right, too-many-figures"},
                      Row{"waves beside their loops", "λ = 1.8/1.5 = 1.2m (3 loops is 1.5 waves)", "1.2 right"},
                      Row{"there and back, halved", "340 x 0.5 = 170 m but its there and back so 85 m", "170 right; 85 right"},
                      Row{"micro without its letter", "0.06 mm = 600 um", "600 wrong power-of-ten (60 µm)"},
                      Row{"a statement right behind a result", "sin30 = 0.5 sin19 = 0.326", "0.5 right; 0.326 right"},
                      Row{"an unknown behind a sign", "25 x 0.1 = 24.15 x c so c = 2.5/24.15 = 0.1035 mol/dm3", "0.1035 right, too-many-figures"},
                      Row{"counted in a time, times four", "pulse 22 in 15 secs x 4 = 88", "88 right"},
                      Row{"the wrong way up as it stands", "a 9 l bucket took 45 s to fill so 9/45 = 5 l/s", "5 wrong upside-down (0.2 l/s)"},
                      Row{"rearranged behind so", "V = IR so I = V/R = 6/12 = 0.5 A", "0.5 right"},
                      Row{"rearranged, no signs", "F = m a so m = F/a = 1.5/3 = 0.5 kg", "0.5 right"},
                      Row{"readings with units and no commas", "The times were 12.1s 12.4s 12.3s and 18.9s (anomaly) so mean = 12.3 s", "12.3 right"},
                      Row{"half of it was measured", "half wavelength is 40 cm so wavelength = 80cm", "80 right"},
                      Row{"a unit whose sign is left out", "4 N / 0.08 m = 50 Nm", "50 wrong unit-wrong (50 N/m)"},
                      Row{"a name with no sign", "energy 20 x 2 = 40J, power 40 x 5 = 200 W", "40 right; 200 wrong operation (8 W)"},
                      Row{"in steps, not in proportion", "3 N makes it stretch 6 cm so 9 N makes it stretch 12 cm", "12 wrong operation (18 cm)"},
                      Row{"a repeated number in no formula", "R = (10 x 15)/(10+15) = 150/25 = 6", "6 right, unit-missing"},
                      Row{"a one that is no factor", "Mr of NaOH = 23+16+1 = 39", "39 wrong arithmetic (40)"},
                      Row{"a product with its name alone", "v = 1.2 x 40 = 48", "48 right, unit-missing"},
                      Row{"names apart from values", "wavelength = 1.2 m and f = 40Hz so v = 48", "48 right, unit-missing"},
                      Row{"a half before symbols", "Ek = 1/2 mv^2 = 0.5 x 0.05 x 12^2 = 3.6 J", "3.6 right"},
                      Row{"a square done in the head", "KE=1/2mv2 = 0.5 x 2 x 9 = 9J", "9 right"},
                      Row{"things before a conversion", "so 7 squares = 35 mm = 3.5 cm", "3.5 right"},
                      Row{"a value that is given", "the frequency is 1/T where T = 0.02 so it's 50Hz", "50 right"},
                      Row{"a conversion of a result stands by itself", "E = P t = 2000 x 90 = 180000 J which is 180 kJ", "180000 right; 180 right"},
                      Row{"the way round of a difference", "change = 3.25-3.90 = -0.65g so % change is -0.65/3.90 x100= -16.7%",
                          "-0.65 right; -16.7 right"},
                      Row{"a letter whose formula was said", "F = ma so for the 0.75kg trolley F= 0.75 x 2.4= 1.8 J", "1.8 wrong unit-wrong (1.8 N)"},
                      Row{"readings have a mean", "The readings 12.1, 12.4, 12.0 and 12.3 have a mean of 12.2 seconds", "12.2 right"},
                      Row{"numbered readings", "time 1 = 22s time 2 = 25s time 3 = 22s, mean 23s", "23 right"}),
    test::row_name<Row>);

}  // namespace
}  // namespace retort
