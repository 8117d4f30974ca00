#include "intake/jsonl.h"

#include <cstring>

namespace retort {
namespace {

class Jsonl : public AnswerSource {
 public:
  Jsonl(Descriptor file, std::unique_ptr<LineReader> lines, std::string name, Pseudonyms* codes)
      : file_(std::move(file)), lines_(std::move(lines)), name_(std::move(name)), codes_(codes) {}

  bool next(Answer& out, Findings& findings) override {
    std::string_view line;
    for (;;) {
      switch (lines_->next(line)) {
        case LineReader::Got::end:
          return false;
        case LineReader::Got::failed:
          fail(make_finding(Code::file_unreadable, name_, {std::strerror(lines_->error())}), findings);  // NOLINT
          return false;
        case LineReader::Got::too_long:
          fail(make_finding(Code::line_too_long, name_, {std::to_string(lines_->number()), std::to_string(kLongestLine)}), findings);
          continue;
        case LineReader::Got::line:
          break;
      }
      if (line.find_first_not_of(" \t\r") == std::string_view::npos) continue;
      if (read_answer_line(line, name_, lines_->number(), out, findings)) {
        disguise(out, codes_);
        return true;
      }
      ++failed_;
    }
  }

  [[nodiscard]] bool ready() const override { return lines_->buffered(); }

 private:
  Descriptor file_;
  std::unique_ptr<LineReader> lines_;
  std::string name_;
  Pseudonyms* codes_;
};

}  // namespace

std::unique_ptr<AnswerSource> open_jsonl(Descriptor file, std::unique_ptr<LineReader> lines, std::string name, const IntakeOptions& options) {
  return std::make_unique<Jsonl>(std::move(file), std::move(lines), std::move(name), options.pseudonyms);
}

}  // namespace retort
