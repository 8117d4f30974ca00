// The HTML writer and the page around it.
#include <gtest/gtest.h>

#include "base/digest.h"
#include "report/html_page.h"
#include "report/html_writer.h"

namespace retort {
namespace {

TEST(HtmlEscaped, IsInert) {
  struct Row {
    const char* name;
    std::string text;
    const char* out;
  };
  const Row rows[] = {
      {"plain", "6 N \xC3\xB7 15 cm", "6 N \xC3\xB7 15 cm"},
      {"script", "<script>alert(1)</script>", "&lt;script&gt;alert(1)&lt;/script&gt;"},
      {"quotes", "a\"b'c", "a&quot;b&#39;c"},
      {"a reference stays text", "&lt;", "&amp;lt;"},
      {"controls", std::string("a\0b\x1b[31m\x7f", 9), "ab[31m"},
      {"lines and tabs", "a\r\nb\rc\n\td", "a\nb\nc\n\td"},
      {"C1 control", "a\xC2\x85z", "az"},
      {"no-break space stays", "6\xC2\xA0N", "6\xC2\xA0N"},
      {"reordering",
       "a\xE2\x80\xAE"
       "b\xE2\x81\xA6"
       "c\xE2\x80\x8F"
       "d\xD8\x9C",
       "abcd"},
      {"joiners stay",
       "a\xE2\x80\x8D"
       "b",
       "a\xE2\x80\x8D"
       "b"},
      {"not UTF-8", "a\xFF\xC3", "a\xEF\xBF\xBD\xEF\xBF\xBD"},
      {"half a surrogate", "\xED\xA0\x80", "\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD"},
      {"no characters", "a\xEF\xBF\xBE\xEF\xBF\xBF", "a"},
  };
  for (const Row& row : rows) EXPECT_EQ(html_escaped(row.text), row.out) << row.name;
}

TEST(HtmlWriter, BalancesAndEscapes) {
  std::string out;
  HtmlWriter html(out);
  html.open("p", {{"title", "\"><b>"}}).text("a<b").empty("br").element("i", {{"class", "x"}}, "&").close();
  EXPECT_EQ(out, "<p title=\"&quot;&gt;&lt;b&gt;\">a&lt;b<br><i class=\"x\">&amp;</i></p>");
  EXPECT_EQ(html.depth(), 0U);
}

TEST(HtmlPage, ItsPolicyNamesItsOwnStyleSheet) {
  std::string page = html_page({"A <title>", "<h1>x</h1>", ".own { margin: 0; }\n"});
  EXPECT_TRUE(page.starts_with("<!doctype html>\n<html lang=\"en-GB\">"));
  EXPECT_NE(page.find("<title>A &lt;title&gt;</title>"), std::string::npos);
  std::size_t begin = page.find("<style>") + 7;
  std::string styles = page.substr(begin, page.find("</style>") - begin);
  EXPECT_NE(styles.find(".own"), std::string::npos);
  EXPECT_NE(page.find("style-src &#39;sha256-" + base64(sha256(styles)) + "&#39;"), std::string::npos);
  EXPECT_EQ(page.find("<script"), std::string::npos);
  EXPECT_EQ(page.find("style=\""), std::string::npos);
  EXPECT_EQ(page.find("http:"), std::string::npos);
  EXPECT_EQ(page.find("https:"), std::string::npos);
}

}  // namespace
}  // namespace retort
