// Spelling tolerance against lists made by others: the misspellings of Debian's package codespell (GPL-2,
// its dictionary CC BY-SA 3.0), and the English words of Debian's package wbritish.
#include <fstream>
#include <iostream>
#include <set>

#include "../support.h"

namespace retort {
namespace {

constexpr const char* kMisspellings = "/usr/lib/python3/dist-packages/codespell_lib/data/dictionary.txt";
constexpr const char* kEnglish = "/usr/share/dict/british-english";

bool letters(std::string_view word) {
  return std::all_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
}

// Whether one list has both words: then it does not matter which of them is heard.
bool share_a_list(const Vocabulary& vocabulary, WordId a, WordId b) {
  for (ConceptId one : vocabulary.concepts_of(a)) {
    for (ConceptId two : vocabulary.concepts_of(b)) {
      if (one == two) return true;
    }
  }
  return false;
}

struct Ready {
  Ready() {
    const RubricFolder& folder = test::shipped();
    checker = Checker::make("spring-extension.json", folder.files, folder.real_words).checker;
  }
  const Vocabulary& vocabulary() const { return checker->program().vocabulary; }
  std::unique_ptr<Checker> checker;
  Vocabulary::Memo memo;
};

TEST(Spelling, MostRealMisspellingsOfOurWordsAreResolved) {
  Ready ready;
  ASSERT_NE(ready.checker, nullptr);
  std::set<std::string> surface;
  for (const auto& candidate : ready.vocabulary().speller().candidates()) surface.insert(candidate.word);
  std::ifstream in(kMisspellings);
  ASSERT_TRUE(in.good()) << "install Debian's package codespell";
  std::size_t tried = 0;
  std::size_t resolved = 0;
  std::size_t wrong = 0;
  for (std::string line; std::getline(in, line);) {
    std::size_t arrow = line.find("->");
    if (arrow == std::string::npos || line.find(',') != std::string::npos) continue;  // several corrections
    std::string bad = line.substr(0, arrow);
    std::string good = line.substr(arrow + 2);
    if (!letters(bad) || !letters(good) || !surface.contains(good) || surface.contains(bad) || bad.size() < 4) continue;
    WordId wanted = ready.vocabulary().resolve(good, ready.memo).word;
    Vocabulary::Memo::Known heard = ready.vocabulary().resolve(bad, ready.memo);
    WordId got = heard.also == wanted ? wanted : heard.word;
    if (std::getenv("SHOW") && got != wanted) std::cout << bad << " " << good << " -> " << (got < ready.vocabulary().word_count() ? ready.vocabulary().wording(got) : "-") << "\n";
    ++tried;
    resolved += got == wanted ? 1U : 0U;
    wrong += got != wanted && got != kNoWord && !share_a_list(ready.vocabulary(), got, wanted) ? 1U : 0U;
  }
  double share = static_cast<double>(resolved) / static_cast<double>(tried);
  std::cout << tried << " misspellings of our words: " << resolved << " resolved (" << share << "), " << wrong << " taken for another word\n";
  EXPECT_GT(tried, 500U);
  EXPECT_GT(share, 0.88);
  EXPECT_LT(static_cast<double>(wrong) / static_cast<double>(tried), 0.03);
}

// A real word is heard as itself or an inflection of itself (same stem), never as a neighbour in spelling.
TEST(Spelling, NoEnglishWordIsTurnedIntoAnother) {
  Ready ready;
  ASSERT_NE(ready.checker, nullptr);
  std::ifstream in(kEnglish);
  ASSERT_TRUE(in.good()) << "install Debian's package wbritish";
  Stemmer stemmer;
  std::size_t words = 0;
  for (std::string word; std::getline(in, word);) {
    if (!letters(word) || word.size() < 4) continue;
    ++words;
    WordId got = ready.vocabulary().resolve(word, ready.memo).word;
    if (got >= ready.vocabulary().word_count()) continue;  // not heard
    std::string_view heard = ready.vocabulary().wording(got);
    std::string stem(stemmer.stem(word));
    EXPECT_EQ(stem, stemmer.stem(heard)) << word << " is heard as " << heard;
  }
  EXPECT_GT(words, 60000U);
}

}  // namespace
}  // namespace retort
