#include "results/heading.h"

#include "../support.h"

namespace retort::results {
namespace {

struct Row {
  const char* name;
  const char* text;
  const char* expected;  // "quantity | unit | repeat | role"
};

std::string shown(const Heading& h) {
  const char* roles[] = {"reading", "mean", "uncertainty", "label"};
  return h.quantity + " | " + h.unit + " | " + std::to_string(h.repeat) + " | " + roles[static_cast<int>(h.role)];
}

class Headings : public ::testing::TestWithParam<Row> {};
TEST_P(Headings, AreUnderstood) { EXPECT_EQ(shown(read_heading(GetParam().text)), GetParam().expected); }

INSTANTIATE_TEST_SUITE_P(
    Results, Headings,
    ::testing::Values(Row{"slash", "Force / N", "Force | N | 0 | reading"}, Row{"brackets", "Force (N)", "Force | N | 0 | reading"},
                      Row{"square brackets", "Force [N]", "Force | N | 0 | reading"}, Row{"in", "Force in N", "Force | N | 0 | reading"},
                      Row{"comma", "length, cm", "length | cm | 0 | reading"}, Row{"no spaces", "Time/s", "Time | s | 0 | reading"},
                      Row{"squared", "T\u00B2 / s\u00B2", "T\u00B2 | s\u00B2 | 0 | reading"}, Row{"quotient", "Speed / m/s", "Speed | m/s | 0 | reading"},
                      Row{"words", "force in newtons", "force | N | 0 | reading"}, Row{"percentage", "Efficiency / %", "Efficiency | % | 0 | reading"},
                      Row{"degrees", "Angle of incidence i (\u00B0)", "Angle of incidence i | \u00B0 | 0 | reading"},
                      Row{"celsius", "Temperature / \u00B0C", "Temperature | \u00B0C | 0 | reading"}, Row{"celsius as C", "Temperature in C", "Temperature | \u00B0C | 0 | reading"}, Row{"charge", "Charge / C", "Charge | C | 0 | reading"},
                      Row{"unknown unit", "Brightness / lux", "Brightness | lux | 0 | reading"},
                      Row{"unit last", "Force N", "Force | N | 0 | reading"}, Row{"a letter is no unit", "Spring A", "Spring A |  | 0 | reading"},
                      Row{"T is no tesla", "T", "T |  | 0 | reading"}, Row{"no unit", "Number of coins", "Number of coins |  | 0 | reading"},
                      Row{"ratio", "Distance / time", "Distance | time | 0 | reading"}, Row{"repeat", "Time 2 / s", "Time | s | 2 | reading"},
                      Row{"repeat at the end", "Time / s (3)", "Time | s | 3 | reading"}, Row{"run", "Time (s) run 2", "Time | s | 2 | reading"},
                      Row{"run alone", "run 1", " |  | 1 | reading"}, Row{"number alone", "3", " |  | 3 | reading"}, Row{"letter and number", "t1 / s", "t | s | 1 | reading"},
                      Row{"mean", "Mean time / s", "time | s | 0 | mean"}, Row{"mean in brackets", "Time (mean) / s", "Time | s | 0 | mean"},
                      Row{"average", "Average", " |  | 0 | mean"}, Row{"uncertainty", "Uncertainty in time / s", "Uncertainty in time | s | 0 | uncertainty"},
                      Row{"label", "Trial", " |  | 0 | label"}, Row{"line end", "Force\n/ N", "Force | N | 0 | reading"}, Row{"nothing", "", " |  | 0 | reading"},
                      Row{"squared unit with a digit", "a / m/s2", "a | m/s\u00B2 | 0 | reading"}, Row{"only a slash", "/", "/ |  | 0 | reading"},
                      Row{"unbalanced", "Force (N", "Force (N |  | 0 | reading"}, Row{"brackets alone", "()", "() |  | 0 | reading"}),
    test::row_name<Row>);

}  // namespace
}  // namespace retort::results
