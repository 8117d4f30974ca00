#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "folder.h"
#include "intake/files.h"
#include "intake/line_reader.h"

namespace retort {
namespace {

using test::Folder;
using test::Strings;

TEST_F(Folder, TextFilesAreOneAnswerEachInTheOrderOfTheirNames) {
  put("b.txt", "two");
  put("a.md", "one\r\n");
  put("sub/c.txt", "three");
  put(".hidden.txt", "no");
  EXPECT_EQ(all({path}), (Strings{"a=one\r\n", "b=two", "c=three"}));
  EXPECT_EQ(failed, 0U);
}

TEST_F(Folder, BadInputsAreNamedAndTheRestGoesOn) {
  std::string jsonl = put("c.jsonl", "{\"id\": \"x\", \"text\": \"good\"}\n{\"id\": 3}\nnot json\n\n[1]\n{\"text\": 5}\n{\"text\": \"last\"}");
  std::string text = put("d.txt", "fine");
  std::string other = put("e.xyz", "?");
  EXPECT_EQ(all({jsonl, path + "/none.txt", other, text}),
            (Strings{"x=good", "line 7=last", "d=fine", "! answer-no-text", "! json-syntax", "! json-not-object", "! answer-text-not-string",
                     "! file-missing", "! ending-unknown"}));
  EXPECT_EQ(failed, 6U);
}

TEST_F(Folder, LongLinesAndLongAnswersArePassedOver) {
  std::string long_line(kLongestLine + 10, 'x');
  std::string long_answer(kLongestAnswer + 10, 'y');
  std::string jsonl = put("a.jsonl", "{\"id\": \"1\", \"text\": \"a\"}\n" + long_line + "\n{\"id\": \"2\", \"text\": \"" + long_answer +
                                         "\"}\n{\"id\": \"3\", \"text\": \"b\"}\n");
  EXPECT_EQ(all({jsonl}), (Strings{"1=a", "3=b", "! line-too-long", "! answer-too-long"}));
}

TEST_F(Folder, DeepJsonIsRefused) {
  std::string deep = put("a.jsonl", "{\"id\": " + std::string(100000, '[') + "\n{\"id\": \"2\", \"text\": \"b\"}\n");
  EXPECT_EQ(all({deep}), (Strings{"2=b", "! json-too-deep"}));
}

TEST_F(Folder, EmptyFoldersAreNamed) {
  EXPECT_EQ(all({path}), (Strings{"! folder-empty"}));
}

TEST_F(Folder, MarksGroupsAndOtherKeysAreKept) {
  Answer answer;
  ASSERT_TRUE(read_answer_line(R"({"id": 5, "text": "t", "group": "9B", "mark": 4, "mark2": 200, "z": [1, {"a": null}], "y": "é"})", "f", 1, answer,
                               findings));
  EXPECT_EQ(answer.id, "5");
  EXPECT_EQ(answer.group, "9B");
  EXPECT_EQ(answer.mark, 4);
  EXPECT_EQ(answer.mark2, -1);
  EXPECT_EQ(answer.extra, R"({"z":[1, {"a": null}],"y":"é"})");
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].code, Code::answer_mark_bad);
}

TEST_F(Folder, LimitsHold) {
  std::string file = put("big.txt", std::string(1000, 'x'));
  EXPECT_EQ(read_file(file, 10).finding().code, Code::file_too_large);
  EXPECT_EQ(read_file("/dev/zero", 100000).finding().code, Code::file_too_large);
  EXPECT_EQ(read_file(path + "/none", 10).finding().code, Code::file_missing);
}

TEST_F(Folder, LineReaderCutsLinesAnywhereItReads) {
  for (std::size_t size : {1U, 65535U, 65536U, 65537U, 200000U}) {
    std::string file = put("lines", std::string(size, 'a') + "\r\n\nb");
    int fd = ::open(file.c_str(), O_RDONLY);
    LineReader lines(fd, 1U << 20);
    std::string_view line;
    ASSERT_EQ(lines.next(line), LineReader::Got::line);
    EXPECT_EQ(line.size(), size);
    ASSERT_EQ(lines.next(line), LineReader::Got::line);
    EXPECT_TRUE(line.empty());
    ASSERT_EQ(lines.next(line), LineReader::Got::line);
    EXPECT_EQ(line, "b");
    EXPECT_EQ(lines.next(line), LineReader::Got::end);
    EXPECT_EQ(lines.number(), 3U);
    ::close(fd);
  }
}

}  // namespace
}  // namespace retort
