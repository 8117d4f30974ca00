#include "results/repeats.h"

#include "report/results_words.h"
#include "tables.h"

namespace retort::results {
namespace {

// Four rows whose repeats lie within 0.02, as a ground for a fifth.
constexpr const char* kOthers = "1,1.00,1.01,1.02\n2,2.00,2.02,2.01\n3,3.01,3.00,3.02\n4,4.02,4.01,4.00\n";

struct Row {
  const char* name;
  const char* rest;      // further lines; the last is the one judged
  const char* expected;  // "mean; range; half range; percent; left out …; disagree"
};

std::string judged(const std::string& csv) {
  Analysis a = test::analysed(csv);
  const Summary& s = a.summaries.back();
  std::string out = s.kept == 0 ? "none" : mean_text(s) + "; " + written_to_place(s.range, s.place) + "; " + uncertainty_text(s) + "; " + percent_text(s) + ";";
  for (const Anomaly& anomaly : s.anomalies) out += " -" + written_to_place(a.readings.groups.back().readings[anomaly.reading].value, s.place) + (anomaly.rule == AnomalyRule::dixon ? " by Dixon" : "");
  return out + (s.disagree ? " disagree" : "");
}

class Repeats : public ::testing::TestWithParam<Row> {};
TEST_P(Repeats, AreSummarised) { EXPECT_EQ(judged(std::string("F / N,t 1 / s,t 2 / s,t 3 / s,t 4 / s,t 5 / s\n") + kOthers + GetParam().rest), GetParam().expected); }

INSTANTIATE_TEST_SUITE_P(
    Results, Repeats,
    ::testing::Values(Row{"ordinary", "5,5.01,5.03,5.02", "5.02; 0.02; 0.01; 0.20;"}, Row{"one far off", "5,5.00,5.02,5.61", "5.01; 0.02; 0.01; 0.20; -5.61"},
                      Row{"one too low", "5,4.10,5.02,5.00", "5.01; 0.02; 0.01; 0.20; -4.10"}, Row{"at the limit stays", "5,5.00,5.01,5.07", "5.03; 0.07; 0.035; 0.70; disagree"},
                      Row{"just past the limit", "5,5.00,5.01,5.08", "5.01; 0.01; 0.005; 0.10; -5.08"},
                      Row{"none stands out", "5,5.00,5.20,5.40", "5.20; 0.40; 0.20; 3.8; disagree"}, Row{"two of two stay", "5,5.00,5.60", "5.30; 0.60; 0.30; 5.7; disagree"},
                      Row{"two that agree", "5,5.00,5.02", "5.01; 0.02; 0.01; 0.20;"}, Row{"one reading", "5,5.00", "5.00; 0.00; ; ;"},
                      Row{"two of five", "5,5.00,5.02,5.01,6.00,9.00", "5.01; 0.02; 0.01; 0.20; -9.00 -6.00"},
                      Row{"only one of four", "5,5.00,5.01,6.00,9.00", "5.34; 1.00; 0.50; 9.4; -9.00 disagree"}, Row{"all the same", "5,5.00,5.00,5.00", "5.00; 0.00; 0.00; 0;"},
                      Row{"half goes up", "5,5.00,5.01", "5.01; 0.01; 0.005; 0.10;"}, Row{"mean of zero", "5,-0.01,0.01,0.00", "0.00; 0.02; 0.01; ;"},
                      Row{"no readings", "5,x,-,", "none"}),
    test::row_name<Row>);

class Alone : public ::testing::TestWithParam<Row> {};
TEST_P(Alone, IsJudgedByDixonsTest) { EXPECT_EQ(judged(std::string("F / N,t 1 / s,t 2 / s,t 3 / s,t 4 / s\n") + GetParam().rest), GetParam().expected); }

INSTANTIATE_TEST_SUITE_P(Results, Alone,
                         ::testing::Values(Row{"three, far off", "5,5.00,5.01,6.00", "5.01; 0.01; 0.005; 0.10; -6.00 by Dixon"},
                                           Row{"three, not far enough", "5,2.1,2.2,3.5", "2.6; 1.4; 0.7; 27;"}, Row{"three steps are nothing", "5,5.00,5.00,5.03", "5.01; 0.03; 0.015; 0.30;"},
                                           Row{"four", "5,5.0,5.1,5.2,6.5", "5.1; 0.2; 0.1; 2.0; -6.5 by Dixon"}, Row{"two that differ by a third", "5,5.0,7.0", "6.0; 2.0; 1.0; 17; disagree"}),
                         test::row_name<Row>);

struct MeanRow {
  const char* name;
  const char* readings;
  const char* mean;
  const char* expected;
};

class OwnMeans : public ::testing::TestWithParam<MeanRow> {};
TEST_P(OwnMeans, AreJudged) {
  std::string csv = std::string("F / N,t 1 / s,t 2 / s,t 3 / s,Mean t / s\n1,1.00,1.01,1.02,\n2,2.00,2.02,2.01,\n3,3.01,3.00,3.02,\n4,4.02,4.01,4.00,\n5,") + GetParam().readings + "," + GetParam().mean + "\n";
  Analysis a = test::analysed(csv);
  ASSERT_TRUE(a.checks.back().has_value());
  EXPECT_EQ(verdict_name(a.checks.back()->verdict), GetParam().expected);
}

INSTANTIATE_TEST_SUITE_P(Results, OwnMeans,
                         ::testing::Values(MeanRow{"right", "5.01,5.03,5.02", "5.02", "right"}, MeanRow{"right without the anomaly", "5.01,5.03,9.00", "5.02", "right"},
                                           MeanRow{"a half either way", "5.01,5.02,", "5.01", "right"}, MeanRow{"anomaly left in", "5.01,5.03,9.00", "6.35", "anomaly-left-in"},
                                           MeanRow{"cut off", "5.01,5.03,5.04", "5.02", "rounding"}, MeanRow{"too few places", "5.01,5.03,5.02", "5.0", "fewer-places"},
                                           MeanRow{"too many places", "5.01,5.03,5.03", "5.0233333", "more-places"}, MeanRow{"divided by three", "5.01,5.03,9.00", "3.35", "wrong-count"},
                                           MeanRow{"divided by two", "5.01,5.03,5.02", "7.53", "wrong-count"}, MeanRow{"one left out", "5.00,5.05,5.06", "5.06", "reading-left-out"},
                                           MeanRow{"the middle one", "5.00,5.01,5.06", "5.01", "middle-reading"}, MeanRow{"anything", "5.01,5.03,5.02", "4.20", "other"}),
                         test::row_name<MeanRow>);

}  // namespace
}  // namespace retort::results
