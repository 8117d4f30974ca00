#include "cli/pile.h"

#include <algorithm>

#include "intake/input_file.h"

namespace retort::cli {
namespace {
constexpr std::size_t kLongestPiece = 16U << 20;  // a line of a tally may be longer than one with an answer
}

Pile::Pile(std::vector<std::string> inputs, IntakeOptions options) : inputs_(std::move(inputs)), options_(std::move(options)) {
  if (inputs_.empty()) inputs_.emplace_back("-");
  std::reverse(inputs_.begin(), inputs_.end());
}

std::size_t Pile::failed() const {
  return failed_ + (lines_ ? lines_->failed() : 0) + (answers_ ? answers_->failed() : 0);
}

// From the input at hand.
bool Pile::take(Piece& out, Findings& findings) {
  if (lines_ && lines_->next(out.line, findings)) {
    out.file = lines_->name();
    out.number = lines_->number();
    return true;
  }
  return answers_ && answers_->next(out.answer, findings);
}

bool Pile::next(Piece& out, Findings& findings) {
  for (;;) {
    out = Piece{};
    if (take(out, findings)) {
      out.place = count_++;
      return true;
    }
    failed_ = failed();
    lines_.reset();
    answers_.reset();
    if (inputs_.empty()) return false;
    std::string input = std::move(inputs_.back());
    inputs_.pop_back();
    std::string ending = ending_of(input);
    if (input == "-" || ending == ".jsonl" || ending == ".json")
      lines_ = std::make_unique<LineSource>(std::vector<std::string>{input}, kLongestPiece);
    else
      answers_ = std::make_unique<AnswerStream>(std::vector<std::string>{input}, options_);
  }
}

}  // namespace retort::cli
