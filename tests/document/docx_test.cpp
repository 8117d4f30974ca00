// .docx files: what each construct of WordprocessingML (ECMA-376 part 1) comes out as.
#include <algorithm>
#include <random>

#include "../support.h"
#include "base/messages.h"
#include "document/equation.h"
#include "made.h"

namespace retort {
namespace {

using test::docx;
using test::Parts;

// The text of a .docx file; "! code" if there is none.
std::string read(const std::string& bytes, Findings* said = nullptr) {
  Findings findings;
  Descriptor file = memory_file(bytes);
  Result<std::string> text = read_docx(file.get(), "x.docx", said == nullptr ? findings : *said);
  return text ? *text : "! " + std::string(message(text.finding().code).name);
}

// Short ways to write WordprocessingML.
std::string t(const std::string& text) {
  return "<w:t xml:space=\"preserve\">" + text + "</w:t>";
}
std::string r(const std::string& text, const std::string& properties = "") {
  return "<w:r>" + (properties.empty() ? "" : "<w:rPr>" + properties + "</w:rPr>") + t(text) + "</w:r>";
}
std::string p(const std::string& content) {
  return "<w:p>" + content + "</w:p>";
}
std::string super(const std::string& text) {
  return r(text, R"(<w:vertAlign w:val="superscript"/>)");
}
std::string sub(const std::string& text) {
  return r(text, R"(<w:vertAlign w:val="subscript"/>)");
}
std::string cell(const std::string& content) {
  return "<w:tc><w:tcPr><w:tcW w:w=\"100\"/></w:tcPr>" + content + "</w:tc>";
}
std::string row(const std::string& cells, const std::string& properties = "") {
  return "<w:tr>" + properties + cells + "</w:tr>";
}
std::string field(const std::string& instruction, const std::string& result) {
  return R"(<w:r><w:fldChar w:fldCharType="begin"/></w:r><w:r><w:instrText>)" + instruction +
         R"(</w:instrText></w:r><w:r><w:fldChar w:fldCharType="separate"/></w:r>)" + result + R"(<w:r><w:fldChar w:fldCharType="end"/></w:r>)";
}
std::string math(const std::string& content) {
  return "<m:oMath>" + content + "</m:oMath>";
}
std::string mr(const std::string& text) {
  return "<m:r><m:t>" + text + "</m:t></m:r>";
}
std::string e(const std::string& name, const std::string& content) {
  return "<m:" + name + ">" + content + "</m:" + name + ">";
}

struct Row {
  const char* name;
  std::string body;
  std::string expected;
};

const std::string kDeletedMark = R"(<w:pPr><w:rPr><w:del w:id="1" w:author="a"/></w:rPr></w:pPr>)";
const std::string kBox = "<w:txbxContent>" + p(r("in a box")) + p(r("of two lines")) + "</w:txbxContent>";

const Row kRows[] = {
    {"paragraphs", p(r("one")) + p(r("two")), "one\ntwo"},
    {"runs join", p(r("ru") + r("ler")), "ruler"},
    {"blank paragraphs stay between", p(r("one")) + p("") + p(r("two")), "one\n\ntwo"},
    {"signs", p(r("a &lt; b &amp; c \xC2\xB1 1")), "a < b & c \xC2\xB1 1"},
    {"line breaks and tabs", p("<w:r>" + t("a") + "<w:br/>" + t("b") + "<w:cr/>" + t("c") + "<w:tab/>" + t("d") + "</w:r>"), "a\nb\nc\td"},
    {"tab stops are no tabs", p("<w:pPr><w:tabs><w:tab w:val=\"left\" w:pos=\"720\"/></w:tabs></w:pPr>" + r("a")), "a"},
    {"hyphens", p("<w:r>" + t("set") + "<w:noBreakHyphen/>" + t("up ex") + "<w:softHyphen/>" + t("tension") + "</w:r>"), "set-up extension"},
    {"no-break and soft hyphens as characters", p(r("set\u2011up ex\u00ADtension")), "set-up extension"},
    {"a hyperlink and a smart tag", p("<w:hyperlink r:id=\"x\">" + r("link") + "</w:hyperlink><w:smartTag>" + r(" tag") + "</w:smartTag>"),
     "link tag"},
    {"lists are lines", p("<w:pPr><w:numPr><w:ilvl w:val=\"0\"/></w:numPr></w:pPr>" + r("one")) + p("<w:pPr><w:numPr/></w:pPr>" + r("two")),
     "one\ntwo"},
    // raised and lowered
    {"m squared", p(r("m") + super("2")), "m\u00B2"},
    {"a power of ten", p(r("10") + super("-3")), "10\u207B\u00B3"},
    {"a power of ten with a real minus", p(r("10") + super("\u2212") + super("3")), "10\u207B\u00B3"},
    {"a power in pieces", p(r("10") + super("-") + super("1") + super("2") + r(" m")), "10\u207B\u00B9\u00B2 m"},
    {"a raised space stays a space", p(r("m") + super("2 ") + r("is")), "m\u00B2 is"},
    {"per second squared with a full stop", p(r("m/s") + super("2.")), "m/s\u00B2."},
    {"a power of letters", p(r("x") + super("ab")), "x^ab"},
    {"a power of a sum", p(r("x") + super("a+b")), "x^(a+b)"},
    {"first", p(r("1") + super("st")), "1st"},
    {"degrees with a small o", p(r("30") + super("o") + r("C")), "30\u00B0C"},
    {"degrees with a nought", p(r("30") + super("0")), "30\u00B0"},
    {"ten to the nought", p(r("10") + super("0")), "10\u2070"},
    {"lowered digits stand in the line", p(r("CO") + sub("2") + r(" v") + sub("1")), "CO2 v1"},
    {"raised by position", p(r("m") + r("2", "<w:position w:val=\"6\"/>")), "m\u00B2"},
    {"base line again", p(r("m") + r("2", "<w:vertAlign w:val=\"baseline\"/>")), "m2"},
    // what is not shown
    {"hidden", p(r("a") + r("secret", "<w:vanish/>") + r("b")), "ab"},
    {"not hidden after all", p(r("a", "<w:vanish w:val=\"0\"/>")), "a"},
    {"deletions and insertions",
     p(r("use a ") + "<w:del w:id=\"1\"><w:r><w:delText>stick</w:delText></w:r></w:del><w:ins w:id=\"2\">" + r("ruler") + "</w:ins>"), "use a ruler"},
    {"deleted with w:t inside", p(r("a") + "<w:del>" + r("gone") + "</w:del>"), "a"},
    {"moved text once", p("<w:moveFrom>" + r("moved") + "</w:moveFrom>" + r("stays ")) + p("<w:moveTo>" + r("moved") + "</w:moveTo>"),
     "stays \nmoved"},
    {"a deleted paragraph mark joins", p(kDeletedMark + r("one ")) + p(r("two")), "one two"},
    {"a deleted row",
     "<w:tbl>" + row(cell(p(r("a"))) + cell(p(r("b")))) + row(cell(p(r("x"))), "<w:trPr><w:del w:id=\"1\"/></w:trPr>") + "</w:tbl>" + p(r("end")),
     "a\tb\nend"},
    {"an inserted row", "<w:tbl>" + row(cell(p(r("a"))), "<w:trPr><w:ins w:id=\"1\"/></w:trPr>") + "</w:tbl>", "a"},
    {"an old format is not the format",
     p(r("m") + r("2", "<w:vertAlign w:val=\"superscript\"/><w:rPrChange><w:rPr><w:vanish/></w:rPr></w:rPrChange>")), "m\u00B2"},
    {"comments",
     p(r("a") + "<w:commentRangeStart w:id=\"0\"/>" + r("b") + "<w:commentRangeEnd w:id=\"0\"/><w:r><w:commentReference w:id=\"0\"/></w:r>"), "ab"},
    // fields
    {"a field shows its result", p(r("page ") + field(" PAGE ", r("3"))), "page 3"},
    {"a field in an instruction shows nothing",
     p(field(" IF " + std::string("</w:instrText></w:r>") + field(" X ", r("no")) + "<w:r><w:instrText>", r("yes"))), "yes"},
    {"a simple field", p("<w:fldSimple w:instr=\"DATE\">" + r("today") + "</w:fldSimple>"), "today"},
    {"a field without an end loses nothing", p("<w:r><w:fldChar w:fldCharType=\"begin\"/></w:r>" + r("text")) + p(r("more")), "text\nmore"},
    {"an end without a field", p("<w:r><w:fldChar w:fldCharType=\"end\"/></w:r>" + r("text")), "text"},
    // tables, boxes, forms
    {"a table",
     "<w:tbl><w:tblPr/><w:tblGrid/>" + row(cell(p(r("1.5"))) + cell(p(r("12.3")))) + row(cell(p(r("3.0"))) + cell(p(r("24.6")))) + "</w:tbl>",
     "1.5\t12.3\n3.0\t24.6"},
    {"an empty cell", "<w:tbl>" + row(cell(p(r("1"))) + cell(p("")) + cell(p(r("3")))) + "</w:tbl>", "1\t\t3"},
    {"a cell of two paragraphs", "<w:tbl>" + row(cell(p(r("a")) + p(r("b"))) + cell(p(r("c")))) + "</w:tbl>", "a\nb\tc"},
    {"a table in a cell",
     "<w:tbl>" + row(cell("<w:tbl>" + row(cell(p(r("1"))) + cell(p(r("2")))) + "</w:tbl>" + p("")) + cell(p(r("3")))) + "</w:tbl>", "1\t2\t3"},
    {"a text box comes once, behind its paragraph",
     p(r("be") + "<w:r><mc:AlternateContent><mc:Choice Requires=\"wps\"><wps:txbx>" + kBox +
       "</wps:txbx></mc:Choice><mc:Fallback><w:pict><v:textbox>" + kBox + "</v:textbox></w:pict></mc:Fallback></mc:AlternateContent></w:r>" +
       r("fore")) +
         p(r("after")),
     "before\nin a box\nof two lines\nafter"},
    {"an old text box", p("<w:r><w:pict><v:textbox>" + kBox + "</v:textbox></w:pict></w:r>"), "in a box\nof two lines"},
    {"a content control", "<w:sdt><w:sdtPr><w:alias w:val=\"x\"/></w:sdtPr><w:sdtContent>" + p(r("typed")) + "</w:sdtContent></w:sdt>", "typed"},
    {"a prompt that was not filled in",
     p(r("Name: ") + "<w:sdt><w:sdtPr><w:showingPlcHdr/></w:sdtPr><w:sdtContent>" + r("Click here to enter text.") + "</w:sdtContent></w:sdt>") +
         p(r("hang")),
     "Name: \nhang"},
    // signs of fonts
    {"degree by number", p(r("60") + "<w:r><w:sym w:font=\"Symbol\" w:char=\"F0B0\"/></w:r>" + r("C")), "60\u00B0C"},
    {"omega by number", p(r("5 ") + "<w:r><w:sym w:font=\"Symbol\" w:char=\"F057\"/></w:r>"), "5 \u03A9"},
    {"an arrow", p(r("a ") + "<w:r><w:sym w:font=\"Wingdings\" w:char=\"F0E0\"/></w:r>" + r(" b")), "a \u2192 b"},
    {"a picture of a font", p(r("a") + "<w:r><w:sym w:font=\"Wingdings\" w:char=\"F04A\"/></w:r>"), "a"},
    {"delta of the private use area", p(r("\uF044x")), "\u0394x"},
    {"letters made for mathematics", p(r("\U0001D439=\U0001D458\U0001D452")), "F=ke"},
    // equations
    {"a fraction", p(r("k = ") + math(e("f", e("num", mr("5")) + e("den", mr("0.125"))) + mr("=40 N/m"))), "k = 5/0.125=40 N/m"},
    {"a fraction of sums", p(math(mr("e=") + e("f", e("num", mr("16.7-4.2")) + e("den", mr("2"))))), "e=(16.7-4.2)/2"},
    {"half m v squared", p(math(mr("E=") + e("f", e("num", mr("1")) + e("den", mr("2"))) + mr("m") + e("sSup", e("e", mr("v")) + e("sup", mr("2"))))),
     "E=(1/2)mv\u00B2"},
    {"a power of ten in an equation", p(math(mr("5\u00D7") + e("sSup", e("e", mr("10")) + e("sup", mr("-3"))))), "5\u00D710\u207B\u00B3"},
    {"a power of a bracket", p(math(e("sSup", e("e", e("d", e("e", mr("a+b")))) + e("sup", mr("2"))))), "(a+b)\u00B2"},
    {"a lowered sign", p(math(e("sSub", e("e", mr("v")) + e("sub", mr("1"))))), "v1"},
    {"lowered and raised", p(math(e("sSubSup", e("e", mr("v")) + e("sub", mr("1")) + e("sup", mr("2"))))), "v1\u00B2"},
    {"a root", p(math(mr("v=") + e("rad", "<m:radPr><m:degHide m:val=\"1\"/></m:radPr><m:deg/>" + e("e", mr("2gh"))))), "v=\u221A2gh"},
    {"a root of a fraction", p(math(e("rad", "<m:deg/>" + e("e", e("f", e("num", mr("L")) + e("den", mr("g"))))))), "\u221A(L/g)"},
    {"brackets of other kinds", p(math(e("d", "<m:dPr><m:begChr m:val=\"[\"/><m:endChr m:val=\"]\"/></m:dPr>" + e("e", mr("a"))))), "[a]"},
    {"sine", p(math(e("func", e("fName", mr("sin")) + e("e", mr("30"))) + mr("=0.5"))), "sin 30=0.5"},
    {"a mean", p(math(e("acc", "<m:accPr><m:chr m:val=\"\u0305\"/></m:accPr>" + e("e", mr("x"))))), "x\u0305"},
    {"equations in lines of their own", p(e("oMathPara", math(mr("a=1")) + math(mr("b=2")))) + p(r("end")), "a=1\nb=2\n\nend"},
    {"a row of equations", p(math(e("eqArr", e("e", mr("a=1")) + e("e", mr("b=2"))))), "a=1\nb=2"},
    {"letters for mathematics in an equation", p(math(mr("\U0001D6E5\U0001D465=\U0001D7D1"))), "\u0394x=3"},
    {"deleted in an equation", p(math(mr("a") + "<w:del>" + mr("b") + "</w:del>" + mr("c"))), "ac"},
};

TEST(Docx, EachConstruct) {
  for (const Row& each : kRows) EXPECT_EQ(read(docx(each.body)), each.expected) << each.name;
}

TEST(Docx, Styles) {
  Parts styles = {
      {"word/styles.xml",
       test::part("styles", R"(<w:style w:styleId="Up"><w:rPr><w:vertAlign w:val="superscript"/></w:rPr></w:style>)"
                            R"(<w:style w:styleId="Higher"><w:basedOn w:val="Up"/></w:style>)"
                            R"(<w:style w:styleId="Gone"><w:rPr><w:vanish/></w:rPr></w:style>)"
                            R"(<w:style w:styleId="A"><w:basedOn w:val="B"/></w:style><w:style w:styleId="B"><w:basedOn w:val="A"/></w:style>)")}};
  const Row rows[] = {
      {"a character style", p(r("m") + r("2", "<w:rStyle w:val=\"Up\"/>")), "m\u00B2"},
      {"a style based on it", p(r("m") + r("2", "<w:rStyle w:val=\"Higher\"/>")), "m\u00B2"},
      {"the run outdoes its style", p(r("m") + r("2", "<w:rStyle w:val=\"Up\"/><w:vertAlign w:val=\"baseline\"/>")), "m2"},
      {"a hidden paragraph", p("<w:pPr><w:pStyle w:val=\"Gone\"/></w:pPr>" + r("secret")) + p(r("shown")), "shown"},
      {"styles in a ring", p(r("a", "<w:rStyle w:val=\"A\"/>")), "a"},
      {"a style that is not there", p(r("a", "<w:rStyle w:val=\"Nowhere\"/>")), "a"},
  };
  for (const Row& each : rows) EXPECT_EQ(read(docx(each.body, styles)), each.expected) << each.name;
}

TEST(Docx, NotesComeBehindTheTextInItsOrder) {
  Parts notes = {{"word/footnotes.xml",
                  test::part("footnotes", "<w:footnote w:type=\"separator\" w:id=\"-1\">" + p(r("line")) + "</w:footnote><w:footnote w:id=\"1\">" +
                                              p(r("first")) + "</w:footnote><w:footnote w:id=\"2\">" + p(r("second")) +
                                              "</w:footnote><w:footnote w:id=\"3\">" + p(r("never named")) + "</w:footnote>")},
                 {"word/endnotes.xml", test::part("endnotes", "<w:endnote w:id=\"1\">" + p(r("the end")) + "</w:endnote>")}};
  std::string body = p(r("a") + "<w:r><w:footnoteReference w:id=\"2\"/></w:r>" + r("b") + "<w:r><w:endnoteReference w:id=\"1\"/></w:r>") +
                     p(r("c") + "<w:r><w:footnoteReference w:id=\"1\"/></w:r><w:del><w:r><w:footnoteReference w:id=\"3\"/></w:r></w:del>");
  EXPECT_EQ(read(docx(body, notes)), "ab\nc\nsecond\nfirst\nthe end");
}

TEST(Docx, StrictNamespacesAndOtherNamesOfTheMainPart) {
  std::string strict =
      "<x:document "
      "xmlns:x=\"http://purl.oclc.org/ooxml/wordprocessingml/main\"><x:body><x:p><x:r><x:t>strict</x:t></x:r></x:p></x:body></x:document>";
  std::string top = test::kDocxTop;
  top.replace(top.find("word/document.xml"), 17, "/word/document2.xml");
  EXPECT_EQ(read(test::zipped({{"_rels/.rels", top}, {"word/document2.xml", strict}})), "strict");
}

TEST(Docx, MacrosAreNeverLookedAt) {
  EXPECT_EQ(read(docx(p(r("text")), {{"word/vbaProject.bin", std::string(5000, '\xCC')}})), "text");
}

TEST(Docx, PicturesAloneAreSaid) {
  Findings said;
  EXPECT_EQ(read(docx(p("<w:r><a:blip r:embed=\"x\"/></w:r>")), &said), "");
  ASSERT_EQ(said.size(), 1U);
  EXPECT_EQ(said[0].code, Code::document_no_text);
}

std::string nested(int depth) {
  std::string out;
  for (int i = 0; i < depth; ++i) out += "<w:ins>";
  out += r("x");
  for (int i = 0; i < depth; ++i) out += "</w:ins>";
  return out;
}

TEST(Docx, FilesThatAreRefused) {
  const std::string laughs =
      "<?xml version=\"1.0\"?><!DOCTYPE lolz [<!ENTITY lol \"lol\"><!ENTITY lol2 "
      "\"&lol;&lol;&lol;&lol;&lol;&lol;&lol;&lol;&lol;&lol;\">]><a>&lol2;</a>";
  const std::string outside = "<?xml version=\"1.0\"?><!DOCTYPE a [<!ENTITY f SYSTEM \"file:///etc/passwd\">]><a>&f;</a>";
  const std::string parameter = "<?xml version=\"1.0\"?><!DOCTYPE a [<!ENTITY % p SYSTEM \"http://localhost/\"> %p;]><a/>";
  const Row rows[] = {
      {"nothing", "", "! document-damaged"},
      {"text", "hang the spring", "! document-damaged"},
      {"an older format", "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1" + std::string(600, '\0'), "! document-protected"},
      {"a password", test::zipped({{"_rels/.rels", test::kDocxTop}, {"word/document.xml", "<a/>"}}, true), "! document-protected"},
      {"a zip of something else", test::zipped({{"a.txt", "hang it"}}), "! document-damaged"},
      {"not XML", test::zipped({{"_rels/.rels", test::kDocxTop}, {"word/document.xml", "<w:document"}}), "! document-damaged"},
      {"entities", test::zipped({{"word/document.xml", laughs}}), "! document-entities"},
      {"an outside entity", test::zipped({{"word/document.xml", outside}}), "! document-entities"},
      {"a parameter entity", test::zipped({{"word/document.xml", parameter}}), "! document-entities"},
      {"entities in the relations", test::zipped({{"_rels/.rels", laughs}, {"word/document.xml", "<a/>"}}), "! document-entities"},
      {"too deep", docx(p(nested(400))), "! document-too-deep"},
      {"a bomb", docx(p(r(std::string(50'000'000, ' ')))), "! archive-too-large"},
      {"a long text", docx(p(r("x")) + std::string()), "x"},
  };
  for (const Row& each : rows) EXPECT_EQ(read(each.body), each.expected) << each.name;
  EXPECT_EQ(read(docx(p(nested(200)))), "x");
  std::string words;
  for (int i = 0; i < 200'000; ++i) words += "word" + std::to_string(i) + " ";
  EXPECT_EQ(read(docx(p(r(words)))), "! answer-too-long");
}

// Time and memory grow with the file and no faster.
TEST(Docx, LongLinesAndLargeEquations) {
  std::mt19937 random(1);  // different words, or the file would pass for a bomb
  std::string line;
  std::string expected;
  std::string equation;
  for (std::size_t i = 0; i < 40'000; ++i) {
    std::string word = "m" + std::to_string(random());
    line += r(word) + super("2");
    expected += word + "\u00B2";
    equation += mr(word);
  }
  EXPECT_TRUE(read(docx(p(line))) == expected);
  std::string cut = read(docx(p(math(equation) + r("end"))));
  EXPECT_TRUE(cut.ends_with("end"));
  EXPECT_EQ(std::count(cut.begin(), cut.end(), 'm'), static_cast<std::ptrdiff_t>(kMostEquationNodes / 2));  // two nodes a word
}

TEST(Docx, EntriesAreLimited) {
  DocumentLimits limits;
  limits.archive.entries = 3;
  Descriptor file = memory_file(docx(p(r("x")), {{"a", ""}, {"b", ""}}));
  Findings findings;
  EXPECT_EQ(read_docx(file.get(), "x", findings, limits).finding().code, Code::archive_too_many);
  limits.archive.entries = 4;
  limits.archive.file_bytes = 100;
  EXPECT_EQ(read_docx(file.get(), "x", findings, limits).finding().code, Code::file_too_large);
}

}  // namespace
}  // namespace retort
