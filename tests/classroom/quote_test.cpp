// Quotes: short, and naming nobody.
#include "classroom/quote.h"

#include "../support.h"
#include "classroom/anonymity.h"

namespace retort::classroom {
namespace {

TEST(Quote, IsTheSentenceAroundTheEvidence) {
  struct Row {
    const char* name;
    std::string text;
    const char* evidence;
    std::string quote;
  };
  const std::string kLong(300, 'x');
  const Row rows[] = {
      {"a sentence", "First this. Then add some weights on. Last that.", "add some weights", "Then add some weights on."},
      {"a decimal point is no end", "Hang 1.5 N on it and look.", "look", "Hang 1.5 N on it and look."},
      {"a line with a mark", "- clamp it\n- add load\n- read", "load", "add load"},
      {"a numbered line", "1. Clamp it\n2. Add load", "load", "Add load"},
      {"the whole text", "add load", "add load", "add load"},
      {"a long sentence", kLong + " add load " + kLong, "add load", "add load"},
      {"long evidence is cut", kLong, kLong.c_str(), std::string(kLongestQuote, 'x') + "..."},
      {"lines within", "so add\n  load.", "add\n  load", "so add load."},
  };
  for (const Row& row : rows) {
    std::size_t at = row.text.find(row.evidence);
    ASSERT_NE(at, std::string::npos) << row.name;
    Span span{static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at + std::string_view(row.evidence).size())};
    EXPECT_EQ(quote(row.text, {span}), row.quote) << row.name;
  }
  EXPECT_EQ(quote("nothing", {}), "");
}

TEST(Quote, IsCutAtTheBorderOfALetter) {
  EXPECT_EQ(one_line("\xC3\xA9\xC3\xA9\xC3\xA9", 3), "\xC3\xA9...");
}

TEST(Anonymity, NoQuoteHoldsAPartOfALabel) {
  struct Row {
    const char* name;
    std::vector<std::string_view> labels;
    const char* quote;
    bool nobody;
  };
  const Row rows[] = {
      {"no name", {"Amira Khan", "Ben"}, "add some weights", true},
      {"first name", {"Amira Khan", "Ben"}, "I asked amira to hold it", false},
      {"last name", {"Amira Khan", "Ben"}, "KHAN", false},
      {"somebody else's name", {"Amira", "Ben"}, "Ben's ruler", false},
      {"with an s", {"Amira", "Ben"}, "bens ruler", false},
      {"part of a word is no name", {"Ben"}, "bend it", true},
      {"file name", {"amira_khan-9b", "x"}, "by Khan", false},
      {"humps", {"AmiraKhan"}, "by amira", false},
      {"accents in either form", {"Zo\xC3\xAB"}, "zoe\xCC\x88 did it", false},
      {"apostrophe", {"O'Neil"}, "o\xE2\x80\x99neil did it", false},
      {"an initial is no name", {"Amira K"}, "K = F / e", true},
      {"what most labels have is no name", {"draft-1", "draft-2", "draft-3"}, "my first draft", true},
      {"what one label has is", {"draft-1", "draft-2", "may-3"}, "it may move", false},
      {"a short number is no name", {"12", "13"}, "12 cm", true},
      {"a long number is", {"4021", "4022"}, "number 4021", false},
  };
  for (const Row& row : rows) EXPECT_EQ(Anonymity(row.labels).names_nobody(row.quote), row.nobody) << row.name;
}

}  // namespace
}  // namespace retort::classroom
