#include "review/review.h"

#include "../support.h"

namespace retort {
namespace {

using enum StepStatus;

Rubric rubric_of(std::vector<bool> core) {
  Rubric rubric;
  for (bool c : core) {
    Step step;
    step.core = c;
    rubric.steps.push_back(step);
  }
  return rubric;
}

struct LevelRow {
  const char* name;
  std::vector<StepStatus> status;
  bool broken;
  int low, high;
};

TEST(Level, ComesFromTheCoreStepsAndTheirOrder) {
  Rubric rubric = rubric_of({true, true, true, true, false});
  const LevelRow rows[] = {
      {"nothing", {missing, missing, missing, missing, missing}, false, 0, 0},
      {"all core", {present, present, present, present, missing}, false, 5, 6},
      {"extras alone earn nothing", {missing, missing, missing, missing, present}, false, 0, 0},
      {"half", {present, present, missing, missing, missing}, false, 2, 3},
      {"unclear counts little", {vague, vague, vague, vague, missing}, false, 0, 1},
      {"broken order counts less", {present, present, present, vague, present}, true, 3, 4},
      {"the same in order", {present, present, present, vague, present}, false, 4, 5},
  };
  for (const LevelRow& row : rows) {
    std::vector<StepReview> steps(row.status.size());
    for (std::size_t i = 0; i < steps.size(); ++i) steps[i].status = row.status[i];
    Level level = indicate(rubric, steps, {{true, !row.broken}});
    EXPECT_EQ(level.low, row.low) << row.name;
    EXPECT_EQ(level.high, row.high) << row.name;
    EXPECT_EQ(level.of, 6) << row.name;
  }
}

TEST(Next, NamesUpToThreeStepsCoreOnesFirst) {
  test::Small small(R"({"format":1,"id":"small","title":"t","question":"q","steps":[
    {"id":"extra","title":"a","facet":"safety","hint":"?","present":["apple"]},
    {"id":"core1","title":"a","facet":"set-up","core":true,"hint":"?","present":["pear"]},
    {"id":"core2","title":"a","facet":"set-up","core":true,"hint":"?","present":["ripe plum"],"vague":["plum"]},
    {"id":"core3","title":"a","facet":"set-up","core":true,"hint":"?","present":["fig"]},
    {"id":"core4","title":"a","facet":"set-up","core":true,"hint":"?","present":["date"]}]})");
  EXPECT_EQ(small.review("plum").next, (std::vector<std::size_t>{2, 1, 3}));
  EXPECT_EQ(small.review("pear, ripe plum, fig, date").next, (std::vector<std::size_t>{0}));
  EXPECT_TRUE(small.review("apple pear, ripe plum, fig, date").next.empty());
}

constexpr const char* kPoints = R"({"format":1,"kind":"points","marks":2,"id":"small","title":"t","question":"q","steps":[
    {"id":"faster","title":"Speed up","facet":"conclusion","core":true,"hint":"?","present":["goes faster"],"vague":["changes"],"lacks":"which way?",
     "reason":["because + deeper"],"lacks-reason":"why?","contradicts":["goes slower"]},
    {"id":"a","title":"First","facet":"accuracy","hint":"?","present":["parallax ... more accurate"],"once":"accurate"},
    {"id":"b","title":"Second","facet":"accuracy","hint":"?","present":["camera ... more accurate"],"once":"accurate"}]})";

TEST(Points, NeedTheirReasonAreCancelledAndCountOnce) {
  test::Small small(kPoints);
  const struct {
    const char* name;
    const char* text;
    std::vector<StepStatus> status;
    std::size_t noted;
    const char* note;
    int low, high;
  } rows[] = {
      {"with its reason", "it goes faster because deeper water", {present, missing, missing}, 0, "", 1, 1},
      {"without its reason", "it goes faster", {vague, missing, missing}, 0, "why?", 0, 1},
      {"vague as ever", "it changes", {vague, missing, missing}, 0, "which way?", 0, 1},
      {"contradicted", "it goes faster because deeper. it goes slower", {missing, missing, missing}, 0,
       "this is said as well, and goes against it: \"goes slower\"", 0, 0},
      {"denied is no contradiction", "it goes faster because deeper, it does not go slower", {present, missing, missing}, 0, "", 1, 1},
      {"nothing to contradict", "it goes slower", {missing, missing, missing}, 0, "", 0, 0},
      {"once", "no parallax so more accurate. a camera is more accurate", {missing, present, vague}, 2, "this is the same point as \"First\", and counts once", 1, 2},
      {"never more than the marks", "goes faster because deeper, no parallax so it is more accurate. a camera is more accurate", {present, present, vague}, 2,
       "this is the same point as \"First\", and counts once", 2, 2},
  };
  for (const auto& row : rows) {
    Review review = small.review(row.text);
    for (std::size_t i = 0; i < row.status.size(); ++i) EXPECT_EQ(review.steps[i].status, row.status[i]) << row.name << ", step " << i;
    EXPECT_EQ(review.steps[row.noted].note, row.note) << row.name;
    EXPECT_EQ(review.level.low, row.low) << row.name;
    EXPECT_EQ(review.level.high, row.high) << row.name;
    EXPECT_EQ(review.level.of, 2) << row.name;
  }
}

}  // namespace
}  // namespace retort
