// ICU as we set it up, against Unicode's own test files: WordBreakTest.txt and SentenceBreakTest.txt of
// Unicode 15.0 (UAX #29), as Debian's package unicode-data carries them.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "text/reader.h"

namespace retort {
namespace {

constexpr const char* kFolder = "/usr/share/unicode/auxiliary/";

void append_utf8(std::uint32_t c, std::string& out) {
  auto put = [&](std::uint32_t byte) { out += static_cast<char>(byte); };
  if (c < 0x80) {
    put(c);
  } else if (c < 0x800) {
    put(0xC0 | (c >> 6U)), put(0x80 | (c & 0x3FU));
  } else if (c < 0x10000) {
    put(0xE0 | (c >> 12U)), put(0x80 | ((c >> 6U) & 0x3FU)), put(0x80 | (c & 0x3FU));
  } else {
    put(0xF0 | (c >> 18U)), put(0x80 | ((c >> 12U) & 0x3FU)), put(0x80 | ((c >> 6U) & 0x3FU)), put(0x80 | (c & 0x3FU));
  }
}

struct Case {
  std::string text;
  std::vector<std::uint32_t> boundaries;
};

// "÷ 0001 × 0308 ÷ # ...": ÷ a boundary, × none.
bool read_case(const std::string& line, Case& out) {
  std::istringstream in(line.substr(0, line.find('#')));
  std::string item;
  while (in >> item) {
    if (item == "\xC3\xB7") {
      out.boundaries.push_back(static_cast<std::uint32_t>(out.text.size()));
    } else if (item != "\xC3\x97") {
      append_utf8(static_cast<std::uint32_t>(std::stoul(item, nullptr, 16)), out.text);
    }
  }
  return !out.text.empty();
}

// CLDR, whose rules ICU follows, no longer joins letters by a colon (root word break, CLDR 42); Unicode's
// file still does. Our text wants CLDR's way: "control:volume" is two words.
bool by_colon(const std::string& line) { return line.find(" 003A ") != std::string::npos; }

void check(const std::string& file, std::vector<std::uint32_t> (*boundaries)(std::string_view), std::size_t least) {
  std::ifstream in(kFolder + file);
  ASSERT_TRUE(in.good()) << "install Debian's package unicode-data";
  std::size_t cases = 0;
  for (std::string line; std::getline(in, line);) {
    Case test;
    if (by_colon(line) || !read_case(line, test)) continue;
    ++cases;
    EXPECT_EQ(boundaries(test.text), test.boundaries) << line;
  }
  EXPECT_GT(cases, least);
}

TEST(Unicode, WordBreaksAreThoseOfUax29) { check("WordBreakTest.txt", word_boundaries, 1400); }
TEST(Unicode, SentenceBreaksAreThoseOfUax29) { check("SentenceBreakTest.txt", sentence_boundaries, 500); }

}  // namespace
}  // namespace retort
