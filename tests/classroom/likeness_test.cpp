// Drafts that share their wording, against a plain count of all pairs; and in good time.
#include "classroom/likeness.h"

#include <random>
#include <set>

#include "../support.h"

namespace retort::classroom {
namespace {

// Words "w0 w1 ...", so that runs can be counted by hand.
std::string text_of(const std::vector<int>& words) {
  std::string out;
  for (int word : words) out += "w" + std::to_string(word) + " ";
  return out;
}

std::vector<int> count_up(int from, int to) {
  std::vector<int> out;
  for (int i = from; i < to; ++i) out.push_back(i);
  return out;
}

// Resemblance by its definition, over sets of five words (Broder 1997).
double resemblance(const std::vector<int>& a, const std::vector<int>& b) {
  auto runs = [](const std::vector<int>& words) {
    std::set<std::vector<int>> out;
    for (std::size_t i = 0; i + kRunOfWords <= words.size(); ++i)
      out.insert({words.begin() + static_cast<std::ptrdiff_t>(i), words.begin() + static_cast<std::ptrdiff_t>(i + kRunOfWords)});
    return out;
  };
  std::set<std::vector<int>> x = runs(a);
  std::set<std::vector<int>> y = runs(b);
  std::size_t shared = 0;
  for (const auto& run : x) shared += y.count(run);
  return static_cast<double>(shared) / static_cast<double>(x.size() + y.size() - shared);
}

TEST(Likeness, IsTheResemblanceOfRunsOfFiveWords) {
  std::vector<int> whole = count_up(0, 44);  // 40 runs
  struct Row {
    const char* name;
    std::vector<int> other;
    bool alike;
  };
  const Row rows[] = {{"the same", whole, true},
                      {"two thirds", count_up(0, 32), true},
                      {"a little over half", count_up(0, 25), true},
                      {"a little under half", count_up(0, 23), false},
                      {"nothing", count_up(100, 144), false}};
  for (const Row& row : rows) {
    std::string a = text_of(whole);
    std::string b = text_of(row.other);
    std::vector<Alike> found = near_copies({a, b}, "");
    EXPECT_EQ(found.size(), row.alike ? 1U : 0U) << row.name;
    EXPECT_EQ(resemblance(whole, row.other) >= kNearCopy, row.alike) << row.name;
    if (!found.empty()) {
      EXPECT_DOUBLE_EQ(found[0].least, resemblance(whole, row.other)) << row.name;
    }
  }
}

TEST(Likeness, WhatTheQuestionHasDoesNotCount) {
  std::string same = text_of(count_up(0, 44));
  EXPECT_EQ(near_copies({same, same}, "").size(), 1U);
  EXPECT_EQ(near_copies({same, same}, same).size(), 0U);
}

TEST(Likeness, AChainIsOneSet) {
  std::string a = text_of(count_up(0, 40));
  std::string b = text_of(count_up(8, 48));
  std::string c = text_of(count_up(16, 56));
  std::vector<Alike> found = near_copies({a, "something else", c, b}, "");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].drafts, (std::vector<std::size_t>{0, 2, 3}));
}

TEST(Likeness, ThreeHundredDraftsInGoodTime) {
  std::mt19937 random(7);
  std::vector<std::string> texts;
  for (int i = 0; i < 300; ++i) {
    std::vector<int> words;
    for (int k = 0; k < 200; ++k) words.push_back(static_cast<int>(random() % 500));
    texts.push_back(text_of(words));
  }
  texts[299] = texts[4];
  std::vector<std::string_view> views(texts.begin(), texts.end());
  std::vector<Alike> found = near_copies(views, "");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].drafts, (std::vector<std::size_t>{4, 299}));
  std::vector<std::string_view> all_alike(300, texts[0]);
  found = near_copies(all_alike, "");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].drafts.size(), 300U);
}

}  // namespace
}  // namespace retort::classroom
