#include "text/reader.h"

#include "../support.h"

namespace retort {
namespace {

// Tokens as "word", with what stands before them: ',' comma, ';' clause, '.' sentence, '/' line, '|' paragraph.
std::string shape(const std::string& text) {
  Reader reader;
  Document document = reader.read(text);
  std::string out;
  for (const Token& token : document.tokens) {
    if (!out.empty()) out += ' ';
    switch (token.before) {
      case Break::none: break;
      case Break::comma: out += ", "; break;
      case Break::clause: out += "; "; break;
      case Break::sentence: out += ". "; break;
      case Break::line: out += "/ "; break;
      case Break::paragraph: out += "| "; break;
    }
    out += document.form(token);
  }
  return out;
}

struct ShapeRow {
  const char* name;
  const char* text;
  const char* expected;
};

class Shape : public ::testing::TestWithParam<ShapeRow> {};

TEST_P(Shape, IsAsExpected) { EXPECT_EQ(shape(GetParam().text), GetParam().expected); }

INSTANTIATE_TEST_SUITE_P(
    Reader, Shape,
    ::testing::Values(
        ShapeRow{"plain", "Hang the spring", "hang the spring"},
        ShapeRow{"apostrophes go", "don't, it\xE2\x80\x99s", "dont , its"},
        ShapeRow{"unit glued to number", "add 1.5N or 100g", "add 1.5 n or 100 g"},
        ShapeRow{"small letter after a full stop", "hang it up. then read it", "hang it up . then read it"},
        ShapeRow{"no space after a full stop", "add weights.Then read", "add weights . then read"},
        ShapeRow{"short form", "approx. 20 cm e.g. here", "approx 20 cm eg here"},
        ShapeRow{"decimal comma", "0,15 m and 1,5 N", "0,15 m and 1,5 n"},
        ShapeRow{"list without spaces", "15,25,35,45,55", "15 , 25 , 35 , 45 , 55"},
        ShapeRow{"two of a list without space", "30,40", "30 , 40"},
        ShapeRow{"thousands", "1,000 g", "1,000 g"},
        ShapeRow{"superscripts", "200 cm\xC2\xB3 at v\xC2\xB2", "200 cm3 at v2"},
        ShapeRow{"names with digits", "t1 cm3 L0 x3", "t1 cm3 l0 x 3"},
        ShapeRow{"ordinals", "1st 2nd 20th", "1st 2nd 20th"},
        ShapeRow{"bullets and lines", "- add 100 g\n- read it\n\nThen stop", "add 100 g / read it | then stop"},
        ShapeRow{"windows line ends are one", "a b\r\nc", "a b / c"},
        ShapeRow{"symbols", "v = f\xCE\xBB, \xC3\xB7 10", "v = f\xCE\xBB , \xC3\xB7 10"},
        ShapeRow{"dash between clauses", "stand - clamp - spring", "stand ; clamp ; spring"},
        ShapeRow{"hyphen in a word", "stop-clock 10-50", "stop clock 10 50"},
        ShapeRow{"brackets", "read it (at eye level) again", "read it , at eye level , again"},
        ShapeRow{"empty", "", ""},
        ShapeRow{"only marks", "?! ... --", ""},
        ShapeRow{"right to left", "\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D 5", "\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D 5"},
        ShapeRow{"combining marks compose", "cafe\xCC\x81", "caf\xC3\xA9"}),
    test::row_name<ShapeRow>);

TEST(Reader, SpansGiveBackTheSource) {
  std::string text = "Put 1.5N on \xE2\x80\x93 don\xE2\x80\x99t drop it. \xCE\xA9 then cm\xC2\xB3";
  Reader reader;
  Document document = reader.read(text);
  std::vector<std::string> raw;
  for (const Token& token : document.tokens) raw.emplace_back(document.raw(token));
  EXPECT_EQ(raw, (std::vector<std::string>{"Put", "1.5", "N", "on", "don\xE2\x80\x99t", "drop", "it", "\xCE\xA9", "then", "cm\xC2\xB3"}));
}

TEST(Reader, CountsBadBytesAndGoesOn) {
  Reader reader;
  std::string text = std::string("read \xFF\xFE the ") + '\0' + " ruler\xC3";
  Document document = reader.read(text);
  EXPECT_EQ(document.invalid_bytes, 3U);
  EXPECT_EQ(document.nul_bytes, 1U);
  std::vector<std::string> forms;
  for (const Token& token : document.tokens) {
    EXPECT_LE(token.source.end, text.size());
    forms.emplace_back(document.form(token));
  }
  EXPECT_EQ(forms.front(), "read");
  EXPECT_NE(std::find(forms.begin(), forms.end(), "ruler"), forms.end());
}

// Spans are in order, do not overlap and lie within the text, whatever the bytes.
TEST(Reader, SpansHoldForAllPairsOfOddBytes) {
  const std::string odd[] = {"a", "1", ".", ",", "\xCC\x81", "\xE2\x80\x99", "\xFF", "\xF0\x9F\x98\x80", "\n", " ", "\xC2\xB2", "-", std::string(1, '\0'), "'"};
  Reader reader;
  for (const auto& a : odd) {
    for (const auto& b : odd) {
      for (const auto& c : odd) {
        std::string text = a + b + c + a;
        Document document = reader.read(text);
        std::uint32_t end = 0;
        for (const Token& token : document.tokens) {
          EXPECT_GE(token.source.begin, end);
          EXPECT_GT(token.source.end, token.source.begin);
          EXPECT_LE(token.source.end, text.size());
          end = token.source.end;
        }
      }
    }
  }
}

}  // namespace
}  // namespace retort
