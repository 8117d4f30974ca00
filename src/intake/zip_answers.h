// A .zip file of answers, as if it were a folder.
#pragma once
#include <string>
#include <vector>

#include "intake/input_file.h"

namespace retort {

// The files packed in `file` (open, called `name` in findings), sorted by name. Hidden ones and what systems leave lying there are
// left out. Entries whose names lead out of the archive are refused, each with a finding.
Result<std::vector<InputFile>> files_in_zip(const Descriptor& file, const std::string& name, Findings& findings);

}  // namespace retort
