// Two drafts of the same pupils.
#include "classroom/change.h"

#include "class_support.h"

namespace retort::classroom {
namespace {

std::string steps_of(const std::vector<std::size_t>& steps) {
  std::string out;
  for (std::size_t step : steps) out += std::to_string(step);
  return out;
}

TEST(Change, StepsGainedNearerAndLost) {
  struct Row {
    const char* name;
    const char* before;
    const char* after;
    const char* expected;  // gained/nearer/lost
  };
  const Row rows[] = {
      {"the same", "apple pp", "apple pp", "//"},
      {"gained", "apple", "apple pear", "1//"},
      {"gained from vague", "pp", "pear", "1//"},
      {"nearer", "apple", "apple pp", "/1/"},
      {"lost", "apple pear", "apple", "//1"},
      {"lost to vague", "pear", "pp", "//1"},
      {"vague to missing is no loss", "pp", "no", "//"},
      {"all at once", "apple", "pear mm", "1/2/0"},
      {"to nothing", "apple pear", "", "//01"},
  };
  for (const Row& row : rows) {
    Change c = compare(4, {test::draft("x", row.before)}, {test::draft("x", row.after)});
    ASSERT_EQ(c.pupils.size(), 1U) << row.name;
    const PupilChange& p = c.pupils[0];
    EXPECT_EQ(steps_of(p.gained) + "/" + steps_of(p.nearer) + "/" + steps_of(p.lost), row.expected) << row.name;
  }
}

TEST(Change, PairsByLabelAndListsTheRest) {
  std::vector<Draft> before = {test::draft("a", "apple"), test::draft("b", "pear"), test::draft("c", "plum"), test::draft("d", "x"),
                               test::draft("d", "y")};
  std::vector<Draft> after = {test::draft("c", "apple plum"), test::draft("a", "no"), test::draft("e", "pear"),
                              test::draft("d", "z"),          test::draft("f", "1"),  test::draft("f", "2")};
  Change c = compare(4, before, after);
  ASSERT_EQ(c.pupils.size(), 2U);
  EXPECT_EQ(c.pupils[0].before, 2U);
  EXPECT_EQ(c.pupils[0].after, 0U);
  EXPECT_EQ(c.pupils[1].before, 0U);
  EXPECT_EQ(c.pupils[1].after, 1U);
  EXPECT_EQ(test::labels(before, c.only_before), "b");
  EXPECT_EQ(test::labels(after, c.only_after), "e");
  EXPECT_EQ(c.unsure, (std::vector<std::string>{"d", "f"}));
  EXPECT_EQ(c.steps[0].before, 1U);
  EXPECT_EQ(c.steps[0].after, 1U);
  EXPECT_EQ(c.steps[0].gained, 1U);
  EXPECT_EQ(c.steps[0].lost, 1U);
}

}  // namespace
}  // namespace retort::classroom
