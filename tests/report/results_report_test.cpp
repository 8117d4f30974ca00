// The writers over an analysis of results: words, text, JSON, SVG.
#include "../results/tables.h"
#include "report/page.h"
#include "report/results_json.h"
#include "report/results_svg.h"
#include "report/results_text.h"
#include "report/results_words.h"
#include "report/svg_writer.h"
#include "rubric/json.h"

namespace retort {
namespace {

constexpr const char* kSpring =
    "Force / N,Extension 1 / cm,Extension 2 / cm,Extension 3 / cm,Mean extension / cm\n"
    "1.5,3.8,3.9,3.7,3.8\n3.0,7.5,7.4,7.6,7.5\n4.5,11.3,11.2,14.9,12.5\n6.0,15.1,14.9,15.0,15.0\n7.5,18.7,18.9,18.8,18.8\n";

std::string all_words(const results::Analysis& analysis) {
  ResultsWords words = results_words(analysis);
  std::string out;
  for (const auto* part : {&words.readings, &words.means, &words.line, &words.relation, &words.constant}) {
    for (const std::string& sentence : *part) out += sentence + "\n";
  }
  return out;
}

struct Row {
  const char* name;
  const char* csv;
  const char* says;
};

class Words : public ::testing::TestWithParam<Row> {};
TEST_P(Words, SayWhatTheTableShows) {
  std::string words = all_words(test::analysed(GetParam().csv));
  EXPECT_NE(words.find(GetParam().says), std::string::npos) << words;
}

INSTANTIATE_TEST_SUITE_P(
    Report, Words,
    ::testing::Values(
        Row{"anomaly", kSpring, "At force 4.5 N the reading 14.9 cm is an anomaly and was left out of the mean: it is 3.6 cm away from the nearest other reading, and more than 0.6 cm counts as too far."},
        Row{"rule", kSpring, "The rule: too far is more than three times the usual range of the other rows"},
        Row{"own mean", kSpring, "At force 4.5 N the table's mean is 12.5 cm; it should be 11.3 cm: the anomaly was left in."},
        Row{"proportional", kSpring, "Extension is directly proportional to force: the points lie on a straight line, and it goes through the origin"},
        Row{"gradient", kSpring, "Gradient 2.5 cm/N (\u00B1 0.03 cm/N); intercept 0.0 cm (\u00B1 0.2 cm); R\u00B2 = 0.99998."},
        Row{"two points", kSpring, "(1.5 N, 3.8 cm) and (7.5 N, 18.8 cm): (18.8 \u2212 3.8) \u00F7 (7.5 \u2212 1.5) = 2.5 cm/N."},
        Row{"linear only", "F / N,Length / cm\n1,12.1\n2,14.0\n3,15.9\n4,18.1\n5,20.0\n", "is not directly proportional to it: the line does not go through the origin"},
        Row{"falling", "F / N,l / cm\n1,9.0\n2,8.1\n3,6.9\n4,6.0\n5,5.1\n", "l falls as F rises, in a straight line"},
        Row{"curve", "Time / s,Distance / m\n1,1.0\n2,4.1\n3,9.0\n4,15.9\n5,25.1\n6,36.0\n", "the points lie on a curve that gets steeper."},
        Row{"suggestion", "Time / s,Distance / m\n1,1.0\n2,4.1\n3,9.0\n4,15.9\n5,25.1\n6,36.0\n", "A suggestion: plot distance against time squared."},
        Row{"one x", "F / N,l / cm\n1,9.0\n1,8.1\n", "All readings were taken at one F, so there is no line"},
        Row{"one point", "F / N,l / cm\n1,9.0\n", "measure at more values of F, five or more"}, Row{"two points only", "F / N,l / cm\n1,2\n2,4\n", "Two points always lie on a straight line"},
        Row{"three points", "F / N,l / cm\n1,2\n2,4\n3,6\n", "Three points are too few"}, Row{"no repeats", "F / N,l / cm\n1,2\n2,4\n3,6\n", "There are no repeats"},
        Row{"all the same", "F / N,l 1 / cm,l 2 / cm\n1,2.0,2.0\n2,4.0,4.1\n", "the uncertainty is at least half a step of the scale, 0.05 cm."},
        Row{"two that disagree", "F / N,l 1 / cm,l 2 / cm\n1,2.0,3.0\n2,4.0,4.1\n", "With two nobody can say which one is wrong"},
        Row{"flat", "F / N,l / cm\n1,5.0\n2,5.1\n3,4.9\n4,5.0\n5,5.1\n", "l does not change with F by more than the readings scatter."},
        Row{"point off the line", "F / N,l / cm\n1,2.0\n2,4.1\n3,9.0\n4,8.1\n5,9.9\n6,12.0\n", "The point at F 3 N lies off the line"},
        Row{"end off the line", "F / N,l / cm\n1,2.0\n2,4.1\n3,6.0\n4,8.1\n5,9.9\n6,15.0\n", "If it stays there, the graph bends at that end."},
        Row{"refraction", "i / \u00B0,r / \u00B0\n10,6.6\n20,13.2\n30,19.5\n40,25.4\n50,30.7\n", "the gradient is the refractive index, n = 1.5"},
        Row{"critical angle", "i / \u00B0,r / \u00B0\n10,6.6\n20,13.2\n30,19.5\n40,25.4\n50,30.7\n", "critical angle of about 42\u00B0"}),
    test::row_name<Row>);

// Headings that mean harm, cells of all kinds: what any writer must bear.
constexpr const char* kHostile = "<script>alert(1)</script>&\"'\x7F\x1B[31m / N,a 1 / <b>,a 2 / <b>\n1,2,3\n2,4,4\n3,6,6\n4,8,9\n5,10,30\n";

TEST(ResultsText, FitsItsColumns) {
  for (const char* csv : {kSpring, kHostile, "F / N,l / cm\n1,9.0\n", "A very long name of a quantity indeed / kg,Another long name of a quantity / m/s\u00B2\n1,2\n2,4\n3,6\n4,9\n"}) {
    for (std::size_t width : {40U, 60U, 80U, 100U}) {
      std::string out = results_text(test::analysed(csv), width);
      std::string_view rest = out;
      while (!rest.empty()) {
        std::size_t end = rest.find('\n');
        EXPECT_LE(columns(rest.substr(0, end)), width) << rest.substr(0, end);
        rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
      }
      EXPECT_EQ(out.find('\x1B'), std::string::npos);
    }
  }
}

TEST(ResultsText, MarksAnomaliesWithoutColour) {
  std::string out = results_text(test::analysed(kSpring), 80);
  EXPECT_NE(out.find("11.3  11.2  14.9*"), std::string::npos);
  EXPECT_NE(out.find("* an anomaly, left out of the mean"), std::string::npos);
}

TEST(ResultsJson, IsValidAndKeepsThePromise) {
  std::string csv = std::string(kSpring) + "9.0,x,22.5,22.4,\n";
  Findings findings;
  std::string out = results_json(test::analysed(csv), csv);
  Result<json::Value> value = json::parse(out, "out", findings);
  ASSERT_TRUE(value.ok()) << out;
  EXPECT_EQ(value->find("format")->integer, 1);
  EXPECT_EQ(value->find("x")->find("unit")->text, "N");
  ASSERT_EQ(value->find("rows")->items.size(), 6U);
  const json::Value& row = value->find("rows")->items[2];
  EXPECT_EQ(row.find("x")->real, 4.5);
  EXPECT_EQ(row.find("mean_text")->text, "11.3");
  EXPECT_EQ(row.find("mean")->real, 11.25);
  EXPECT_EQ(row.find("uncertainty")->real, 0.05);
  EXPECT_EQ(row.find("readings")->items[2].find("value")->real, 14.9);
  EXPECT_FALSE(row.find("readings")->items[2].find("kept")->boolean);
  EXPECT_EQ(row.find("readings")->items[2].find("line")->integer, 4);
  EXPECT_EQ(row.find("anomalies")->items[0].find("rule")->text, "usual-range");
  EXPECT_EQ(row.find("own_mean")->find("verdict")->text, "anomaly-left-in");
  const json::Value& line = *value->find("line");
  EXPECT_EQ(line.find("gradient")->find("unit")->text, "cm/N");
  EXPECT_EQ(line.find("shape")->text, "straight");
  EXPECT_TRUE(line.find("proportional")->boolean);
  const json::Value& remark = value->find("remarks")->items[0];
  EXPECT_EQ(remark.find("code")->text, "results-cell-no-number");
  EXPECT_EQ(remark.find("line")->integer, 7);
  EXPECT_EQ(remark.find("column")->integer, 5);
}

TEST(ResultsJson, BearsHostileHeadings) {
  Findings findings;
  EXPECT_TRUE(json::parse(results_json(test::analysed(kHostile), kHostile), "out", findings).ok());
}

TEST(SvgWriter, EscapesText) {
  EXPECT_EQ(xml_escaped("a<b>&\"'\x01\x7F" "c\xEF\xBF\xBF"), "a&lt;b&gt;&amp;&quot;&#39;c");
  EXPECT_EQ(svg_number(12.50), "12.5");
  EXPECT_EQ(svg_number(-0.001), "0");
  EXPECT_EQ(svg_number(1e300), "1000000");
  EXPECT_EQ(svg_number(std::numeric_limits<double>::quiet_NaN()), "0");
}

std::size_t count(const std::string& text, const std::string& part) {
  std::size_t out = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++out;
  return out;
}

TEST(ResultsSvg, StandsAloneAndIsTold) {
  std::string out = results_svg(test::analysed(kSpring));
  EXPECT_EQ(count(out, "<title "), 1U);
  EXPECT_EQ(count(out, "<desc "), 1U);
  EXPECT_NE(out.find(">Extension against force</title>"), std::string::npos);
  EXPECT_NE(out.find("directly proportional"), std::string::npos);
  EXPECT_NE(out.find(">Force / N</text>"), std::string::npos);
  EXPECT_NE(out.find(">Extension / cm</text>"), std::string::npos);
  EXPECT_NE(out.find(">anomaly</text>"), std::string::npos);
  EXPECT_EQ(count(out, "<polygon"), 2U);  // on the paper and in the key
  for (const char* never : {"<script", "href", "url(", "@import", "onload", "<image", "<foreignObject"}) EXPECT_EQ(out.find(never), std::string::npos) << never;
}

TEST(ResultsSvg, EscapesHeadingsAndMarksPointsOffTheLine) {
  std::string hostile = results_svg(test::analysed(kHostile));
  EXPECT_EQ(hostile.find("<script"), std::string::npos);
  EXPECT_NE(hostile.find("&lt;script&gt;"), std::string::npos);
  std::string off = results_svg(test::analysed("F / N,l / cm\n1,2.0\n2,4.1\n3,9.0\n4,8.1\n5,9.9\n6,12.0\n"));
  EXPECT_NE(off.find(">off the line</text>"), std::string::npos);
  EXPECT_EQ(count(off, "<circle"), 2U);
}

TEST(ResultsSvg, DrawsWhatHasNoLine) {
  for (const char* csv : {"F / N,l / cm\n1,2\n", "F / N,l / cm\n1,2\n1,3\n", "F / N,l / cm\n1,0\n2,0\n3,0\n4,0\n", "F / N,l / cm\n1e-30,1e30\n1e30,1e-30\n0,1\n"}) {
    std::string out = results_svg(test::analysed(csv));
    EXPECT_TRUE(out.ends_with("</svg>\n"));
    EXPECT_EQ(out.find("nan"), std::string::npos);
  }
}

}  // namespace
}  // namespace retort
