// From drafts that nearly match: words that a rubric does not know yet, each with where it was met. Nothing is added.
#pragma once
#include <string>
#include <vector>

#include "author/kinds.h"
#include "review/review.h"
#include "text/reader.h"

namespace retort::author {

struct SeenIn {
  std::string label;   // the draft's
  std::string clause;  // its words
};

// A word that stands beside a step's own words in drafts that lack the step, and that no word list hears.
struct Suggestion {
  std::size_t step = 0;
  std::string word;                 // folded
  std::vector<std::string> beside;  // the step's lists heard in the same clause
  std::size_t drafts = 0;           // how many drafts
  std::vector<SeenIn> evidence;     // the first few
};

// Collects over any number of drafts; for one thread. Memory grows with the different words met, up to a limit.
class Suggestions {
 public:
  // `kinds` says which words say nothing, and which lists are of actions that stand beside anything; both must outlive this.
  Suggestions(const Checker& checker, const PointKinds& kinds);
  ~Suggestions();
  Suggestions(const Suggestions&) = delete;
  Suggestions& operator=(const Suggestions&) = delete;

  void add(const std::string& label, const std::string& text);
  // By step, in each the words of most drafts first; at most `most` for a step, only those of at least `drafts` drafts.
  [[nodiscard]] std::vector<Suggestion> best(std::size_t most, std::size_t drafts) const;
  [[nodiscard]] std::size_t drafts() const;

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace retort::author
