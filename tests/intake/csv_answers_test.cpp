// CSV files as forms and spreadsheets export them, and damaged ones.
#include <fcntl.h>

#include "folder.h"
#include "intake/csv_rows.h"
#include "intake/files.h"

namespace retort {
namespace {

using test::Folder;
using test::Strings;

std::string utf16(const std::string& ascii, bool big, bool mark) {
  std::string out = mark ? (big ? "\xFE\xFF" : "\xFF\xFE") : "";
  for (char c : ascii) out += big ? std::string{'\0', c} : std::string{c, '\0'};
  return out;
}

struct Row {
  const char* name;
  std::string content;
  Strings expected;
  IntakeOptions options = {};
  std::size_t failed = 0;
};

IntakeOptions columns(const std::string& answer, const std::string& label = "", const std::string& mark = "") {
  IntakeOptions out;
  out.answer_column = answer;
  out.label_column = label;
  out.mark_column = mark;
  return out;
}

const std::string kForm = "Name,Answer\nAnna,hang it up\nBen,use a ruler\n";
const Strings kRead = {"Anna=hang it up", "Ben=use a ruler"};

const Row kRows[] = {
    {"plain", kForm, kRead},
    {"byte order mark", "\xEF\xBB\xBF" + kForm, kRead},
    {"semicolons", "Name;Answer\nAnna;hang it up\nBen;use a ruler\n", kRead},
    {"tabs", "Name\tAnswer\nAnna\thang it up\nBen\tuse a ruler\n", kRead},
    {"bars", "Name|Answer\nAnna|hang it up\nBen|use a ruler\n", kRead},
    {"sep line", "sep=;\r\nName;Answer\r\nAnna;hang it up\r\nBen;use a ruler\r\n", kRead},
    {"carriage returns and line feeds", "Name,Answer\r\nAnna,hang it up\r\nBen,use a ruler\r\n", kRead},
    {"carriage returns alone", "Name,Answer\rAnna,hang it up\rBen,use a ruler\r", kRead},
    {"no line end at the end", "Name,Answer\nAnna,hang it up\nBen,use a ruler", kRead},
    {"UTF-16 little endian", utf16(kForm, false, true), kRead},
    {"UTF-16 big endian", utf16(kForm, true, true), kRead},
    {"UTF-16 without a mark", utf16(kForm, false, false), kRead},
    {"UTF-16 big endian without a mark", utf16(kForm, true, false), kRead},
    {"Windows-1252",
     "Name,Answer\nAnna,heat to 60\xB0\x43 \x96 it\x92s hot\n",
     {"Anna=heat to 60\xC2\xB0\x43 \xE2\x80\x93 it\xE2\x80\x99s hot", "! csv-not-utf8"}},
    {"UTF-8", "Name,Answer\n\xC3\x89lo\xC3\xAFse,60 \xC2\xB0\x43\n", {"\xC3\x89lo\xC3\xAFse=60 \xC2\xB0\x43"}},
    {"quotes, commas and line breaks in a cell",
     "Name,Answer\nAnna,\"first, hang \"\"it\"\"\nthen\r\nread\"\nBen,x y z\n",
     {"Anna=first, hang \"it\"\nthen\r\nread", "Ben=x y z"}},
    {"a form: time stamps, other columns, the question as heading",
     "Timestamp,Email Address,Name,Describe how the student could find the extension. [6 marks]\n"
     "2026/11/20,a@example.org,Anna,First I would hang the spring\n2026/11/20,b@example.org,Ben,I use a long ruler\n",
     {"Anna=First I would hang the spring", "Ben=I use a long ruler", "! answers-column-guessed"}},
    {"a quiz: first name and surname, question and response",
     "Surname,First name,Grade,Question 1,Response 1,Right answer 1\n"
     "Example,Anna,4.00,Describe a very long question which is the same,hang it,One two three four five six seven eight nine\n"
     "Sample,Ben,3.00,Describe a very long question which is the same,read it,One two three four five six seven eight nine\n",
     {"Anna Example=hang it", "Ben Sample=read it"}},
    {"two responses: the longer, with a note",
     "Name,Response 1,Response 2\nAnna,a b c,a longer one than that\nBen,d e f,another longer one\n",
     {"Anna=a longer one than that", "Ben=another longer one", "! answers-column-guessed"}},
    {"a label that is the same for all is passed over",
     "Name,Candidate number,Answer\nanonymous,101,one\nanonymous,102,two\n",
     {"101=one", "102=two"}},
    {"without a label the row", "Time,Answer\n1,one\n\n2,two\n", {"row 2=one", "row 4=two"}},
    {"an answer alone", "Answer\none\ntwo\n", {"row 2=one", "row 3=two"}},
    {"blank answers are named and no failure",
     "Name,Answer\nAnna,\nBen,  \nCara,yes\nDee\n",
     {"Cara=yes", "! answers-blank", "! answers-blank", "! answers-blank"}},
    {"blank rows are nothing", "Name,Answer\n\n,\nAnna,yes\n,,\n\n", {"Anna=yes"}},
    {"a column by its heading", "Who,Draft 1,Draft 2\nAnna,one,two\n", {"Anna=two"}, columns("Draft 2", "Who")},
    {"a column by its heading without case", "Who,Draft 1,Draft 2\nAnna,one,two\n", {"Anna=two"}, columns("draft 2", "WHO")},
    {"a column by its number", "Who,Draft 1,Draft 2\nAnna,one,two\n", {"Anna=one"}, columns("2", "1")},
    {"no such column", "Who,Draft 1\nAnna,one\n", {"! answers-column-missing"}, columns("7"), 1},
    {"no such label column", "Who,Answer\nAnna,one\n", {"! answers-column-missing"}, columns("", "Nobody"), 1},
    {"one column for two things", "Who,Answer\nAnna,one\n", {"! answers-column-twice"}, columns("Who", "1"), 1},
    {"no answers in it", "F / N,e / cm\n1,2\n2,4\n", {"! answers-no-column"}, {}, 1},
    {"headings alone", "Name,Answer\n", {}},
    {"empty", "", {"! answers-no-column"}, {}, 1},
    {"a quote never closed", "Name,Answer\nAnna,one two\nBen,\"three\nCara,four\n", {"Anna=one two", "Ben=three\nCara,four\n", "! csv-quote-open"}},
    {"a stray quote", "Name,Answer\nAnna,5\" long it is\nBen,ok\n", {"Anna=5\" long it is", "Ben=ok"}},
    {"rows of any length", "Name,Answer\nAnna,one,two,three\nBen\nCara,four\n", {"Anna=one", "Cara=four", "! answers-blank"}},
    {"NUL bytes", std::string("Name,Answer\nAnna,o\0ne\n", 22), {std::string("Anna=o\0ne", 9)}},
};

TEST_F(Folder, CsvAnswers) {
  for (const Row& row : kRows) {
    EXPECT_EQ(all({put("answers.csv", row.content)}, row.options), row.expected) << row.name;
    EXPECT_EQ(failed, row.failed) << row.name;
  }
}

struct MarkRow {
  const char* text;
  int mark;
  std::size_t findings;
};

TEST_F(Folder, CsvMarksAndGroups) {
  const MarkRow rows[] = {{"4", 4, 0},    {"4.00", 4, 0}, {"4,0", 4, 0},   {"4 / 6", 4, 0}, {"4.0/6.0", 4, 0}, {"", -1, 0},           {"100", 100, 0},
                          {"101", -1, 1}, {"4.5", -1, 1}, {"four", -1, 1}, {"-1", -1, 1},   {"4.", -1, 1},     {"12345678901", -1, 1}};
  for (const MarkRow& row : rows) {
    AnswerStream stream({put("m.csv", "Name;Class;Mark;Second mark;Answer\nAnna;9B;\"" + std::string(row.text) + "\";3;hang it\n")});
    Findings found;
    Answer answer;
    ASSERT_TRUE(stream.next(answer, found)) << row.text;
    EXPECT_EQ(answer.mark, row.mark) << row.text;
    EXPECT_EQ(answer.mark2, 3);
    EXPECT_EQ(answer.group, "9B");
    EXPECT_EQ(found.size(), row.findings) << row.text;
  }
}

TEST_F(Folder, CsvRowsThatNeverEndStopTheFileAlone) {
  std::string endless = put("a.csv", "Name,Answer\nAnna,one\nBen,\"" + std::string(kLongestLine + 10, 'x') + "\"\nCara,two\n");
  std::string other = put("b.csv", kForm);
  EXPECT_EQ(all({endless, other}), (Strings{"Anna=one", "Anna=hang it up", "Ben=use a ruler", "! answers-row-too-long"}));
  EXPECT_EQ(findings.back().notes, (Strings{"3", "3", std::to_string(kLongestLine)}));
  EXPECT_EQ(failed, 1U);
}

TEST_F(Folder, CsvAnswersOverTheLimitArePassedOver) {
  EXPECT_EQ(all({put("a.csv", "Name,Answer\nAnna," + std::string(kLongestAnswer + 1, 'x') + "\nCara,two\n")}),
            (Strings{"Cara=two", "! answer-too-long"}));
}

TEST_F(Folder, CsvRowsWithoutAnAnswerAreNamedUpToAHundred) {
  std::string content = "Name,Answer\nAnna,one two\nBen,three\n";
  for (int i = 0; i < 150; ++i) content += "x" + std::to_string(i) + ",\n";
  all({put("a.csv", content)});
  ASSERT_EQ(findings.size(), 101U);
  EXPECT_EQ(findings.back().code, Code::answers_more_blank);
  EXPECT_EQ(findings.back().notes, Strings{"50"});
}

// The same rows wherever the reads cut them.
TEST_F(Folder, CsvRowsAreTheSameWhereverTheReadsEnd) {
  for (std::size_t padding : {65500U, 65530U, 65536U, 131060U, 262140U, 400000U}) {
    std::string content = "Name,Answer\n\"" + std::string(padding, 'p') + "\",first\nAnna,\"two\nlines \xC3\xA9\"\nBen,last\n";
    for (bool wide : {false, true}) {
      if (wide && padding > 300000) continue;
      std::string as = wide ? utf16(content, false, true) : content;
      Strings got = all({put("a.csv", as)});
      ASSERT_EQ(got.size(), 3U) << padding;
      EXPECT_EQ(got[2], "Ben=last");
      EXPECT_TRUE(got[1].starts_with("Anna=two\nlines ")) << got[1];
    }
  }
}

TEST_F(Folder, CsvCutAnywhereOrWithAnyBitTurnedDoesNotHarm) {
  const std::string whole = "Name;Class;Mark;Answer\r\nAnna;9B;4;\"hang \"\"it\"\", then\nread\"\r\nBen;9B;;use a ruler\r\n";
  std::size_t tried = 0;
  std::size_t answers = 0;
  auto attempt = [&](std::string_view content) {
    AnswerStream stream({put("d.csv", std::string(content))});
    Answer answer;
    Findings found;
    while (stream.next(answer, found)) ++answers;
    for (const Finding& finding : found) EXPECT_FALSE(describe(finding, {}).empty());
    EXPECT_EQ(stream.failed(), static_cast<std::size_t>(std::count_if(found.begin(), found.end(), [](const Finding& f) {
                return f.code == Code::answers_no_column || f.code == Code::answers_row_too_long;
              })));
    ++tried;
  };
  for (const std::string& form : {whole, utf16(whole, false, true)}) {
    for (std::size_t size = 0; size < form.size(); ++size) attempt(std::string_view(form).substr(0, size));
    for (std::size_t bit = 0; bit < form.size() * 8; ++bit) {
      std::string turned = form;
      turned[bit / 8] = static_cast<char>(turned[bit / 8] ^ (1 << (bit % 8)));
      attempt(turned);
    }
  }
  std::cout << "CSV: " << tried << " damaged files read, " << answers << " answers in them\n";
  EXPECT_GT(tried, 2000U);
}

TEST_F(Folder, TextFilesOfOtherEncodingsAreRead) {
  EXPECT_EQ(all({put("d.txt", "60 \xB0\x43")}), (Strings{"d=60 \xC2\xB0\x43", "! csv-not-utf8"}));
  EXPECT_EQ(all({put("a.txt", utf16("hang it", false, true)), put("b.md", utf16("read it", true, true))}), (Strings{"a=hang it", "b=read it"}));
  EXPECT_EQ(all({put("c.txt", std::string("\xFF\xFE\x3D\xD8\x00\xDE\x3D\xD8\x41", 9))}), (Strings{"c=\xF0\x9F\x98\x80\xEF\xBF\xBD"}));
}

}  // namespace
}  // namespace retort
