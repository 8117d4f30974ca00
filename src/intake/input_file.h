// One input file on its way in: where it is, what it is called, whose it is.
#pragma once
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "document/archive.h"
#include "intake/files.h"
#include "intake/options.h"

namespace retort {

struct InputFile {
  std::string path;                            // to open it
  std::string root;                            // how the user named the folder that holds it, with its slash; "" if none
  std::string rest;                            // the path from there on
  std::string label;                           // the pupil's: the file's name without ending
  std::shared_ptr<Archive> archive = nullptr;  // that holds it, if it is packed in a .zip file
  std::uint64_t entry = 0;                     // of that archive
  std::shared_ptr<const std::string> content = nullptr;  // all of it, if it never was on a disk
};

// A file as named on the command line.
InputFile file_named(const std::string& path);
// A file that was sent, not named: `name` may be anything, and no file is opened by it.
InputFile file_in_memory(const std::string& name, std::string content);
// The files `names` (paths below `root`, which ends in a slash). Where two would have the same label, the folders below
// `root` belong to it, then the ending too.
std::vector<InputFile> files_below(const std::string& root, const std::vector<std::string>& names);

// The ending in small letters with its dot; "" if there is none.
std::string ending_of(std::string_view path);

// Opens `file` to be read from its start, unpacked into memory if it is packed; findings call it `name`.
Result<Descriptor> open_input_file(const InputFile& file, const std::string& name);

// How findings name `file`: its path; with codes its label gives place to its code.
std::string shown_name(const InputFile& file, const IntakeOptions& options);

}  // namespace retort
