#include "intake/answer.h"
#include "report/json_writer.h"
#include "report/page.h"
#include "report/review_json.h"
#include "report/review_text.h"
#include "rubric/json.h"

#include "../support.h"

namespace retort {
namespace {

std::string as_json(std::string_view text) {
  std::string out;
  JsonWriter(out).text(text);
  return out;
}

TEST(JsonWriter, EscapesAndMendsText) {
  struct {
    std::string in, out;
  } rows[] = {{"plain", "\"plain\""}, {"q\"b\\", R"("q\"b\\")"}, {"a\nb\tc", R"("a\nb\tc")"}, {std::string("\x01\0", 2), R"("\u0001\u0000")"},
              {"\xC3\xA9\xF0\x9F\x98\x80", "\"\xC3\xA9\xF0\x9F\x98\x80\""}, {"a\xFF" "b", "\"a\xEF\xBF\xBD" "b\""}, {"\xED\xA0\x80", "\"\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD\""}};
  for (const auto& row : rows) EXPECT_EQ(as_json(row.in), row.out);
}

TEST(JsonWriter, PutsCommasWhereTheyBelong) {
  std::string out;
  JsonWriter json(out);
  json.begin_object().key("a").begin_array().number(1).number(-2).begin_object().end_object().end_array().key("b").boolean(true).end_object();
  EXPECT_EQ(out, R"({"a":[1,-2,{}],"b":true})");
}

TEST(Page, WrapsAtWordsAndMarksUnderThem) {
  std::string out;
  append_marked("hang the spring up and read it", {{{0, 15}, "1", '-'}, {{9, 18}, "2?", '~'}}, 20, "  ", out);
  EXPECT_EQ(out, "  hang the spring up\n  1--------------\n           2?~~~~~~~\n  and read it\n");
}

TEST(Page, LeavesOutControlCharacters) {
  std::string out;
  append_marked("a\x1b[2Jb\x07 c", {}, 40, "", out);
  EXPECT_EQ(out, "a[2Jb c\n");
}

TEST(Page, ALongWordIsCut) {
  std::string out;
  append_wrapped(std::string(30, 'x'), 20, "", "", out);
  EXPECT_EQ(out, std::string(20, 'x') + "\n" + std::string(10, 'x') + "\n");
}

TEST(ReviewJson, IsValidAndKeepsThePromise) {
  test::Small small(test::one_step(R"("present": ["ruler"], "vague": ["stick"], "lacks": "which stick")"));
  Answer answer;
  std::string line = R"({"id": "a7", "text": "use a \"ruler\" \u00e9", "group": "9B", "mark": 3, "colour": {"x": [1, 2]}})";
  Findings findings;
  ASSERT_TRUE(read_answer_line(line, "f", 1, answer, findings));
  std::string out;
  append_review_json(small.checker->rubric(), answer, small.review(answer.text), out);
  Result<json::Value> value = json::parse(out, "out", findings);
  ASSERT_TRUE(value.ok()) << out;
  EXPECT_TRUE(findings.empty());
  EXPECT_EQ(value->find("format")->integer, 1);
  EXPECT_EQ(value->find("id")->text, "a7");
  EXPECT_EQ(value->find("rubric")->text, "small");
  EXPECT_EQ(value->find("group")->text, "9B");
  EXPECT_EQ(value->find("mark")->integer, 3);
  EXPECT_EQ(value->find("extra")->find("colour")->find("x")->items[1].integer, 2);
  const json::Value& step = value->find("steps")->items[0];
  EXPECT_EQ(step.find("id")->text, "s");
  EXPECT_EQ(step.find("facet")->text, "set-up");
  EXPECT_EQ(step.find("status")->text, "present");
  const json::Value& evidence = step.find("evidence")->items[0];
  EXPECT_EQ(evidence.find("text")->text, "ruler");
  EXPECT_EQ(answer.text.substr(static_cast<std::size_t>(evidence.find("start")->integer), 5), "ruler");
  EXPECT_EQ(value->find("level")->find("of")->integer, 6);
}

TEST(ReviewText, FitsItsColumns) {
  const RubricFolder& folder = test::shipped();
  Checker::Made made = Checker::make("spring-extension.json", folder.files, folder.real_words);
  ASSERT_NE(made.checker, nullptr);
  Answer answer;
  answer.id = "x";
  answer.text = test::read_all(test::source_path("corpus/demo/spring-extension/draft-01.txt"));
  for (std::size_t width : {40U, 80U, 100U}) {
    std::string out = review_text_heading(made.checker->rubric(), width);
    append_review_text(made.checker->rubric(), answer, Reviewer(*made.checker).review(answer.text), width, out);
    out += review_text_closing(made.checker->rubric(), width);
    std::string_view rest = out;
    while (!rest.empty()) {
      std::size_t end = rest.find('\n');
      EXPECT_LE(columns(rest.substr(0, end)), width) << rest.substr(0, end);
      rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
    }
  }
}

}  // namespace
}  // namespace retort
