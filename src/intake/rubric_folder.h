// Where rubrics are found, and their files as bytes for the engine.
#pragma once
#include <string>
#include <vector>

#include "base/result.h"
#include "rubric/load.h"

namespace retort {

struct RubricFolder {
  std::string path;        // of the folder
  SourceFiles files;       // its .json files by name
  std::string real_words;  // the content of real-words.txt
};

struct RubricChoice {
  RubricFolder folder;
  std::string name;        // the rubric's file in `folder.files`
};

// The folder with the rubrics that came with the program: $RETORT_RUBRICS, or beside the program.
Result<RubricFolder> open_rubrics();

// RUBRIC as given on the command line: a path, or an id in the program's folder. For a path, the files of
// its own folder are joined by those of the program's where they are not there (the vocabulary).
Result<RubricChoice> choose_rubric(const std::string& named);

}  // namespace retort
