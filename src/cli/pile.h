// What `moderate` takes in, one piece after the other: lines of JSON as they are, and answers from other files.
#pragma once
#include <memory>
#include <string>
#include <vector>

#include "intake/answers.h"
#include "intake/line_source.h"

namespace retort::cli {

struct Piece {
  std::string line;  // of JSON; empty: `answer` holds one
  Answer answer;
  std::string file;  // where the line stands
  std::size_t number = 0;
  std::int64_t place = 0;  // how many pieces came before
};

class Pile {
 public:
  // Files ending in .jsonl or .json and standard input hold lines of JSON; other files are read as answers with `options`.
  Pile(std::vector<std::string> inputs, IntakeOptions options);

  bool next(Piece& out, Findings& findings);
  [[nodiscard]] bool ready() const { return lines_ ? lines_->ready() : answers_ && answers_->ready(); }
  // How many inputs, lines or answers could not be read.
  [[nodiscard]] std::size_t failed() const;

 private:
  bool take(Piece& out, Findings& findings);

  std::vector<std::string> inputs_;  // still to do, last first
  IntakeOptions options_;
  std::unique_ptr<LineSource> lines_;
  std::unique_ptr<AnswerStream> answers_;
  std::int64_t count_ = 0;
  std::size_t failed_ = 0;
};

}  // namespace retort::cli
