// One input file on its way in: where it is, what it is called, whose it is.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "intake/options.h"

namespace retort {

struct InputFile {
  std::string path;   // to open it
  std::string root;   // how the user named the folder that holds it, with its slash; "" if none
  std::string rest;   // the path from there on
  std::string label;  // the pupil's: the file's name without ending
};

// A file as named on the command line.
InputFile file_named(const std::string& path);
// The files `names` (paths below `root`, which ends in a slash). Where two would have the same label, the folders below
// `root` belong to it, then the ending too.
std::vector<InputFile> files_below(const std::string& root, const std::vector<std::string>& names);

// The ending in small letters with its dot; "" if there is none.
std::string ending_of(std::string_view path);

// How findings name `file`: its path; with codes its label gives place to its code.
std::string shown_name(const InputFile& file, const IntakeOptions& options);

}  // namespace retort
