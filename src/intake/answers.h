// All inputs of a command, one answer after the other, in order.
#pragma once
#include <memory>
#include <string>
#include <variant>
#include <vector>

#include "intake/answer.h"
#include "intake/line_reader.h"

namespace retort {

class AnswerStream {
 public:
  // INPUTs as named on the command line: files, folders, "-". None: standard input.
  explicit AnswerStream(std::vector<std::string> inputs);
  ~AnswerStream();
  AnswerStream(const AnswerStream&) = delete;
  AnswerStream& operator=(const AnswerStream&) = delete;

  // The next answer; false at the end. Findings met on the way are added; faults of one input do not stop
  // the others.
  bool next(Answer& out, Findings& findings);

  // Whether next() can answer at once, without waiting for more input.
  [[nodiscard]] bool ready() const;
  // How many inputs or lines could not be used.
  [[nodiscard]] std::size_t failed() const { return failed_; }

 private:
  bool open(const std::string& input, Answer& out, Findings& findings);
  bool open_descriptor(int fd, const std::string& name, Answer& out, Findings& findings);
  bool next_line(Answer& out, Findings& findings);
  bool whole(const std::string& path, Answer& out, Findings& findings);
  bool whole_from_lines(const std::string& name, Answer& out, Findings& findings);
  void expand(const std::string& folder, Findings& findings);
  void fail(Finding finding, Findings& findings);
  void close();

  std::vector<std::string> inputs_;  // still to do, last first
  int fd_ = -1;
  std::string name_;
  std::unique_ptr<LineReader> lines_;
  std::size_t failed_ = 0;
};

}  // namespace retort
