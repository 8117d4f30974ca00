// How things are said: denied, imagined, taken back, copied, listed, pointed at.
#include "../support.h"
#include "match/markers.h"

namespace retort {
namespace {

using test::one_step;
using test::Small;

struct Row {
  const char* name;
  const char* rest;  // of the step
  const char* text;
  const char* expected;
};

class Said : public ::testing::TestWithParam<Row> {};
TEST_P(Said, HasTheStatus) {
  Small small(one_step(GetParam().rest,
                       R"(, "words": {"tool": {"kind": "instrument", "words": ["thermometer"]}, "cube": {"kind": "thing", "words": ["ice cube"]}})"));
  ASSERT_NE(small.checker, nullptr);
  EXPECT_EQ(small.status(GetParam().text), GetParam().expected) << GetParam().text;
}

constexpr const char* kRuler = R"("present": ["{measure} {length}"], "vague": ["{length}"])";
constexpr const char* kRepeat = R"("present": ["{repeat word}"])";
constexpr const char* kMove = R"("present": ["{not} move"])";
constexpr const char* kTool = R"("present": ["{tool}"])";

INSTANTIATE_TEST_SUITE_P(
    Match, Said,
    ::testing::Values(
        Row{"near", kRuler, "measure the new length", "present"}, Row{"too far apart", kRuler, "measure one two three four five six length", "vague"},
        Row{"over a full stop", kRuler, "measure. length", "present"}, Row{"not over a paragraph", kRuler, "measure it\n\nlength", "vague"},
        Row{"misspelt", kRuler, "mesure the lenth", "present"}, Row{"order matters", kRuler, "the length is what you measure", "vague"},
        Row{"denied", kRepeat, "I wouldn't bother repeating it", "missing"}, Row{"denied with do not", kRepeat, "do not repeat it", "missing"},
        Row{"denied but then done", kRepeat, "don't just do one, repeat it", "present"},
        Row{"reminder", kRepeat, "don't forget to repeat it", "present"},
        Row{"imagined", kRepeat, "you could repeat it but there isn't time", "missing"},
        Row{"not needed", kRepeat, "repeating is not needed", "missing"},
        Row{"could is enough", kRepeat, "you could repeat it three times", "present"},
        Row{"because ends a denial", kRepeat, "not one because you repeat", "present"},
        Row{"says itself what not to do", kMove, "don't move it", "present"}, Row{"needs its not", kMove, "move it", "missing"},
        Row{"taken back", kTool, "use the thermometer, no sorry, the stick", "missing"},
        Row{"the last word counts", kTool, "use the stick, no sorry, the thermometer", "present"},
        Row{"listed only", kTool, "Equipment: ruler, thermometer, cans\nPut the cans down", "vague"},
        Row{"listed on lines of their own", kTool, "Apparatus:\n- ruler\n- thermometer\n\nPut the cans down", "vague"},
        Row{"listed and used", kTool, "Equipment: thermometer\n\nMethod\nput the thermometer in", "present"},
        Row{"it is what was named last", R"("present": ["{measure} {cube}"])", "Take an ice cube. Weigh nothing, then measure it", "present"},
        Row{"it is not what comes later", R"("present": ["measure {cube}"])", "measure it. Then melt", "missing"},
        Row{"unless near", R"("present": [{"say": "ruler", "unless": ["broken"]}])", "use the broken ruler", "missing"},
        Row{"unless far", R"("present": [{"say": "ruler", "unless": ["broken"]}])", "the broken cup is here and we go on to use for this a ruler",
            "present"},
        Row{"unless tries the next place", R"("present": [{"say": "ruler", "unless": ["broken"]}])",
            "a broken ruler is bad. I go and take one more good clean whole metal ruler", "present"},
        Row{"unless anywhere", R"("present": [{"say": "ruler", "unless-anywhere": ["broken"]}])",
            "the broken cup is here and we go on to use for this a ruler", "missing"},
        Row{"all of", R"("present": [{"all": ["ruler", "stand"]}], "vague": ["ruler"])", "a stand. Then at long last, a ruler", "present"},
        Row{"not all of", R"("present": [{"all": ["ruler", "stand"]}], "vague": ["ruler"])", "a ruler", "vague"},
        Row{"beside in either order", R"("present": ["ruler & stand"])", "stand holds the ruler", "present"},
        Row{"directly after", R"("present": ["ruler + stand"])", "ruler on stand", "missing"},
        Row{"group", R"~("present": ["(ruler | tape measure) next"])~", "tape measure next", "present"},
        Row{"quoted word", R"("present": ["'normal'"])", "normally", "missing"},
        Row{"copied from the question", R"("present": ["find how long"], "vague": [])",
            "Describe how the student could find how long the spring becomes", "missing"},
        Row{"own words", R"("present": ["find how long"], "vague": [])", "I find how long it is", "present"}, Row{"empty", kRuler, "", "missing"}),
    test::row_name<Row>);

struct ValueRow {
  const char* name;
  const char* text;
  const char* expected;
};

constexpr const char* kForceTable = R"(, "given": {"values": {"quantity": "force", "list": ["1.5 N", "3.0 N", "4.5 N", "6.0 N", "7.5 N"]}})";
constexpr const char* kAngleTable = R"(, "given": {"values": {"quantity": "angle", "list": ["15°", "25°", "35°", "45°", "55°"]}})";
constexpr const char* kTimeTable = R"(, "given": {"values": {"quantity": "time", "list": ["15 min"]}})";

class Forces : public ::testing::TestWithParam<ValueRow> {};
TEST_P(Forces, AreCheckedAgainstTheTable) {
  EXPECT_EQ(Small(one_step(R"("values": true, "vague": ["{add} weights"])", kForceTable)).status(GetParam().text), GetParam().expected)
      << GetParam().text;
}
INSTANTIATE_TEST_SUITE_P(
    Match, Forces,
    ::testing::Values(
        ValueRow{"all", "use 1.5 N, 3.0 N, 4.5 N, 6.0 N and 7.5 N", "present"}, ValueRow{"without units", "1.5, 3, 4.5, 6 and 7.5", "present"},
        ValueRow{"step to the last", "start with 1.5 N and add 1.5 N each time up to 7.5 N", "present"},
        ValueRow{"step in words", "put on one point five newtons and go up in one point fives until 7.5", "present"},
        ValueRow{"grams for newtons", "hang 150 g, then 300 g, 450 g, 600 g, 750 g", "present"},
        ValueRow{"grams after the first without units", "put 150 g on then 300, 450, 600, 750", "present"},
        ValueRow{"and so on", "1.5 N then 3.0 N and so on", "present"}, ValueRow{"in the table", "do all the forces in the table", "present"},
        ValueRow{"decimal commas", "1,5 N and 3,0, 4,5, 6,0 and 7,5 N", "present"},
        ValueRow{"first and last", "from 1.5 N and keep on until 7.5 N", "present"}, ValueRow{"first only", "hang 1.5 N on it", "vague"},
        ValueRow{"step only", "add 1.5 N at a time", "vague"}, ValueRow{"no values", "add some more weights", "vague"},
        ValueRow{"wrong unit", "1.5 g, 3 g, 4.5 g, 6 g, 7.5 g", "vague"}, ValueRow{"not in the table", "add 2 N then 4 N then 8 N", "vague"},
        ValueRow{"list numbers are no values", "1) get it\n2) look\n3) stop", "missing"}, ValueRow{"denied", "I wouldn't use 1.5 N", "missing"},
        ValueRow{"nothing", "stretch it", "missing"}),
    test::row_name<ValueRow>);

class Angles : public ::testing::TestWithParam<ValueRow> {};
TEST_P(Angles, AreCheckedAgainstTheTable) {
  EXPECT_EQ(Small(one_step(R"("values": true)", kAngleTable)).status(GetParam().text), GetParam().expected) << GetParam().text;
}
INSTANTIATE_TEST_SUITE_P(Match, Angles,
                         ::testing::Values(ValueRow{"first, second and so on", "at 15, then 25 etc", "present"},
                                           ValueRow{"the same for", "15 first, the same for 25, 35, 45, 55", "present"},
                                           ValueRow{"degree signs", "15\xC2\xB0 25\xC2\xB0 35\xC2\xB0 45\xC2\xB0 55\xC2\xB0", "present"},
                                           ValueRow{"tens up to", "start at 15 and go up in tens up to 55", "present"},
                                           ValueRow{"one only", "shine it at 15 degrees", "vague"}, ValueRow{"slashes", "15/25/35/45/55", "present"}),
                         test::row_name<ValueRow>);

constexpr const char* kTableFromZero = R"(, "given": {"values": {"quantity": "mass", "list": ["0 g", "200 g", "400 g", "600 g", "800 g"]}})";

class FromZero : public ::testing::TestWithParam<ValueRow> {};
TEST_P(FromZero, NothingAddedNeedNotBeSaid) {
  EXPECT_EQ(Small(one_step(R"("values": true)", kTableFromZero)).status(GetParam().text), GetParam().expected) << GetParam().text;
}
INSTANTIATE_TEST_SUITE_P(Match, FromZero,
                         ::testing::Values(ValueRow{"all but zero", "put 200 g on, then 400 g, 600 g and 800 g", "present"},
                                           ValueRow{"with zero", "0 g, 200 g, 400 g, 600 g, 800 g", "present"},
                                           ValueRow{"first and last", "200 g up to 800 g", "vague"},
                                           ValueRow{"one only", "put 200 g on it", "vague"}),
                         test::row_name<ValueRow>);

class Times : public ::testing::TestWithParam<ValueRow> {};
TEST_P(Times, AreCheckedAgainstTheQuestion) {
  EXPECT_EQ(Small(one_step(R"("values": true)", kTimeTable)).status(GetParam().text), GetParam().expected) << GetParam().text;
}
INSTANTIATE_TEST_SUITE_P(Match, Times,
                         ::testing::Values(ValueRow{"minutes", "wait 15 minutes", "present"}, ValueRow{"seconds", "wait 900 s", "present"},
                                           ValueRow{"quarter of an hour", "leave it a quarter of an hour", "present"},
                                           ValueRow{"words", "fifteen mins", "present"}, ValueRow{"another time", "wait 10 minutes", "vague"},
                                           ValueRow{"another quantity", "15 cm away", "missing"}),
                         test::row_name<ValueRow>);

TEST(Values, TheNoteSaysWhatTheTableHas) {
  Small small(one_step(R"("values": true, "vague": ["{add} weights"])", kForceTable));
  EXPECT_EQ(small.review("add 2 N then 4 N").steps[0].note, "these values are not in the table; it has 1.5 N to 7.5 N");
  EXPECT_EQ(small.review("add some weights").steps[0].note, "no values; the table has 1.5 N to 7.5 N");
  EXPECT_EQ(small.review("hang 1.5 N").steps[0].note, "only 1.5 N; the table has 1.5 N to 7.5 N");
}

TEST(Evidence, IsTheVeryBytesThatEarnedTheStep) {
  Small small(one_step(R"("present": ["{measure} {length}"])"));
  std::string text = "\xC3\x84h\xE2\x80\x94 then mesure the \xE2\x80\x9Clenth\xE2\x80\x9D!";
  Review review = small.review(text);
  ASSERT_EQ(review.steps[0].evidence.size(), 1U);
  EXPECT_EQ(review.steps[0].evidence[0].of(text), "mesure the \xE2\x80\x9Clenth");
}

TEST(Order, IsKeptWhenTheLaterStepFollowsAndBrokenWhenNot) {
  Small small(R"({"format":1,"id":"small","title":"t","question":"q","steps":[
    {"id":"a","title":"a","facet":"set-up","hint":"?","present":["apple"]},
    {"id":"b","title":"b","facet":"set-up","hint":"?","present":["banana"]}],"order":[["a","b"]]})");
  auto order = [&](const char* text) {
    OrderMatch m = small.review(text).order[0];
    return std::string(m.both ? "both " : "one ") + (m.kept ? "kept" : "broken");
  };
  EXPECT_EQ(order("an apple and a banana"), "both kept");
  EXPECT_EQ(order("a banana and an apple"), "both broken");
  EXPECT_EQ(order("a banana, an apple, a banana"), "both kept");
  EXPECT_EQ(order("an apple"), "one broken");
}

