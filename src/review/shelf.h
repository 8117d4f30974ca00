// All rubrics of a folder, made ready at once.
#pragma once
#include <string>
#include <vector>

#include "review/checker.h"

namespace retort {

struct Shelved {
  std::string name;    // the rubric's file
  Checker::Made made;
};

// Whether the content of a file is that of a rubric (and not of a vocabulary, a set of patterns or a schema).
bool looks_like_rubric(const std::string& name, std::string_view content);

// Makes all rubrics of `files` ready, in the order of their names, on up to `threads` threads. What stands in
// `files` and `real_words` must outlive the result.
std::vector<Shelved> shelve(const SourceFiles& files, std::string_view real_words, unsigned threads);

}  // namespace retort
