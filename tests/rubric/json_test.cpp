#include "rubric/json.h"

#include "../support.h"

namespace retort::json {
namespace {

TEST(Json, ValuesKnowTheirPlace) {
  std::string source = "{ \"a\": [1, \"x\\\"y\", true],\n \"b\" : {\"c\": -2.5} }";
  Findings findings;
  Result<Value> root = parse(source, "f", findings);
  ASSERT_TRUE(root.ok());
  EXPECT_TRUE(findings.empty());
  const Value& a = *root->find("a");
  EXPECT_EQ(a.span.of(source), "[1, \"x\\\"y\", true]");
  EXPECT_EQ(a.items[0].span.of(source), "1");
  EXPECT_EQ(a.items[1].span.of(source), "\"x\\\"y\"");
  EXPECT_EQ(a.items[1].text, "x\"y");
  EXPECT_EQ(a.items[2].span.of(source), "true");
  EXPECT_EQ(root->find("b")->find("c")->span.of(source), "-2.5");
  EXPECT_EQ(root->members[1].key_span.of(source), "\"b\"");
}

struct FaultRow {
  const char* name;
  std::string source;
  Code code;
};

TEST(Json, FaultsAreFindings) {
  const FaultRow rows[] = {
      {"repeated key", R"({"a": 1, "a": 2})", Code::json_duplicate_key},
      {"unclosed", R"({"a": [1, 2)", Code::json_syntax},
      {"trailing comma", R"({"a": 1,})", Code::json_syntax},
      {"text after the end", R"({"a": 1} x)", Code::json_syntax},
      {"empty", "", Code::json_syntax},
      {"deep", std::string(100000, '['), Code::json_too_deep},
      {"deep objects", [] { std::string s; for (int i = 0; i < 100000; ++i) s += "{\"a\":"; return s; }(), Code::json_too_deep},
      {"bad UTF-8", "{\"a\": \"\xFF\"}", Code::json_syntax},
      {"a NUL", std::string("{\"a\": \0}", 8), Code::json_syntax},
  };
  for (const FaultRow& row : rows) {
    Findings findings;
    Result<Value> root = parse(row.source, "f", findings);
    if (!root) findings.push_back(root.finding());
    ASSERT_FALSE(findings.empty()) << row.name;
    EXPECT_EQ(findings[0].code, row.code) << row.name;
  }
}

TEST(Json, PassesOverAByteOrderMark) {
  Findings findings;
  Result<Value> root = parse("\xEF\xBB\xBF{\"a\": 7}", "f", findings);
  ASSERT_TRUE(root.ok());
  EXPECT_EQ(root->find("a")->integer, 7);
}

}  // namespace
}  // namespace retort::json
