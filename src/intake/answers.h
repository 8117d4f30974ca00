// All inputs of a command, one answer after the other, in order.
#pragma once
#include <memory>
#include <string>
#include <vector>

#include "intake/answer.h"
#include "intake/endings.h"
#include "intake/input_file.h"
#include "intake/options.h"
#include "intake/source.h"

namespace retort {

class AnswerStream {
 public:
  // INPUTs as named on the command line: files, folders, "-". None: standard input.
  explicit AnswerStream(std::vector<std::string> inputs, IntakeOptions options = {});
  // One file that is in hand.
  AnswerStream(IntakeOptions options, InputFile file);
  AnswerStream(const AnswerStream&) = delete;
  AnswerStream& operator=(const AnswerStream&) = delete;

  // The next answer; false at the end. Findings met on the way are added; faults of one input do not stop
  // the others.
  bool next(Answer& out, Findings& findings);

  // Whether next() can answer at once, without waiting for more input.
  [[nodiscard]] bool ready() const;
  // How many inputs, lines or rows could not be used.
  [[nodiscard]] std::size_t failed() const { return failed_ + (source_ ? source_->failed() : 0); }

 private:
  bool open_input(const std::string& input, Answer& out, Findings& findings);
  bool open_standard_input(Answer& out, Findings& findings);
  bool open_file_input(const InputFile& file, Answer& out, Findings& findings);
  void open_many(const InputFile& file, FileKind kind, Findings& findings);
  bool open_single(const InputFile& file, FileKind kind, Answer& out, Findings& findings);
  [[nodiscard]] Result<std::string> read_single(const InputFile& file, FileKind kind, const std::string& name, Findings& findings) const;
  void expand_zip(const Descriptor& opened, const std::string& name, Findings& findings);
  void take_files(std::vector<InputFile> files);
  void expand(const std::string& folder, Findings& findings);
  void fail(Finding finding, Findings& findings);
  void close();

  IntakeOptions options_;
  std::vector<std::string> inputs_;  // still to do, last first
  std::vector<InputFile> files_;     // of the folder at hand, last first
  std::unique_ptr<AnswerSource> source_;
  std::size_t failed_ = 0;
};

}  // namespace retort
