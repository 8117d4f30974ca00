// .odt files: what each construct of OpenDocument text (ISO/IEC 26300-1) comes out as.
#include "../support.h"
#include "base/messages.h"
#include "made.h"

namespace retort {
namespace {

using test::Parts;

const std::string kRoot =
    R"(<?xml version="1.0" encoding="UTF-8"?><office:document-content xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0")"
    R"( xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0")"
    R"( xmlns:draw="urn:oasis:names:tc:opendocument:xmlns:drawing:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0")"
    R"( xmlns:svg="urn:oasis:names:tc:opendocument:xmlns:svg-compatible:1.0" xmlns:xlink="http://www.w3.org/1999/xlink")"
    R"( xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:math="http://www.w3.org/1998/Math/MathML">)";
const std::string kStyles =
    R"(<office:automatic-styles><style:style style:name="Up" style:family="text"><style:text-properties style:text-position="super 58%"/></style:style>)"
    R"(<style:style style:name="Higher" style:family="text" style:parent-style-name="Up"/>)"
    R"(<style:style style:name="Raised" style:family="text"><style:text-properties style:text-position="33% 58%"/></style:style>)"
    R"(<style:style style:name="Down" style:family="text"><style:text-properties style:text-position="sub 58%"/></style:style>)"
    R"(<style:style style:name="Flat" style:family="text"><style:text-properties style:text-position="0% 100%"/></style:style>)"
    R"(<style:style style:name="Gone" style:family="text"><style:text-properties text:display="none"/></style:style>)"
    R"(<style:style style:name="GoneP" style:family="paragraph"><style:text-properties text:display="none"/></style:style>)"
    R"(<style:style style:name="Shut" style:family="section"><style:section-properties text:display="none"/></style:style></office:automatic-styles>)";
const std::string kKind = "application/vnd.oasis.opendocument.text";

std::string odt(const std::string& body, const Parts& more = {}) {
  Parts parts = {{"mimetype", kKind},
                 {"content.xml", kRoot + kStyles + "<office:body><office:text>" + body + "</office:text></office:body></office:document-content>"}};
  parts.insert(parts.end(), more.begin(), more.end());
  return test::zipped(parts);
}

std::string read(const std::string& bytes, Findings* said = nullptr) {
  Findings findings;
  Descriptor file = memory_file(bytes);
  Result<std::string> text = read_odt(file.get(), "x.odt", said == nullptr ? findings : *said);
  return text ? *text : "! " + std::string(message(text.finding().code).name);
}

std::string p(const std::string& content) {
  return "<text:p>" + content + "</text:p>";
}
std::string span(const std::string& style, const std::string& content) {
  return "<text:span text:style-name=\"" + style + "\">" + content + "</text:span>";
}
std::string cell(const std::string& content) {
  return "<table:table-cell>" + content + "</table:table-cell>";
}
std::string row(const std::string& cells) {
  return "<table:table-row>" + cells + "</table:table-row>";
}
std::string math(const std::string& content) {
  return "<draw:frame><draw:object><math:math>" + content + "</math:math></draw:object></draw:frame>";
}
std::string e(const std::string& name, const std::string& content) {
  return "<math:" + name + ">" + content + "</math:" + name + ">";
}

struct Row {
  const char* name;
  std::string body;
  std::string expected;
};

