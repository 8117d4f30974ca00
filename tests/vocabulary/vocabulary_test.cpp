#include "vocabulary/vocabulary.h"

#include "../support.h"

namespace retort {
namespace {

struct DistanceRow {
  const char* name;
  const char* a;
  const char* b;
  int limit, expected;
};

TEST(Spelling, DistanceCountsSwapsOnceAndStopsAtTheLimit) {
  const DistanceRow rows[] = {{"same", "spring", "spring", 2, 0}, {"swap", "wieght", "weight", 2, 1},      {"insert", "lenth", "length", 2, 1},
                              {"replace", "ruler", "rular", 2, 1}, {"over the limit", "mass", "length", 2, 3}, {"empty", "", "ab", 2, 2},
                              {"too long", "a", "abcd", 2, 3}};
  for (const DistanceRow& row : rows) {
    EXPECT_EQ(edit_distance(row.a, row.b, row.limit), row.expected) << row.name;
    EXPECT_EQ(edit_distance(row.b, row.a, row.limit), row.expected) << row.name << " turned round";
  }
}

TEST(Spelling, SoundAlikesShareAKey) {
  const char* pairs[][2] = {{"temperature", "tempreture"}, {"acceleration", "acselaration"}, {"hypothesis", "hipothisis"}, {"weigh", "way"}, {"frequency", "freequancy"}};
  for (const auto& pair : pairs) EXPECT_EQ(sound_key(pair[0]), sound_key(pair[1])) << pair[0];
  EXPECT_NE(sound_key("weight"), sound_key("height"));
}

class Words : public ::testing::Test {
 protected:
  void SetUp() override {
    const char* phrases[] = {"temperature", "weight", "length", "thermometer", "stop watch", "bottom of the spring", "'normal'", "frequency", "trolley"};
    vocabulary.add_skipped("the");
    for (const char* phrase : phrases) vocabulary.add(count++, phrase);
  }
  // Ends the adding; a test may add before.
  void ready() {
    if (!frozen) vocabulary.freeze(RealWords(shipped_words));
    frozen = true;
  }
  std::vector<std::uint32_t> hear(const std::string& text) {
    ready();
    Reader reader;
    Document document = reader.read(text);
    std::vector<Slot> slots;
    std::vector<Sighting> sightings;
    vocabulary.find(document, memo, slots, sightings);
    std::vector<std::uint32_t> out;
    for (const Sighting& s : sightings) out.push_back(s.concept_id);
    return out;
  }
  bool frozen = false;
  std::string_view shipped_words = test::shipped().real_words;
  WordForms forms;
  Vocabulary vocabulary{forms};
  Vocabulary::Memo memo;
  std::uint32_t count = 0;
};

TEST_F(Words, AreFoundInSpiteOfInflectionAndSpelling) {
  struct {
    const char* text;
    std::vector<std::uint32_t> expected;
  } rows[] = {{"temperatures", {0}},   {"tempreture", {0}}, {"wieghts", {1}}, {"lenth", {2}},  {"themomiter", {3}}, {"stop watch stopwatch", {4, 4}},
              {"bottom of spring", {5}}, {"normal", {6}},     {"normally", {}}, {"freequancy", {7}}, {"troly", {8}},    {"height", {}},
              {"wait", {}},           {"bottom. of the spring", {}}};
  for (const auto& row : rows) EXPECT_EQ(hear(row.text), row.expected) << row.text;
}

// A word in 'quotes' in one list does not take it from another (found by an author of rubrics).
TEST_F(Words, QuotedInOneListStayOrdinaryInAnother) {
  vocabulary.add(count, "'weight'");
  EXPECT_EQ(hear("weight"), (std::vector<std::uint32_t>{1, count}));
  EXPECT_EQ(hear("weights"), (std::vector<std::uint32_t>{1}));
}

TEST_F(Words, TheArticleIsPassedOverButASymbolIsNot) {
  vocabulary.add_skipped("a");
  ready();
  Reader reader;
  Document document = reader.read("the a weight a = 3");
  std::vector<Slot> slots;
  std::vector<Sighting> sightings;
  vocabulary.find(document, memo, slots, sightings);
  EXPECT_EQ(slots.size(), 4U);  // weight, a, =, 3
}

TEST(RealWords, ContainsJustItsLines) {
  RealWords words("able\nbat\ncat\nzoo\n");
  for (const char* word : {"able", "bat", "cat", "zoo"}) EXPECT_TRUE(words.contains(word)) << word;
  for (const char* word : {"a", "ba", "zo", "zoos", "", "d"}) EXPECT_FALSE(words.contains(word)) << word;
  EXPECT_FALSE(RealWords().contains("cat"));
}

}  // namespace
}  // namespace retort
