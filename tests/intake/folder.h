// A folder of its own for each test, and what a stream makes of it.
#pragma once
#include <unistd.h>

#include <filesystem>

#include "../support.h"
#include "base/messages.h"
#include "intake/answers.h"

namespace retort::test {

using Strings = std::vector<std::string>;

class Folder : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string name = (std::filesystem::temp_directory_path() / "retort-test-XXXXXX").string();
    path = ::mkdtemp(name.data());
  }
  void TearDown() override { std::filesystem::remove_all(path); }

  std::string put(const std::string& name, const std::string& content) {
    std::filesystem::path at = std::filesystem::path(path) / name;
    std::filesystem::create_directories(at.parent_path());
    std::ofstream(at, std::ios::binary) << content;
    return at.string();
  }

  // All answers as "id=text", then the codes of the findings.
  Strings all(Strings inputs, const IntakeOptions& options = {}) {
    AnswerStream stream(std::move(inputs), options);
    Strings out;
    findings.clear();
    Answer answer;
    while (stream.next(answer, findings)) out.push_back(answer.id + "=" + answer.text);
    for (const Finding& finding : findings) out.push_back("! " + std::string(message(finding.code).name));
    failed = stream.failed();
    return out;
  }

  std::string path;
  Findings findings;
  std::size_t failed = 0;
};

}  // namespace retort::test
