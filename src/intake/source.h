// One file that holds many answers, read one after the other.
#pragma once
#include <memory>
#include <string>

#include "intake/answer.h"
#include "intake/files.h"
#include "intake/options.h"

namespace retort {

class AnswerSource {
 public:
  AnswerSource() = default;
  AnswerSource(const AnswerSource&) = delete;
  AnswerSource& operator=(const AnswerSource&) = delete;
  virtual ~AnswerSource() = default;

  // The next answer; false at the end. Findings met on the way are added.
  virtual bool next(Answer& out, Findings& findings) = 0;
  // Whether next() can answer at once, without waiting for more input.
  [[nodiscard]] virtual bool ready() const = 0;
  // How many answers could not be read so far.
  [[nodiscard]] std::size_t failed() const { return failed_; }

 protected:
  void fail(Finding finding, Findings& findings) {
    ++failed_;
    findings.push_back(std::move(finding));
  }
  std::size_t failed_ = 0;
};

}  // namespace retort
