#include "intake/pseudonyms.h"

#include <sys/stat.h>

#include <set>

#include "../support.h"
#include "folder.h"
#include "intake/answers.h"

namespace retort {
namespace {

using test::Folder;
using test::Strings;

class KeyFile : public Folder {
 protected:
  std::string key() { return path + "/key.csv"; }
  Pseudonyms open() {
    Result<Pseudonyms> opened = Pseudonyms::open(key());
    EXPECT_TRUE(opened.ok());
    return std::move(opened).value();
  }
};

TEST_F(KeyFile, CodesStayTheSameFromRunToRun) {
  const Strings labels = {"Anna", "Ben, B.", "Ca\"ra", "  Dee  ", "\xC3\x89lo\xC3\xAFse", "bad\xFF", "label", "two\nlines", ".", " "};
  std::map<std::string, std::string> first;
  Pseudonyms codes = open();
  for (const std::string& label : labels) first[label] = codes.code(label);
  ASSERT_TRUE(codes.save().ok());
  Pseudonyms again = open();
  std::set<std::string> different;
  for (auto label = labels.rbegin(); label != labels.rend(); ++label) {
    EXPECT_EQ(again.code(*label), first[*label]) << *label;
    different.insert(first[*label]);
  }
  EXPECT_EQ(different.size(), labels.size());
}

TEST_F(KeyFile, IsReadableByItsOwnerAlone) {
  Pseudonyms codes = open();
  codes.code("Anna");
  ASSERT_TRUE(codes.save().ok());
  struct stat info {};
  ASSERT_EQ(::stat(key().c_str(), &info), 0);
  EXPECT_EQ(info.st_mode & 0777, 0600U);
}

TEST_F(KeyFile, NothingNewWritesNothing) {
  ASSERT_TRUE(open().save().ok());
  EXPECT_FALSE(std::filesystem::exists(key()));
}

TEST_F(KeyFile, CodesAreDrawnAndGrowALength) {
  Pseudonyms codes = open();
  std::set<std::string> first;
  Strings in_order;
  for (int i = 0; i < 1200; ++i) {
    in_order.push_back(codes.code("pupil " + std::to_string(i)));
    if (i < 99) first.insert(in_order.back());
  }
  EXPECT_EQ(std::set<std::string>(in_order.begin(), in_order.end()).size(), 1200U);
  EXPECT_EQ(*first.begin(), "P01");
  EXPECT_EQ(*first.rbegin(), "P99");
  EXPECT_FALSE(std::is_sorted(in_order.begin(), in_order.begin() + 99));  // once in 99! it would be
  EXPECT_EQ(in_order[99].size(), 4U);
}

struct BadRow {
  const char* name;
  const char* content;
  Code code;
};

TEST_F(KeyFile, FaultsAreRefused) {
  const BadRow rows[] = {
      {"no code", "label,code\nAnna,P01\nBen\n", Code::key_file_bad},
      {"empty label", "label,code\n,P01\n", Code::key_file_bad},
      {"code twice", "label,code\nAnna,P01\nBen,P01\n", Code::key_file_repeated},
      {"label twice", "label,code\nAnna,P01\nAnna,P02\n", Code::key_file_repeated},
      {"open quote", "label,code\n\"Anna,P01\n", Code::csv_quote_open},
      {"not text", "\xFF\xFE\x41", Code::csv_not_text},
  };
  for (const BadRow& row : rows) {
    put("key.csv", row.content);
    Result<Pseudonyms> opened = Pseudonyms::open(key());
    ASSERT_FALSE(opened.ok()) << row.name;
    EXPECT_EQ(opened.finding().code, row.code) << row.name;
  }
}

TEST_F(KeyFile, ATeachersOwnCodesAreKept) {
  put("key.csv", "Anna;Red 1\r\nBen;Red 2\r\n");
  Pseudonyms codes = open();
  EXPECT_EQ(codes.code("Ben"), "Red 2");
}

TEST_F(KeyFile, NamesStandNowhereInWhatComesOut) {
  put("class/Anna.txt", "one");
  put("class/Ben/draft.txt", "two");
  put("class/Cara/draft.txt", "three");
  put("class/Dee.xyz", "?");
  put("class/all.jsonl", "{\"id\": \"Eve\", \"text\": \"four\", \"name\": \"Eve Example\"}\n{\"text\": \"five\"}\n");
  Pseudonyms codes = open();
  IntakeOptions options;
  options.pseudonyms = &codes;
  AnswerStream stream({path + "/class"}, options);
  Answer answer;
  std::string all;
  while (stream.next(answer, findings)) all += answer.id + "|" + answer.origin + "|" + answer.extra + "\n";
  for (const Finding& finding : findings) all += finding.file + "\n";
  for (const char* name : {"Anna", "Ben", "Cara", "Dee", "Eve"}) EXPECT_EQ(all.find(name), std::string::npos) << name << " in " << all;
  EXPECT_NE(all.find(codes.code("Ben/draft") + "|" + path + "/class/" + codes.code("Ben/draft") + ".txt"), std::string::npos) << all;
  EXPECT_NE(all.find("line 2|"), std::string::npos) << all;
}

TEST_F(Folder, SameNamesInFoldersAreToldApart) {
  put("a/draft.txt", "1");
  put("b/draft.txt", "2");
  put("b/draft.md", "3");
  put("c/only.txt", "4");
  EXPECT_EQ(all({path}), (Strings{"a/draft=1", "b/draft.md=3", "b/draft.txt=2", "only=4"}));
}

}  // namespace
}  // namespace retort