const Row kRows[] = {
    {"paragraphs and headings", "<text:h>one</text:h>" + p("two"), "one\ntwo"},
    {"white space runs together", p("  a \n  b\t c "), "a b c"},
    {"white space runs together over spans", p("a " + span("Up", " ") + span("Flat", " b")), "a b"},
    {"spaces, tabs and line breaks that count", p("a<text:s text:c=\"3\"/>b<text:tab/>c<text:line-break/>d<text:s/>e"), "a   b\tc\nd e"},
    {"a million spaces", p("a<text:s text:c=\"1000000\"/>b"), "a" + std::string(1000, ' ') + "b"},
    {"lists are lines", "<text:list><text:list-item>" + p("one") + "</text:list-item><text:list-item>" + p("two") + "</text:list-item></text:list>",
     "one\ntwo"},
    {"a link", p("a <text:a xlink:href=\"http://example.org\">link</text:a>"), "a link"},
    {"m squared", p("m" + span("Up", "2")), "m\u00B2"},
    {"a power of ten", p("10" + span("Raised", "-3")), "10\u207B\u00B3"},
    {"by a style that stands on another", p("10" + span("Higher", "-") + span("Higher", "3")), "10\u207B\u00B3"},
    {"lowered", p("CO" + span("Down", "2")), "CO2"},
    {"the base line again inside", p("m" + span("Up", span("Flat", "2"))), "m2"},
    {"hidden", p("a" + span("Gone", "secret") + "b"), "ab"},
    {"a hidden paragraph", "<text:p text:style-name=\"GoneP\">secret</text:p>" + p("shown"), "shown"},
    {"a hidden section", "<text:section text:style-name=\"Shut\">" + p("secret") + "</text:section>" + p("shown"), "shown"},
    {"a section", "<text:section text:name=\"s\">" + p("shown") + "</text:section>", "shown"},
    {"deletions and insertions",
     "<text:tracked-changes><text:changed-region><text:deletion>" + p("gone") + "</text:deletion></text:changed-region></text:tracked-changes>" +
         p("a <text:change text:change-id=\"1\"/><text:change-start text:change-id=\"2\"/>new<text:change-end text:change-id=\"2\"/>"),
     "a new"},
    {"comments", p("a<office:annotation><dc:creator>T</dc:creator><text:p>why?</text:p></office:annotation>b<office:annotation-end/>"), "ab"},
    {"a note at the end",
     p("a<text:note><text:note-citation>1</text:note-citation><text:note-body>" + p("note") + "</text:note-body></text:note>b") + p("c"),
     "ab\nc\nnote"},
    {"a prompt", p("a<text:placeholder text:placeholder-type=\"text\">click here</text:placeholder>"), "a"},
    {"a field", p("page <text:page-number>3</text:page-number>"), "page 3"},
    {"a table", "<table:table><table:table-column/>" + row(cell(p("1.5")) + cell(p("6.2"))) + row(cell(p("3.0")) + cell(p("8.1"))) + "</table:table>",
     "1.5\t6.2\n3.0\t8.1"},
    {"merged cells", "<table:table>" + row(cell(p("a")) + "<table:covered-table-cell/>" + cell(p("b"))) + "</table:table>", "a\tb"},
    {"a cell of two paragraphs", "<table:table>" + row(cell(p("a") + p("b")) + cell(p("c"))) + "</table:table>", "a\nb\tc"},
    {"a text box", p("be<draw:frame><draw:text-box>" + p("in a box") + "</draw:text-box></draw:frame>fore") + p("after"), "before\nin a box\nafter"},
    {"a shape with text", p("be<draw:custom-shape>" + p("in a shape") + "</draw:custom-shape>fore"), "before\nin a shape"},
    {"what a picture shows is no text",
     p("a<draw:frame><draw:image xlink:href=\"x\"/><svg:title>title</svg:title><svg:desc>words</svg:desc></draw:frame>b"), "ab"},
    {"a fraction", p("k = " + math(e("mrow", e("mfrac", e("mn", "6.0") + e("mn", "0.15")) + e("mo", "=") + e("mn", "40")))), "k = 6.0/0.15=40"},
    {"a power", p(math(e("msup", e("mn", "10") + e("mrow", e("mo", "-") + e("mn", "3"))))), "10\u207B\u00B3"},
    {"a root", p(math(e("msqrt", e("mi", "a") + e("mo", "+") + e("mi", "b")))), "\u221A(a+b)"},
    {"a cube root", p(math(e("mroot", e("mi", "V") + e("mn", "3")))), "\u221BV"},
    {"lowered in a formula", p(math(e("msub", e("mi", "v") + e("mn", "1")))), "v1"},
    {"brackets", p(math(e("mfenced", e("mi", "a")))), "(a)"},
    {"spaces of the file are none",
     p(math("\n <math:semantics>\n  " + e("mrow", "\n " + e("mi", " a ") + " \n") + e("annotation", "a") + "</math:semantics>")), "a"},
};

