// Rubric × Document → for each step its status, with the words that earned it.
#pragma once
#include <memory>
#include <string>
#include <vector>

#include "match/program.h"

namespace retort {

struct StepMatch {
  StepStatus status = StepStatus::missing;
  std::vector<Span> evidence;      // bytes of the source, in order, not overlapping
  std::string note;                // of a values step: what the table has
  bool without_reason = false;     // it would be present, but its reason is not given
  std::vector<Span> against;       // words that contradict it, for which it is missing; in order
};

struct OrderMatch {
  bool both = false;               // both steps are there
  bool kept = false;               // and the later one comes after the first
};

struct AnswerMatch {
  std::vector<StepMatch> steps;    // as in the rubric
  std::vector<OrderMatch> order;   // as in the rubric
  std::size_t words = 0;
  std::size_t copied_words = 0;    // of them the question's own
};

// Threads: one Matcher for each thread; the Program may be shared. Time: linear in the document.
class Matcher {
 public:
  explicit Matcher(const Program& program);
  ~Matcher();
  Matcher(Matcher&&) noexcept;
  Matcher& operator=(Matcher&&) = delete;

  AnswerMatch match(const Document& document);

  // What is heard in a document, for authors: each list sighted with its words.
  struct Heard {
    std::string list;
    Span span;
  };
  std::vector<Heard> hear(const Document& document);

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace retort
