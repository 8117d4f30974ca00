// Every fault of a rubric at once: what loading and compiling find, patterns that can never match or match
// anything, steps without words, examples that fail.
#pragma once
#include "review/checker.h"

namespace retort {

struct LintResult {
  Findings findings;           // in the order of the files
  std::size_t examples = 0;    // how many were run
};

LintResult lint(const std::string& name, const SourceFiles& files, std::string_view real_words);

}  // namespace retort
