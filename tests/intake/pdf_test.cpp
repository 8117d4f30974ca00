// PDF files by way of pdftotext: real ones, damaged ones, and readers that misbehave.
#include "intake/pdf.h"

#include <sys/stat.h>

#include "folder.h"

namespace retort {
namespace {

using test::Folder;
using test::Strings;

// A PDF file of one page that shows `lines` (PDF 32000-1:2008, annex H.3 has the shape of it).
std::string pdf(const Strings& lines) {
  std::string stream = "BT /F1 11 Tf 14 TL 50 780 Td\n";
  for (const std::string& line : lines) stream += "(" + line + ") Tj T*\n";
  stream += "ET\n";
  const Strings objects = {"<</Type/Catalog/Pages 2 0 R>>", "<</Type/Pages/Kids[3 0 R]/Count 1>>",
                           "<</Type/Page/Parent 2 0 R/MediaBox[0 0 595 842]/Contents 4 0 R/Resources<</Font<</F1 5 0 R>>>>>>",
                           "<</Length " + std::to_string(stream.size()) + ">>stream\n" + stream + "endstream",
                           "<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>"};
  std::string out = "%PDF-1.4\n";
  std::vector<std::size_t> at;
  for (std::size_t i = 0; i < objects.size(); ++i) {
    at.push_back(out.size());
    out += std::to_string(i + 1) + " 0 obj" + objects[i] + "endobj\n";
  }
  std::size_t table = out.size();
  out += "xref\n0 6\n0000000000 65535 f \n";
  for (std::size_t offset : at) {
    std::string digits = std::to_string(offset);
    out += std::string(10 - digits.size(), '0') + digits + " 00000 n \n";
  }
  return out + "trailer<</Size 6/Root 1 0 R>>\nstartxref\n" + std::to_string(table) + "\n%%EOF\n";
}

const Strings kLines = {"First I would hang the spring from the clamp and put the", "metre rule beside it so that it stands upright. Then I read",
                        "where the end is.", "Force: 1.5 N"};

TEST_F(Folder, PdfTextIsReadAndItsWrappedLinesJoined) {
  EXPECT_EQ(all({put("anna.pdf", pdf(kLines))}), (Strings{"anna=First I would hang the spring from the clamp and put the metre rule beside it so "
                                                          "that it stands upright. Then I read where the end is.\nForce: 1.5 N"}));
}

TEST_F(Folder, PdfNamesThatLookLikeOptions) {
  std::filesystem::path before = std::filesystem::current_path();
  std::filesystem::current_path(path);
  put("-opw.pdf", pdf({"read"}));
  put("$(touch x);`y`.pdf", pdf({"read"}));
  EXPECT_EQ(all({"-opw.pdf", "$(touch x);`y`.pdf"}), (Strings{"-opw=read", "$(touch x);`y`=read"}));
  EXPECT_FALSE(std::filesystem::exists(path + "/x"));
  std::filesystem::current_path(before);
}

TEST_F(Folder, PdfFilesThatAreRefused) {
  std::string good = put("good.pdf", pdf(kLines));
  EXPECT_EQ(all({put("a.pdf", pdf({}))}), (Strings{"! pdf-no-text"}));
  EXPECT_EQ(all({put("b.pdf", "no PDF file")}), (Strings{"! pdf-failed"}));
  EXPECT_EQ(all({put("c.pdf", "")}), (Strings{"! pdf-failed"}));
  IntakeOptions none;
  none.pdf_reader = "no-such-program";
  EXPECT_EQ(all({good}, none), (Strings{"! pdf-reader-missing"}));
  none.pdf_reader = "/no/such/program";
  EXPECT_EQ(all({good}, none), (Strings{"! pdf-reader-missing"}));
}

struct Reader {
  const char* name;
  const char* script;
  const char* expected;  // a code; "" if the text is read
  const char* why;
};

TEST_F(Folder, ReadersThatMisbehave) {
  const Reader rows[] = {
      {"good", "echo fine", "", "fine"},
      {"sees its input alone", "cat /proc/self/fd/3 >/dev/null && [ $(ls /proc/self/fd | wc -l) -le 5 ] && echo fine", "", "fine"},
      {"its environment", "env | cut -d= -f1 | grep -vxE 'LC_ALL|PATH|PWD|OLDPWD|SHLVL|_' && exit 9; echo fine", "", "fine"},
      {"cannot write files", "(echo x >\"$0.out\") 2>/dev/null; [ -s \"$0.out\" ] && exit 9; echo fine", "", "fine"},
      {"never ends", "while :; do :; done", "pdf-failed", "it t"},
      {"sleeps", "exec sleep 100", "pdf-failed", "more than 2 seconds"},
      {"never stops writing", "exec yes", "answer-too-long", "more than"},
      {"fails with words", "echo 'Syntax Error: broken' >&2; exit 1", "pdf-failed", "Syntax Error: broken"},
      {"fails without words", "exit 7", "pdf-failed", "status 7"},
      {"forbidden", "exit 3", "pdf-failed", "does not allow"},
      {"a password", "echo 'Command Line Error: Incorrect password' >&2; exit 1", "document-protected", ""},
      {"dies", "kill -9 $$", "pdf-failed", "too much"},
      {"says nothing", "exit 0", "pdf-no-text", ""},
  };
  Descriptor input = memory_file("x");
  ChildLimits limits;
  limits.seconds = 2;
  for (const Reader& row : rows) {
    std::string script = put("reader", "#!/bin/sh\n" + std::string(row.script) + "\n");
    ASSERT_EQ(::chmod(script.c_str(), 0700), 0);
    Result<std::string> text = read_pdf(input.get(), "x.pdf", script, limits);
    EXPECT_EQ(text ? "" : std::string(message(text.finding().code).name), row.expected) << row.name;
    std::string said = text ? *text : text.finding().notes.empty() ? "" : text.finding().notes[0];
    EXPECT_NE(said.find(row.why), std::string::npos) << row.name << ": " << said;
  }
  std::string broken = put("reader", "#!/no/such/shell\n");
  ::chmod(broken.c_str(), 0700);
  EXPECT_EQ(read_pdf(input.get(), "x.pdf", broken, limits).finding().code, Code::pdf_failed);
}

TEST_F(Folder, PdfFilesCutOrWithBitsTurned) {
  const std::string whole = pdf(kLines);
  std::size_t answers = 0;
  std::size_t tried = 0;
  auto attempt = [&](const std::string& bytes) {
    Strings got = all({put("d.pdf", bytes)});
    EXPECT_EQ(got.size(), 1U);
    answers += failed == 0 ? 1 : 0;
    ++tried;
  };
  for (std::size_t size = 0; size < whole.size(); size += 8) attempt(whole.substr(0, size));
  for (std::size_t byte = 0; byte < whole.size(); byte += 8) {
    std::string turned = whole;
    turned[byte] = static_cast<char>(turned[byte] ^ (1 << (byte / 8 % 8)));
    attempt(turned);
  }
  std::cout << "PDF: " << tried << " damaged files read, " << answers << " with text\n";
  EXPECT_GT(tried, 150U);
}

struct Wrap {
  const char* name;
  const char* text;
  const char* expected;
};

TEST(Pdf, WrappedLines) {
  const Wrap rows[] = {
      {"narrow text is a list", "one two\nthree\nfour", "one two\nthree\nfour"},
      {"a wrapped line", "this line goes on to the end of the page and\nthen ends.\nNew",
       "this line goes on to the end of the page and then ends.\nNew"},
      {"a paragraph's end", "this line goes on to the end of the page and\nthen ends.\n\nNext",
       "this line goes on to the end of the page and then ends.\n\nNext"},
      {"room for the next word", "short line\nthis line goes on to the end of the page and so on",
       "short line\nthis line goes on to the end of the page and so on"},
      {"spaces at the end", "this line goes on to the end of the page and  \nthen", "this line goes on to the end of the page and then"},
      {"items of a list", "this line goes on to the end of the page and\n1. hang\n2.add 1.5 N to it and then look at the ruler\na) read\n\u2022 and",
       "this line goes on to the end of the page and\n1. hang\n2.add 1.5 N to it and then look at the ruler\na) read\n\u2022 and"},
      {"a number is no item", "this line goes on to the end of the page and\n1.5 N is hung",
       "this line goes on to the end of the page and 1.5 N is hung"},
      {"nothing", "", ""},
  };
  for (const Wrap& row : rows) EXPECT_EQ(join_wrapped(row.text), row.expected) << row.name;
}

TEST(Pdf, PowersOfTen) {
  const Wrap rows[] = {
      {"a minus", "2.0 x 10-3 m", "2.0 x 10^-3 m"},
      {"a real minus and a cross", "2.0 \u00D7 10\u221212 m", "2.0 \u00D7 10^\u221212 m"},
      {"no space", "2x10-3", "2x10^-3"},
      {"a difference", "12 - 10-3", "12 - 10-3"},
      {"no minus", "2 x 103", "2 x 103"},
      {"a word that ends in x", "box 10-3", "box 10-3"},
      {"a range of another number", "x 110-3", "x 110-3"},
      {"the end", "x 10-", "x 10-"},
      {"ten alone", "10-3", "10-3"},
  };
  for (const Wrap& row : rows) EXPECT_EQ(mark_powers(row.text), row.expected) << row.name;
}

}  // namespace
}  // namespace retort
