// The lines of all inputs of a command, in order, in memory that does not grow.
#pragma once
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/finding.h"
#include "intake/files.h"
#include "intake/line_reader.h"

namespace retort {

class LineSource {
 public:
  // `inputs`: files, "-" for standard input. None: standard input. Lines of more than `longest` bytes are passed over.
  LineSource(std::vector<std::string> inputs, std::size_t longest);

  // The next line that is not blank; false at the end. Faults are added to `findings` and do not stop the rest.
  bool next(std::string& line, Findings& findings);
  // Whether next() can answer at once.
  [[nodiscard]] bool ready() const { return lines_ != nullptr && lines_->buffered(); }
  // Of the line last got: its file as the user named it, and its number there, from 1.
  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] std::size_t number() const { return lines_ == nullptr ? 0 : lines_->number(); }
  [[nodiscard]] std::size_t failed() const { return failed_; }

 private:
  bool open(Findings& findings);
  void fail(Finding finding, Findings& findings);

  std::vector<std::string> inputs_;  // still to do, last first
  std::size_t longest_;
  Descriptor file_;
  std::unique_ptr<LineReader> lines_;
  std::string name_;
  std::size_t failed_ = 0;
};

}  // namespace retort
