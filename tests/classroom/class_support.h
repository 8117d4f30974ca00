// A small rubric and drafts for it, for the tests of the class picture.
#pragma once
#include "../support.h"
#include "base/messages.h"
#include "classroom/draft.h"

namespace retort::test {

// Three core steps (apple, pear, plum) and one that is not (nut). A step is present by its own word, vague by that word's initial
// written twice ("aa", "pp", "mm", "nn").
inline const Small& fruit() {
  static const Small small(
      R"({"format": 1, "id": "small", "title": "Fruit", "question": "Say which of all the many fruits you would like to put in the basket.", "steps": [
    {"id": "apple", "title": "An apple", "facet": "set-up", "core": true, "hint": "What is round?", "present": ["apple"], "vague": ["'aa'"], "lacks": "Which?",
     "examples": {"present": ["Take an apple.", "apple first"], "vague": ["aa"], "missing": ["no"]}},
    {"id": "pear", "title": "A pear", "facet": "set-up", "core": true, "hint": "What is green?", "present": ["pear"], "vague": ["'pp'"]},
    {"id": "plum", "title": "A plum", "facet": "set-up", "core": true, "hint": "What is blue?", "present": ["plum"], "vague": ["'mm'"]},
    {"id": "nut", "title": "A nut", "facet": "set-up", "hint": "What is hard?", "present": ["walnut"], "vague": ["'nn'"]}]})");
  return small;
}

inline classroom::Draft draft(const std::string& label, const std::string& text) {
  return {label, text, fruit().review(text), {}};
}

// Drafts a, b, c, ... with these texts.
inline std::vector<classroom::Draft> drafts(const std::vector<std::string>& texts) {
  std::vector<classroom::Draft> out;
  for (const std::string& text : texts) out.push_back(draft(std::string(1, static_cast<char>('a' + out.size())), text));
  return out;
}

// The labels of these drafts, run together.
inline std::string labels(const std::vector<classroom::Draft>& drafts, const std::vector<std::size_t>& who) {
  std::string out;
  for (std::size_t i : who) out += drafts[i].label;
  return out;
}

}  // namespace retort::test
