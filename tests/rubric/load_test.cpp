#include "rubric/load.h"

#include "../support.h"
#include "base/messages.h"
#include "proof/lint.h"

namespace retort {
namespace {

using test::one_step;

std::vector<std::string> codes(const std::string& json) {
  SourceFiles files = test::shipped().files;
  files["small.json"] = json;
  std::vector<std::string> out;
  for (const Finding& f : lint("small.json", files, test::shipped().real_words).findings) {
    if (f.file == "small.json" || f.file.empty()) out.emplace_back(message(f.code).name);
  }
  return out;
}

bool has(const std::vector<std::string>& all, const std::string& one) { return std::find(all.begin(), all.end(), one) != all.end(); }

struct Row {
  const char* name;
  std::string json;
  const char* code;
};

class Fault : public ::testing::TestWithParam<Row> {};
TEST_P(Fault, IsReported) {
  std::vector<std::string> got = codes(GetParam().json);
  EXPECT_TRUE(has(got, GetParam().code)) << ::testing::PrintToString(got);
}

INSTANTIATE_TEST_SUITE_P(
    Rubric, Fault,
    ::testing::Values(
        Row{"unknown key", one_step(R"~("present": ["x"], "presnt": [])~"), "key-unknown"},
        Row{"repeated key", one_step(R"~("present": ["x"], "present": ["y"])~"), "json-duplicate-key"},
        Row{"unknown list", one_step(R"~("present": ["{lenghth}"])~"), "concept-unknown"},
        Row{"unknown list in unless", one_step(R"~("present": [{"say": "x", "unless": ["{nolist}"]}])~"), "concept-unknown"},
        Row{"never: only skipped words", one_step(R"~("present": ["the"])~"), "pattern-never"},
        Row{"never: unless takes all", one_step(R"~("present": [{"say": "ruler", "unless": ["ruler"]}])~"), "pattern-never"},
        Row{"too wide", one_step(R"~("present": ["and"])~"), "pattern-too-wide"},
        Row{"too wide through a group", one_step(R"~("present": ["(ruler | then)"])~"), "pattern-too-wide"},
        Row{"too wide through a list", one_step(R"~("present": ["{w}"])~", R"~(, "words": {"w": ["ruler", "and"]})~"), "pattern-too-wide"},
        Row{"example fails", one_step(R"~("present": ["ruler"], "examples": {"present": ["use a stick"]})~"), "example-fails"},
        Row{"example should be missing", one_step(R"~("present": ["ruler"], "examples": {"missing": ["use a ruler"]})~"), "example-fails"},
        Row{"no pattern", one_step(R"~("vague": ["ruler"])~"), "step-no-pattern"},
        Row{"no hint", R"~({"format":1,"id":"small","title":"t","question":"q","steps":[{"id":"s","title":"s","facet":"safety","present":["x"]}]})~", "step-no-hint"},
        Row{"hint gives the answer", R"~({"format":1,"id":"small","title":"t","question":"q","steps":[{"id":"s","title":"s","facet":"safety","present":["ruler"],"hint":"a ruler?"}]})~", "hint-gives-answer"},
        Row{"bad facet", R"~({"format":1,"id":"small","title":"t","question":"q","steps":[{"id":"s","title":"s","facet":"sfety","present":["x"],"hint":"?"}]})~", "value-not-allowed"},
        Row{"bad id", R"~({"format":1,"id":"Small One","title":"t","question":"q","steps":[]})~", "id-bad"},
        Row{"repeated pattern", one_step(R"~("present": ["ruler", "ruler"])~"), "pattern-repeated"},
        Row{"list of itself", one_step(R"~("present": ["{w}"])~", R"~(, "words": {"w": ["{w} x"]})~"), "concept-cycle"},
        Row{"lists of each other", one_step(R"~("present": ["{w}"])~", R"~(, "words": {"w": ["{v} x"], "v": ["{w} y"]})~"), "concept-cycle"},
        Row{"empty list", one_step(R"~("present": ["{w} z"])~", R"~(, "words": {"w": []})~"), "concept-empty"},
        Row{"repeated word", one_step(R"~("present": ["{w}"])~", R"~(, "words": {"w": ["x", "x"]})~"), "concept-repeated-word"},
        Row{"includes itself", one_step(R"~("present": ["x"])~", R"~(, "include": ["small.json"])~"), "include-cycle"},
        Row{"includes what is not there", one_step(R"~("present": ["x"])~", R"~(, "include": ["nothing.json"])~"), "include-missing"},
        Row{"includes from outside", one_step(R"~("present": ["x"])~", R"~(, "include": ["../etc/passwd"])~"), "include-outside"},
        Row{"unknown set", one_step(R"~("present": ["x"], "use": ["repeets"])~", R"~(, "include": ["common.json"])~"), "set-unknown"},
        Row{"unknown step", one_step(R"~("present": [{"step": "other"}])~"), "step-unknown"},
        Row{"step of itself", one_step(R"~("present": [{"step": "s"}])~"), "step-cycle"},
        Row{"values without a table", one_step(R"~("values": true)~"), "values-missing"},
        Row{"bad value", one_step(R"~("values": true)~", R"~(, "given": {"values": {"quantity": "force", "list": ["heavy"]}})~"), "value-unreadable"},
        Row{"bad quantity", one_step(R"~("values": true)~", R"~(, "given": {"values": {"quantity": "forse", "list": ["1 N"]}})~"), "value-not-allowed"},
        Row{"wrong format", R"~({"format":9,"id":"small","title":"t","question":"q","steps":[]})~", "format-unsupported"},
        Row{"pattern syntax", one_step(R"~("present": ["{length"])~"), "pattern-syntax"},
        Row{"wrong type", one_step(R"~("present": "ruler")~"), "wrong-type"},
        Row{"order of unknown steps", R"~({"format":1,"id":"small","title":"t","question":"q","steps":[],"order":[["a","b"]]})~", "step-unknown"},
        Row{"results without y", one_step(R"~("present": ["x"])~", R"~(, "results": {"x": ["force"]})~"), "key-missing"},
        Row{"results with an unknown key", one_step(R"~("present": ["x"])~", R"~(, "results": {"x": ["a"], "y": ["b"], "z": 1})~"), "key-unknown"},
        Row{"gradient of what", one_step(R"~("present": ["x"])~", R"~(, "results": {"x": ["a"], "y": ["b"], "gradient": {"name": "k", "of": "square", "unit": "N"}})~"), "value-not-allowed"},
        Row{"gradient without a name", one_step(R"~("present": ["x"])~", R"~(, "results": {"x": ["a"], "y": ["b"], "gradient": {"of": "gradient", "unit": "N"}})~"), "key-missing"},
        Row{"gradient in no known unit", one_step(R"~("present": ["x"])~", R"~(, "results": {"x": ["a"], "y": ["b"], "gradient": {"name": "k", "of": "gradient", "unit": "bananas"}})~"), "unit-unknown"},
        Row{"results of a wrong type", one_step(R"~("present": ["x"])~", R"~(, "results": [])~"), "wrong-type"},
        Row{"not an object", "[1]", "json-not-object"}, Row{"not JSON", "{", "json-syntax"}),
    test::row_name<Row>);

TEST(Rubric, AllFaultsAreReportedAtOnceWithTheirPlaces) {
  std::string json = "{\"format\": 1, \"id\": \"small\", \"title\": \"t\", \"question\": \"q\",\n \"steps\": [{\"id\": \"s\", \"title\": \"s\", \"facet\": \"set-up\", \"hint\": \"?\",\n"
                     "  \"present\": [\"{no such}\",\n    \"(a\"], \"oops\": 1}]}";
  SourceFiles files = test::shipped().files;
  files["small.json"] = json;
  LintResult result = lint("small.json", files, test::shipped().real_words);
  std::vector<std::pair<std::string, std::size_t>> seen;
  for (const Finding& f : result.findings) {
    if (f.file == "small.json" && message(f.code).severity == Severity::error) seen.emplace_back(message(f.code).name, locate(json, f.span.begin).line);
  }
  EXPECT_TRUE(std::find(seen.begin(), seen.end(), std::pair<std::string, std::size_t>("concept-unknown", 3)) != seen.end());
  EXPECT_TRUE(std::find(seen.begin(), seen.end(), std::pair<std::string, std::size_t>("pattern-syntax", 4)) != seen.end());
  EXPECT_TRUE(std::find(seen.begin(), seen.end(), std::pair<std::string, std::size_t>("key-unknown", 4)) != seen.end());
}

TEST(Rubric, SaysWhatTheGradientStandsFor) {
  SourceFiles files{{"small.json", one_step(R"~("present": ["x"])~", R"~(, "results": {"x": ["force", "load"], "y": ["extension"], "gradient": {"stands-for": "1 / k", "name": "k", "of": "inverse", "unit": "N/m"}})~")}};
  Loaded loaded = load_rubric("small.json", files);
  ASSERT_TRUE(loaded.rubric && loaded.rubric->results && loaded.rubric->results->gradient);
  const results::Guide& guide = *loaded.rubric->results;
  EXPECT_EQ(guide.x, (std::vector<std::string>{"force", "load"}));
  EXPECT_EQ(guide.gradient->stands_for, "1 / k");
  EXPECT_EQ(guide.gradient->from, results::ConstantFrom::inverse);
  EXPECT_EQ(guide.gradient->unit->symbol, "N/m");
}

TEST(Rubric, SuggestsTheNearestKey) {
  SourceFiles files{{"small.json", R"~({"format":1,"id":"a","title":"t","qestion":"q","steps":[]})~"}};
  Loaded loaded = load_rubric("small.json", files);
  ASSERT_FALSE(loaded.findings.empty());
  EXPECT_NE(describe(loaded.findings[0], files["small.json"]).find("did you mean 'question'?"), std::string::npos);
}

}  // namespace
}  // namespace retort
