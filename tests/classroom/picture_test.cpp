// The parts of a class picture, each as a table.
#include "classroom/picture.h"

#include "class_support.h"
#include "classroom/fit.h"

namespace retort::classroom {
namespace {

using test::drafts;
using test::fruit;
using test::labels;

const Rubric& rubric() {
  return fruit().checker->rubric();
}

TEST(ClassTable, RowsAndColumnsAreSortedAndTiesAreStable) {
  struct Row {
    const char* name;
    std::vector<std::string> texts;
    const char* rows;
    std::vector<std::size_t> columns;
  };
  const Row rows[] = {
      {"most steps first", {"apple", "apple pear", "apple pear plum"}, "cba", {0, 1, 2, 3}},
      {"ties as they came in", {"pear", "apple", "plum"}, "abc", {0, 1, 2, 3}},
      {"vague breaks ties", {"apple", "apple then pp"}, "ba", {0, 1, 2, 3}},
      {"a draft without words is no row", {"", "plum", " \n"}, "b", {2, 0, 1, 3}},
      {"steps most have first", {"plum walnut", "plum", "plum mm pear"}, "acb", {2, 1, 3, 0}},
  };
  for (const Row& row : rows) {
    std::vector<Draft> all = drafts(row.texts);
    Picture p = make_picture(rubric(), all);
    EXPECT_EQ(labels(all, p.drafts), row.rows) << row.name;
    EXPECT_EQ(p.steps, row.columns) << row.name;
  }
}

TEST(ClassTable, TalliesCountEveryDraftWithWordsOnce) {
  Picture p = make_picture(rubric(), drafts({"apple pp", "aa", "apple", ""}));
  EXPECT_EQ(p.tallies[0], (Tally{2, 1, 0}));
  EXPECT_EQ(p.tallies[1], (Tally{0, 1, 2}));
  EXPECT_EQ(p.tallies[2], (Tally{0, 0, 3}));
  EXPECT_EQ(p.omissions, (std::vector<std::size_t>{2, 3, 1}));  // plum before nut: it is core
}

TEST(Reteach, WeighsVagueAsHalf) {
  struct Row {
    const char* name;
    std::vector<std::string> texts;
    std::vector<std::size_t> steps;
  };
  const Row rows[] = {
      {"most lacked first", {"apple pear", "apple", "apple"}, {2, 1}},
      {"two vague are as one missing", {"apple pp plum", "apple pp plum", "pear plum"}, {0, 1}},
      {"three vague are more", {"apple pp plum", "apple pp plum", "pp plum"}, {1, 0}},
      {"no step that is not core", {"apple pear plum"}, {}},
      {"three at most, as in the rubric", {"walnut"}, {0, 1, 2}},
  };
  for (const Row& row : rows) {
    std::vector<std::size_t> steps;
    for (const Reteach& r : make_picture(rubric(), drafts(row.texts)).reteach) steps.push_back(r.step);
    EXPECT_EQ(steps, row.steps) << row.name;
  }
}

TEST(Reteach, QuotesTheClassAndElseTheRubric) {
  std::vector<Draft> all = {test::draft("Ann", "aa on top"), test::draft("Bo", "Ann said aa"), test::draft("Cy", "aa on top"),
                            test::draft("Di", "aa below")};
  const Reteach r = make_picture(rubric(), all).reteach.at(0);
  EXPECT_EQ(r.step, 1U);  // pear: nobody is near it
  EXPECT_TRUE(r.vague.empty());
  Reteach apple = make_picture(rubric(), {all[0], all[1], all[2], all[3]}).reteach.at(2);
  ASSERT_EQ(apple.step, 0U);
  EXPECT_EQ(apple.vague, (std::vector<std::string>{"aa on top", "aa below"}));  // each once, and none that names Ann
  EXPECT_TRUE(apple.better.empty());
  EXPECT_EQ(apple.models, (std::vector<std::string>{"Take an apple.", "apple first"}));
  all.push_back(test::draft("Ed", "An apple. Then rest."));
  apple = make_picture(rubric(), all).reteach.at(2);
  EXPECT_EQ(apple.better, (std::vector<std::string>{"An apple."}));
  EXPECT_TRUE(apple.models.empty());
}

TEST(Groups, FollowTheirRule) {
  struct Row {
    const char* name;
    std::vector<std::string> texts;
    const char* groups;  // step:labels, ... | alone | complete
  };
  const Row rows[] = {
      {"nothing lacked", {"apple pear plum", "apple pear plum"}, "||ab"},
      {"what fewer than half lack comes first", {"apple pear", "apple pear", "apple plum", "apple plum", "apple plum pear"}, "1:cd 2:ab ||e"},
      {"what most lack is for those left", {"apple pear", "apple pear", "apple pear", "apple plum"}, "2:abc |d|"},
      {"one alone", {"apple pear", "pear plum", "apple pear plum"}, "|ab|c"},
      {"vague is lacking too", {"aa pear plum", "pear plum", "apple pear plum", "apple pear plum", "apple pear plum"}, "0:ab ||cde"},
      {"more than five are shared out", {"no", "no", "no", "no", "no", "no", "no"}, "0:abc 0:defg ||"},
      {"nobody twice",
       {"plum", "plum", "apple", "apple", "apple pear plum", "apple pear plum", "apple pear plum", "apple pear plum", "apple pear plum"},
       "1:abcd ||efghi"},
  };
  for (const Row& row : rows) {
    std::vector<Draft> all = drafts(row.texts);
    Grouping g = make_groups(rubric(), all);
    std::string out;
    for (const Group& group : g.groups) out += std::to_string(group.step) + ":" + labels(all, group.drafts) + " ";
    EXPECT_EQ(out + "|" + labels(all, g.alone) + "|" + labels(all, g.complete), row.groups) << row.name;
  }
}

TEST(Groups, SayWhatAllOfThemAlsoLack) {
  Grouping g = make_groups(rubric(), drafts({"apple", "apple", "apple pear plum", "apple pear plum", "apple pear plum"}));
  ASSERT_EQ(g.groups.size(), 1U);
  EXPECT_EQ(g.groups[0].also, (std::vector<std::size_t>{2}));
}

TEST(Sums, AreCountedBySlipWithAnExample) {
  std::vector<Draft> all = drafts({"k = 6.0 N / 15 cm = 4 N/m", "k = 6.0 N / 12 cm = 5 N/m and 2 + 2 = 5", "6 / 2 = 3", "no sums"});
  Sums s = make_picture(rubric(), all).sums;
  EXPECT_EQ(s.right, 1U);
  EXPECT_EQ(s.wrong, 3U);
  EXPECT_EQ(s.pupils, 3U);
  EXPECT_EQ(s.pupils_wrong, 2U);
  ASSERT_FALSE(s.slips.empty());
  EXPECT_EQ(s.slips[0].slip, calc::Slip::power_of_ten);
  EXPECT_EQ(s.slips[0].count, 2U);
  EXPECT_EQ(s.slips[0].pupils, 2U);
  EXPECT_EQ(s.slips[0].example, "k = 6.0 N / 15 cm = 4 N/m");
  EXPECT_EQ(s.slips[0].correct, "40 N/m");
}

std::string concerns_of(const std::vector<Draft>& all) {
  std::string out;
  for (const Concern& c : find_concerns(rubric(), all)) {
    out += std::string(message(c.code).name) + ":" + labels(all, c.drafts);
    for (const std::string& note : c.notes) out += "/" + note;
    out += " ";
  }
  return out;
}

TEST(Concerns, EachHasItsReason) {
  const std::string kLong = "I would go to the shop round the corner early on and take an apple home in my old brown bag for later that day.";
  const std::string kAlike = "I would go to the shop round the corner early on and take an apple home in my old brown bag for later that week.";
  const std::string kOther =
      "Nobody in our house eats much fruit, so there is hardly any need to think about it: one apple a day would be quite enough for us.";
  struct Row {
    const char* name;
    std::vector<std::string> texts;
    const char* expected;
  };
  const Row rows[] = {
      {"nothing odd", {kLong, kOther}, ""},
      {"no words", {"", kLong}, "no-words:a "},
      {"short", {"An apple."}, "too-short:a/2 "},
      {"nothing found", {"one two three four five six seven eight nine ten one two three four five six seven eight nine ten one two three four five"}, "nothing-found:a "},
      {"near-copies", {kLong, kOther, kAlike}, "near-copies:ac/90 "},
      {"the very same thrice", {kLong, kLong, kLong}, "near-copies:abc/100 "},
      {"bytes", {kLong + "\xFF\xFE"}, "bytes-passed-over:a/2 "},
  };
  for (const Row& row : rows) EXPECT_EQ(concerns_of(drafts(row.texts)), row.expected) << row.name;
}

TEST(Concerns, TheSameNameTwiceAndAnotherPractical) {
  std::vector<Draft> all = {test::draft("x", "an apple"), test::draft("x", "a pear")};
  all[1].fits_better = "Nuts";
  EXPECT_EQ(concerns_of(all), "too-short:x/2 too-short:x/2 other-practical:x/Nuts label-twice:xx/2 ");
}

TEST(Fit, AnotherPracticalMustFitClearlyBetter) {
  struct Row {
    const char* name;
    double other, own;
    bool clearly;
  };
  const Row rows[] = {{"twice and much more", 0.5, 0.2, true},
                      {"not twice", 0.5, 0.3, false},
                      {"twice but little", 0.3, 0.15, false},
                      {"own is nothing", 0.2, 0.0, true},
                      {"both nothing", 0.0, 0.0, false}};
  for (const Row& row : rows) EXPECT_EQ(fits_clearly_better(row.other, row.own), row.clearly) << row.name;
}

}  // namespace
}  // namespace retort::classroom
