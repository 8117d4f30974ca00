// Words that a rubric might take from drafts.
#include "author/suggest.h"

#include "../support.h"

namespace retort::author {
namespace {

constexpr const char* kRubric = R"({"format":1,"id":"small","title":"t","question":"q","words":{"lid":["lid"],"tin":["tin"]},"steps":[
  {"id":"cover","title":"a","facet":"set-up","hint":"?","present":["{lid} & {tin}"],"vague":["{lid}"]},
  {"id":"tool","title":"b","facet":"instrument","hint":"?","present":["{thermometer} & {temperature}"]},
  {"id":"c","title":"c","facet":"set-up","hint":"?","present":["fig"]},
  {"id":"d","title":"d","facet":"set-up","hint":"?","present":["date"]}]})";

TEST(Suggest, NamesUnknownWordsBesideAStepsOwn) {
  test::Small small(kRubric);
  PointKinds kinds;
  kinds.nothing = {"and", "the", "over"};
  Suggestions suggestions(*small.checker, kinds);
  suggestions.add("Ann", "Put newspaper over the tin. I liked the zebra.");
  suggestions.add("Ben", "newspaper and the tin, newspaper");
  suggestions.add("Cal", "Put a lid on the tin with newspaper.");
  suggestions.add("Dee", "see the temperature on the gadget");
  EXPECT_EQ(suggestions.drafts(), 4U);
  std::vector<Suggestion> best = suggestions.best(5, 1);
  ASSERT_GE(best.size(), 2U);
  EXPECT_EQ(best[0].step, 0U);
  EXPECT_EQ(best[0].word, "newspaper");
  EXPECT_EQ(best[0].drafts, 2U);  // Cal's has the step
  EXPECT_EQ(best[0].beside, (std::vector<std::string>{"tin"}));
  ASSERT_EQ(best[0].evidence.size(), 2U);
  EXPECT_EQ(best[0].evidence[0].label, "Ann");
  EXPECT_EQ(best[0].evidence[0].clause, "Put newspaper over the tin");
  EXPECT_EQ(best.back().word, "gadget");
  EXPECT_EQ(best.back().step, 1U);
  for (const Suggestion& one : best) EXPECT_NE(one.word, "zebra");
  EXPECT_TRUE(suggestions.best(5, 3).empty());
  EXPECT_EQ(suggestions.best(1, 1).size(), 2U);
}

}  // namespace
}  // namespace retort::author