TEST(Odt, EachConstruct) {
  for (const Row& each : kRows) EXPECT_EQ(read(odt(each.body)), each.expected) << each.name;
}

TEST(Odt, FormulasInPartsOfTheirOwn) {
  std::string body = p("F = <draw:frame><draw:object xlink:href=\"./Object 1\"/><draw:image xlink:href=\"x\"/></draw:frame> N");
  std::string formula =
      "<math xmlns=\"http://www.w3.org/1998/Math/MathML\"><semantics><mrow><mn>0.1</mn><mo>\u00D7</mo><mn>10</mn></mrow></semantics></math>";
  EXPECT_EQ(read(odt(body, {{"Object 1/content.xml", formula}})), "F = 0.1\u00D710 N");
  EXPECT_EQ(read(odt(body, {{"Object 1/content.xml", "<broken"}})), "F = N");
  EXPECT_EQ(read(odt(body)), "F = N");
  EXPECT_EQ(read(odt(p("<draw:frame><draw:object xlink:href=\"../../etc\"/></draw:frame>a"))), "a");
}

TEST(Odt, StylesOfTheirOwnPart) {
  std::string styles =
      "<office:document-styles xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\" "
      "xmlns:style=\"urn:oasis:names:tc:opendocument:xmlns:style:1.0\" "
      "xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\"><office:styles><style:style style:name=\"Power\" "
      "style:family=\"text\"><style:text-properties "
      "style:text-position=\"super\"/></style:style></office:styles><office:master-styles><style:master-page><style:header><text:p>the "
      "header</text:p></style:header>"
      "</style:master-page></office:master-styles></office:document-styles>";
  EXPECT_EQ(read(odt(p("m" + span("Power", "3")), {{"styles.xml", styles}})), "m\u00B3");
}

TEST(Odt, PicturesAloneAreSaid) {
  Findings said;
  EXPECT_EQ(read(odt(p("<draw:frame><draw:image xlink:href=\"x\"/></draw:frame>")), &said), "");
  ASSERT_EQ(said.size(), 1U);
  EXPECT_EQ(said[0].code, Code::document_no_text);
}

TEST(Odt, FilesThatAreRefused) {
  const std::string locked =
      "<manifest:manifest xmlns:manifest=\"urn:oasis:names:tc:opendocument:xmlns:manifest:1.0\"><manifest:file-entry "
      "manifest:full-path=\"content.xml\">"
      "<manifest:encryption-data/></manifest:file-entry></manifest:manifest>";
  const std::string laughs = "<?xml version=\"1.0\"?><!DOCTYPE a [<!ENTITY a \"ha\"><!ENTITY b \"&a;&a;\">]><a>&b;</a>";
  const Row rows[] = {
      {"nothing", "", "! document-damaged"},
      {"a spreadsheet", test::zipped({{"mimetype", "application/vnd.oasis.opendocument.spreadsheet"}, {"content.xml", "<a/>"}}),
       "! document-damaged"},
      {"no content", test::zipped({{"mimetype", kKind}}), "! document-damaged"},
      {"a password", odt(p("x"), {{"META-INF/manifest.xml", locked}}), "! document-protected"},
      {"a password on all of it", test::zipped({{"mimetype", kKind}, {"encrypted-package", "x"}}), "! document-protected"},
      {"entities", test::zipped({{"mimetype", kKind}, {"content.xml", laughs}}), "! document-entities"},
      {"entities in styles", odt(p("x"), {{"styles.xml", laughs}}), "! document-entities"},
      {"a bomb", odt(p(std::string(80'000'000, 'x'))), "! archive-too-large"},
  };
  for (const Row& each : rows) EXPECT_EQ(read(each.body), each.expected) << each.name;
}

}  // namespace
}  // namespace retort