TEST(Steps, MayDependOnLaterOnes) {
  Small small(R"({"format":1,"id":"small","title":"t","question":"q","steps":[
    {"id":"a","title":"a","facet":"set-up","hint":"?","present":[{"all":["apple",{"step":"b"}]}],"vague":[{"step":"b","at-least":"vague"}]},
    {"id":"b","title":"b","facet":"set-up","hint":"?","present":["ripe banana"],"vague":["banana"]}]})");
  EXPECT_EQ(small.status("apple, ripe banana"), "present");
  EXPECT_EQ(small.status("apple, banana"), "vague");
  EXPECT_EQ(small.status("apple"), "missing");
}

TEST(Markers, AreNumbersThatCountUp) {
  auto offsets = [](std::string_view text) {
    std::vector<std::uint32_t> out;
    find_markers(text, out);
    return out.size();
  };
  EXPECT_EQ(offsets("1. get it\n2. use it\n3. stop it"), 3U);
  EXPECT_EQ(offsets("(1) get it (2) use it"), 2U);
  EXPECT_EQ(offsets("1 Block here\n2 Put in line"), 2U);
  EXPECT_EQ(offsets("Step 1 - go on\nStep 2 - stop"), 2U);
  EXPECT_EQ(offsets("20 degrees is drawn\n30 degrees too"), 0U);
  EXPECT_EQ(offsets("use 15 and 25"), 0U);
}

// Whatever the text, the work grows as the text does: a guard against loops that never end, not a timing.
TEST(Matcher, AnswersAllSortsOfLongTexts) {
  Small small(one_step(R"("present": ["{measure} ... {length} & {ruler}"], "vague": ["{measure} & {length}"])", kForceTable));
  for (const char* unit : {"measure length ruler ", "measure", "1.5 N ", "it ", "not ", "((((", "1. a ", "\xD7\xA9 ", "a\xCC\x81",
                           "equipment: ruler\n", "no wait ", "\n", "but there isnt time "}) {
    std::string text;
    while (text.size() < 200000) text += unit;
    Review review = small.review(text);
    EXPECT_EQ(review.steps.size(), 1U);
  }
}

}  // namespace
}  // namespace retort
