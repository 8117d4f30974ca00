#include "base/messages.h"

#include <gtest/gtest.h>

#include <set>

namespace retort {
namespace {

TEST(Messages, EveryCodeHasWordsAndANameOfItsOwn) {
  std::set<std::string_view> names;
  // The last code declared; a new one at the end makes this fail until the table has it.
  std::size_t codes = static_cast<std::size_t>(Code::concern_label_twice) + 1;
  EXPECT_EQ(message_count(), codes);
  for (std::size_t i = 0; i < codes; ++i) {
    const Message& entry = message(static_cast<Code>(i));
    EXPECT_EQ(entry.code, static_cast<Code>(i));
    EXPECT_FALSE(entry.what.empty());
    EXPECT_TRUE(names.insert(entry.name).second) << entry.name;
    if (entry.severity == Severity::error && entry.code != Code::output_closed) {
      EXPECT_FALSE(entry.todo.empty()) << entry.name << " must say what to do";
    }
  }
}

struct LocateRow {
  const char* name;
  const char* source;
  std::size_t offset;
  std::size_t line, column;
};

TEST(Messages, LinesAndColumnsCountCodePoints) {
  const LocateRow rows[] = {
      {"start", "abc", 0, 1, 1},
      {"second line", "ab\ncd", 3, 2, 1},
      {"after two-byte letters", "\xC3\xA9\xC3\xA9x", 4, 1, 3},
      {"past the end", "ab", 99, 1, 3},
      {"at the line end", "ab\ncd", 2, 1, 3},
  };
  for (const LocateRow& row : rows) {
    LineColumn at = locate(row.source, row.offset);
    EXPECT_EQ(at.line, row.line) << row.name;
    EXPECT_EQ(at.column, row.column) << row.name;
  }
}

TEST(Messages, FillsSlotsAndKeepsOtherBraces) {
  EXPECT_EQ(fill("a {0} b {1}", {"x", "y"}), "a x b y");
  EXPECT_EQ(fill("{name} {0} {2}", {"x"}), "{name} x ");
  EXPECT_EQ(fill("'{{0}}'", {"length"}), "'{length}'");
}

TEST(Messages, DescribeNamesFilePlaceFaultAndRemedy) {
  Finding finding = make_finding(Code::json_duplicate_key, "r.json", Span{4, 8}, {"id"});
  EXPECT_EQ(describe(finding, "{\n  \"id\""),
            "r.json:2:3: error: the key 'id' stands twice in the same object; to put it right: keep one of the two");
}

TEST(Messages, PrintableHasNoControlCharactersAndCutsAtACodePoint) {
  EXPECT_EQ(printable("a\x1b[31m\nb"), "a?[31m?b");
  EXPECT_EQ(printable("\xC3\xA9\xC3\xA9\xC3\xA9", 3), "\xC3\xA9...");
}

}  // namespace
}  // namespace retort
