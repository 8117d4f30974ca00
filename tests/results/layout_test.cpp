#include "results/layout.h"

#include "tables.h"

namespace retort::results {
namespace {

struct Row {
  const char* name;
  const char* csv;
  const char* x;
  const char* y;
  const char* expected;  // "x label; y label; points 1:2 3:4 …; codes", or "! codes"
};

std::string shown(const Row& row) {
  Wanted wanted{row.x, row.y, nullptr};
  Result<Analysis> got = analyse(test::table_of(row.csv), "t.csv", wanted);
  if (!got) return "! " + test::codes_of({got.finding()}, row.csv);
  std::string out = got->readings.x.label() + "; " + got->readings.y.label() + ";";
  for (const Group& group : got->readings.groups) {
    out += " " + written_to_place(group.x.value, group.x.last_place) + ":";
    for (std::size_t i = 0; i < group.readings.size(); ++i) out += (i == 0 ? "" : ",") + written_to_place(group.readings[i].value, group.readings[i].last_place);
  }
  std::string codes = test::codes_of(got->findings, row.csv);
  return codes.empty() ? out : out + "; " + codes;
}

class Layouts : public ::testing::TestWithParam<Row> {};
TEST_P(Layouts, AreFound) { EXPECT_EQ(shown(GetParam()), GetParam().expected); }

INSTANTIATE_TEST_SUITE_P(
    Results, Layouts,
    ::testing::Values(
        Row{"two columns", "Force / N,Length / cm\n1,2\n2,4\n", "", "", "Force / N; Length / cm; 1:2 2:4"},
        Row{"repeats as columns", "F / N,t 1 / s,t 2 / s,t 3 / s\n1,2,3,4\n", "", "", "F / N; t / s; 1:2,3,4"},
        Row{"repeats as rows", "F / N,t / s\n1,2\n1,3\n2,5\n1,4\n", "", "", "F / N; t / s; 1:2,3,4 2:5"},
        Row{"rows with a merged cell", "F / N,t / s\n1,2\n,3\n2,5\n", "", "", "F / N; t / s; 1:2,3 2:5; results-x-from-above 3:1"},
        Row{"merged heading", "F / N,t / s,,\n1,2,3,4\n", "", "", "F / N; t / s; 1:2,3,4"},
        Row{"merged heading over numbers", "F / N,t / s,,\n,1,2,3\n5,6,7,8\n", "", "", "F / N; t / s; 5:6,7,8"},
        Row{"numbers beside the heading", "F / N,1,2,3,Mean t / s\n5,6,7,8,7\n", "", "", "F / N; t / s; 5:6,7,8"},
        Row{"units in a row of their own", "Force,Length\n(N),(cm)\n1,2\n", "", "", "Force / N; Length / cm; 1:2"},
        Row{"title above", "Our results,\nForce / N,Length / cm\n1,2\n", "", "", "Force / N; Length / cm; 1:2"},
        Row{"number of the run in front", "Run,F / N,t / s\n1,5,6\n2,5,7\n", "", "", "F / N; t / s; 5:6,7"},
        Row{"last column without repeats", "F / N,l / cm,e / cm\n1,12,2\n2,14,4\n", "", "", "F / N; e / cm; 1:2 2:4; results-columns-unused"},
        Row{"repeats before the last", "F / N,t 1 / s,t 2 / s,v / m/s\n1,2,3,9\n", "", "", "F / N; t / s; 1:2,3; results-columns-unused"},
        Row{"named columns", "a / N,b / s,c / m\n1,2,3\n", "c", "a", "c / m; a / N; 3:1; results-columns-unused"},
        Row{"named by number", "a / N,b / s,c / m\n1,2,3\n", "3", "1", "c / m; a / N; 3:1; results-columns-unused"},
        Row{"named by heading", "a / N,b / s\n1,2\n", "b / s", "A / n", "b / s; a / N; 2:1"},
        Row{"no headings", "1,2\n2,4\n", "", "", "x; y; 1:2 2:4; results-no-headings"},
        Row{"decimal commas", "F / N;t / s\n1,5;2,25\n", "", "", "F / N; t / s; 1.5:2.25"},
        Row{"decimal commas of three digits", "F / N;t / s\n1;2,250\n", "", "", "F / N; t / s; 1:2.250"},
        Row{"thousands", "F / N,t / s\n1,\"2,250\"\n", "", "", "F / N; t / s; 1:2250"},
        Row{"own units", "F / N,l / cm\n1,12.0 cm\n2,140 mm\n3,0.16 m\n", "", "", "F / N; l / cm; 1:12.0 2:14.0 3:16; results-unit-converted 3:3; results-unit-converted 4:3"},
        Row{"units only in the cells", "F,l\n1 N,12 cm\n2 N,14 cm\n", "", "", "F / N; l / cm; 1:12 2:14; results-unit-in-cell 2:1; results-unit-in-cell 2:5"},
        Row{"wrong unit", "F / N,l / cm\n1,12 s\n2,14\n", "", "", "F / N; l / cm; 1: 2:14; results-unit-other 2:3"},
        Row{"blank and bad cells", "F / N,t 1 / s,t 2 / s\n1,-,2\n2,n/a,slow\n3,1.2.3,4\n4,5,\n", "", "",
            "F / N; t / s; 1:2 2: 3:4 4:5; results-cell-blank 2:3; results-cell-blank 3:3; results-cell-no-number 3:7; results-cell-no-number 4:3; results-cell-blank 5:5"},
        Row{"short rows", "F / N,t 1 / s,t 2 / s\n1,2\n2,3,4\n", "", "", "F / N; t / s; 1:2 2:3,4; results-cell-blank 2:4"},
        Row{"row without x", "F / N,t / s\nmean,3\n1,2\n", "", "", "F / N; t / s; 1:2; results-cell-no-number 2:1; results-row-without-x 2:1"},
        Row{"one column", "F / N\n1\n2\n", "", "", "! results-too-few-columns"}, Row{"words alone", "a,b\nc,d\n", "", "", "! results-too-few-columns"},
        Row{"empty", "", "", "", "! results-too-few-columns"}, Row{"unknown column", "a,b\n1,2\n", "c", "", "! results-no-column"},
        Row{"same column twice", "a / N,b / s\n1,2\n", "a", "a", "! results-same-column"}),
    test::row_name<Row>);

TEST(Layout, AHundredColumnsAreTheMost) {
  std::string csv = "1";
  for (int i = 0; i < 150; ++i) csv += ",1";
  Result<Analysis> got = analyse(test::table_of(csv), "t.csv", {});
  ASSERT_FALSE(got.ok());
  EXPECT_EQ(got.finding().code, Code::results_too_many_columns);
}

TEST(Layout, FindingsAreCutAtAHundred) {
  std::string csv = "F / N,t / s\n";
  for (int i = 0; i < 300; ++i) csv += std::to_string(i) + ",bad\n";
  csv += "500,1\n";
  Analysis got = test::analysed(csv);
  ASSERT_EQ(got.findings.size(), 101U);
  EXPECT_EQ(got.findings.back().code, Code::results_more_findings);
  EXPECT_EQ(got.findings.back().notes[0], "200");
}

}  // namespace
}  // namespace retort::results
