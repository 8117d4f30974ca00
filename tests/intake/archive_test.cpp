// .zip files and folders of any mix, and files that cannot be read.
#include "../document/made.h"
#include "folder.h"
#include "intake/pseudonyms.h"

namespace retort {
namespace {

using test::Folder;
using test::Strings;
using test::zipped;

const std::string kDocx = test::docx("<w:p><w:r><w:t>in a document</w:t></w:r></w:p>");

struct Row {
  const char* name;
  test::Parts parts;
  Strings expected;
  std::size_t failed = 0;
};

TEST_F(Folder, ZipFilesAreRead) {
  const Row rows[] = {
      {"a mix, sorted by name",
       {{"b.txt", "two"}, {"a.docx", kDocx}, {"c.csv", "Name,Answer\nAnna,three\n"}, {"d.jsonl", "{\"id\": \"x\", \"text\": \"four\"}\n"}},
       {"a=in a document", "b=two", "Anna=three", "x=four"}},
      {"folders", {{"Anna/draft.txt", "one"}, {"Ben/draft.txt", "two"}, {"Ben/", ""}}, {"Anna/draft=one", "Ben/draft=two"}},
      {"litter", {{"__MACOSX/._a.txt", "?"}, {".DS_Store", "?"}, {"x/~$a.docx", "?"}, {"Thumbs.db", "?"}, {"a.txt", "one"}}, {"a=one"}},
      {"paths that climb out",
       {{"../a.txt", "?"}, {"x/../../b.txt", "?"}, {"/etc/c.txt", "?"}, {"..\\d.txt", "?"}, {"C:e.txt", "?"}, {"f.txt", "good"}},
       {"f=good", "! archive-path-unsafe", "! archive-path-unsafe", "! archive-path-unsafe", "! archive-path-unsafe", "! archive-path-unsafe"},
       5},
      {"dots that climb nowhere", {{"a..b/...c.txt", "?"}, {"a..b/c..txt", "one"}}, {"c.=one"}},
      {"a .zip file inside", {{"in.zip", zipped({{"a.txt", "one"}})}, {"b.txt", "two"}}, {"b=two", "! archive-nested"}, 1},
      {"nothing but folders", {{"a/", ""}}, {"! archive-empty"}, 1},
      {"what cannot be read",
       {{"a.doc", "?"}, {"b.png", "?"}, {"c.docm", "?"}, {"d.xyz", "?"}, {"e.docx", "?"}, {"f.txt", "good"}},
       {"f=good", "! document-other-format", "! document-picture", "! document-macros", "! ending-unknown", "! document-damaged"},
       5},
      {"a bomb inside", {{"a.txt", std::string(100'000'000, 'x')}, {"b.txt", "two"}}, {"b=two", "! archive-too-large"}, 1},
  };
  for (const Row& row : rows) {
    EXPECT_EQ(all({put("class.zip", zipped(row.parts))}), row.expected) << row.name;
    EXPECT_EQ(failed, row.failed) << row.name;
  }
  EXPECT_EQ(all({put("class.zip", zipped({{"a.txt", "one"}}, true))}), (Strings{"! document-protected"}));
  EXPECT_EQ(findings[0].file, path + "/class.zip/a.txt");
  EXPECT_EQ(all({put("class.zip", "no archive")}), (Strings{"! document-damaged"}));
}

TEST_F(Folder, FoldersOfAnyMix) {
  put("a.docx", kDocx);
  put("b.zip", zipped({{"x.txt", "packed"}}));
  put("c.csv", "Name,Answer\nAnna,in a table\n");
  put("d.md", "plain");
  put("e.doc", "?");
  put(".hidden.docx", "?");
  put("~$a.docx", "?");
  EXPECT_EQ(all({path}), (Strings{"a=in a document", "x=packed", "Anna=in a table", "d=plain", "! document-other-format"}));
  EXPECT_EQ(failed, 1U);
}

TEST_F(Folder, ManyEntriesAreRefused) {
  test::Parts parts;
  for (int i = 0; i < 10'001; ++i) parts.emplace_back(std::to_string(i) + ".txt", "");
  EXPECT_EQ(all({put("many.zip", zipped(parts))}), (Strings{"! archive-too-many"}));
}

TEST_F(Folder, NamesInsideAZipFileGiveWayToCodes) {
  std::string file = put("class.zip", zipped({{"Anna/draft.txt", "one"}, {"Ben.jpg", "?"}, {"Cara.docx", "?"}}));
  Result<Pseudonyms> codes = Pseudonyms::open(path + "/key.csv");
  ASSERT_TRUE(codes.ok());
  IntakeOptions options;
  options.pseudonyms = &*codes;
  std::string out;
  for (const std::string& line : all({file}, options)) out += line + "\n";
  for (const Finding& finding : findings) out += describe(finding, {}) + "\n";
  for (const char* name : {"Anna", "Ben", "Cara"}) EXPECT_EQ(out.find(name), std::string::npos) << out;
  EXPECT_NE(out.find(codes->code("Cara") + ".docx"), std::string::npos) << out;
}

// Damage of every kind ends in an answer or a finding, and in nothing else.
TEST_F(Folder, ZipFilesCutAnywhereOrWithAnyBitTurned) {
  const std::string whole = zipped({{"a.txt", "hang the spring"}, {"b.docx", kDocx}, {"c.csv", "Name,Answer\nAnna,three\n"}});
  std::size_t tried = 0;
  std::size_t answers = 0;
  std::size_t faults = 0;
  auto attempt = [&](std::string_view bytes) {
    Strings got = all({put("d.zip", std::string(bytes))});
    EXPECT_FALSE(got.empty());
    answers += got.size() - findings.size();
    faults += failed;
    ++tried;
  };
  for (std::size_t size = 0; size < whole.size(); ++size) attempt(std::string_view(whole).substr(0, size));
  for (std::size_t bit = 0; bit < whole.size() * 8; bit += 3) {
    std::string turned = whole;
    turned[bit / 8] = static_cast<char>(turned[bit / 8] ^ (1 << (bit % 8)));
    attempt(turned);
  }
  std::cout << ".zip: " << tried << " damaged files read: " << answers << " answers, " << faults << " faults named\n";
  EXPECT_GT(tried, 3000U);
}

}  // namespace
}  // namespace retort
