// Rubric files (JSON, format 1) → a Rubric. All faults of the files are collected.
//
// The engine opens no files: their bytes come in as SourceFiles.
#pragma once
#include <map>
#include <optional>
#include <string>

#include "base/finding.h"
#include "rubric/json.h"
#include "rubric/rubric.h"

namespace retort {

inline constexpr int kRubricFormat = 1;
inline constexpr std::string_view kVocabularyFile = "vocabulary.json";

// File name → content, for one folder of rubrics.
using SourceFiles = std::map<std::string, std::string>;

// Files read once for all rubrics that include them. Threads: one at a time.
class ParsedFiles {
 public:
  struct Parsed {
    std::optional<json::Value> root;
    Findings findings;
  };
  const Parsed& parse(const std::string& name, std::string_view content);

 private:
  std::map<std::string, Parsed> known_;
};

struct Loaded {
  std::optional<Rubric> rubric;  // none if the file cannot be used at all
  Findings findings;             // Finding::file is a name in SourceFiles
};

// Loads the rubric `name` with vocabulary.json and all that it includes. A rubric with findings of
// severity error must not be used for checking.
Loaded load_rubric(const std::string& name, const SourceFiles& files);
// The same, with included files kept in `parsed` for the next rubric of the same `files`.
Loaded load_rubric(const std::string& name, const SourceFiles& files, ParsedFiles& parsed);

// Whether any finding is an error.
bool has_error(const Findings& findings);

}  // namespace retort
