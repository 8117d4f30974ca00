// A teacher's changes, made in a rubric's own text.
#include "rubric/rubric_edits.h"

#include <gtest/gtest.h>

namespace retort {
namespace {

constexpr const char* kSource = R"({
 "question": "Old?",
 "given": {"values": {"quantity": "force", "list": ["1 N", "2 N"]}},
 "steps": [
  {"id": "a", "title": "A", "hint": "What?",
   "present": ["one"
   ]},
  {"id": "b", "title": "B", "vague": []}
 ]
})";

struct Row {
  const char* name;
  const char* edits;
  const char* before;  // in kSource
  const char* after;   // instead
};

TEST(RubricEdits, ChangeOnlyWhatIsMeant) {
  const Row rows[] = {
      {"nothing", "{}", "Old?", "Old?"},
      {"the question", R"({"question":"New \"?\""})", "\"Old?\"", R"("New \"?\"")"},
      {"the values", R"({"values":["3 N"," "]})", R"(["1 N", "2 N"])", R"(["3 N"])"},
      {"a hypothesis that was not there", R"({"hypothesis":"h"})", R"(["1 N", "2 N"]}})", R"(["1 N", "2 N"]}, "hypothesis": "h"})"},
      {"a title", R"({"steps":{"b":{"title":"Bé"}}})", "\"B\"", "\"Bé\""},
      {"a hint that was not there", R"({"steps":{"b":{"hint":"Why?"}}})", R"("vague": []})", R"("vague": [], "hint": "Why?"})"},
      {"a phrase more", R"({"steps":{"a":{"present":["two"]}}})", "[\"one\"\n", "[\"one\", \"two\"\n"},
      {"a phrase in an empty list", R"({"steps":{"b":{"vague":["x","y"]}}})", "\"vague\": []", R"("vague": ["x", "y"])"},
      {"a list that was not there", R"({"steps":{"b":{"present":["x"]}}})", "\"vague\": []", R"("vague": [], "present": ["x"])"},
  };
  for (const Row& row : rows) {
    Findings findings;
    Result<json::Value> value = json::parse(row.edits, "edits", findings);
    ASSERT_TRUE(value) << row.name;
    Result<std::string> out = edited_rubric(kSource, "r.json", read_edits(*value, findings));
    EXPECT_TRUE(findings.empty()) << row.name;
    ASSERT_TRUE(out) << row.name;
    std::string expected = kSource;
    expected.replace(expected.find(row.before), std::string(row.before).size(), row.after);
    EXPECT_EQ(*out, expected) << row.name;
    EXPECT_TRUE(json::parse(*out, "r.json", findings)) << row.name;
  }
}

TEST(RubricEdits, FaultsAreSaid) {
  const struct {
    const char* name;
    const char* edits;
    std::size_t findings;
    bool made;
  } rows[] = {
      {"no object", "5", 1, true},
      {"a number for text", R"({"question":5})", 1, true},
      {"a number in a list", R"({"values":["1 N",2]})", 1, true},
      {"steps as a list", R"({"steps":[]})", 1, true},
      {"a step as text", R"({"steps":{"a":"x"}})", 1, true},
      {"an unknown step", R"({"steps":{"z":{"title":"x"}}})", 0, false},
  };
  for (const auto& row : rows) {
    Findings findings;
    Result<json::Value> value = json::parse(row.edits, "edits", findings);
    ASSERT_TRUE(value) << row.name;
    Result<std::string> out = edited_rubric(kSource, "r.json", read_edits(*value, findings));
    EXPECT_EQ(findings.size(), row.findings) << row.name;
    EXPECT_EQ(out.ok(), row.made) << row.name;
  }
  EXPECT_FALSE(edited_rubric("{", "r.json", {}));
  EXPECT_FALSE(edited_rubric("[]", "r.json", {}));
}

}  // namespace
}  // namespace retort
