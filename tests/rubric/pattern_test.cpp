#include "rubric/pattern.h"

#include "../support.h"

namespace retort {
namespace {

// A pattern in full: phrases in quotes, lists in braces, gaps as numbers.
std::string full(const Pattern& pattern) {
  std::string out;
  for (const Sequence& part : pattern.parts) {
    if (!out.empty()) out += " & ";
    bool first = true;
    for (const Item& item : part.items) {
      if (!first) out += " " + std::to_string(item.gap) + " ";
      first = false;
      if (item.kind == Item::Kind::phrase) out += "'" + item.text + "'";
      if (item.kind == Item::Kind::list) out += "{" + item.text + "}";
      if (item.kind == Item::Kind::group) {
        out += "(";
        for (const Pattern& choice : item.any) out += (out.back() == '(' ? "" : "|") + full(choice);
        out += ")";
      }
    }
  }
  return out;
}

struct Row {
  const char* name;
  const char* text;
  const char* expected;
};

class Parsed : public ::testing::TestWithParam<Row> {};
TEST_P(Parsed, IsAsExpected) {
  Findings findings;
  EXPECT_EQ(full(parse_pattern(GetParam().text, {}, "f", findings)), GetParam().expected);
  EXPECT_TRUE(findings.empty());
}

INSTANTIATE_TEST_SUITE_P(Pattern, Parsed,
                         ::testing::Values(Row{"words side by side", "stop clock", "'stop clock'"}, Row{"lists", "{measure} {length}", "{measure} 4 {length}"},
                                           Row{"far", "{measure} ... {length}", "{measure} 14 {length}"}, Row{"next", "{not} + move", "{not} 0 'move'"},
                                           Row{"near", "{ruler} & {length}", "{ruler} & {length}"}, Row{"group", "(a | b c | {d}) e", "('a'|'b c'|{d}) 4 'e'"},
                                           Row{"nested", "((a|b) {c}|d)", "(('a'|'b') 4 {c}|'d')"}, Row{"words then far", "read ... again", "'read' 14 'again'"}),
                         test::row_name<Row>);

TEST(Pattern, FaultsSayWhereAndWhat) {
  struct {
    const char* text;
    std::size_t column;  // from the opening quote
  } rows[] = {{"{length", 8}, {"(a | b", 7}, {"a )", 3}, {"... a", 1}, {"a ...", 6}, {"& a", 1}, {"a &", 4}, {"(a | )", 6}, {"a }", 3}, {"+ a", 1}};
  for (const auto& row : rows) {
    Findings findings;
    parse_pattern(row.text, {0, 40}, "f", findings);
    ASSERT_EQ(findings.size(), 1U) << row.text;
    EXPECT_EQ(findings[0].code, Code::pattern_syntax) << row.text;
  }
  Findings findings;
  parse_pattern("  ", {}, "f", findings);
  EXPECT_EQ(findings.at(0).code, Code::pattern_empty);
  findings.clear();
  parse_pattern(std::string(50, '('), {}, "f", findings);
  EXPECT_EQ(findings.at(0).code, Code::pattern_syntax);
}

}  // namespace
}  // namespace retort
