// Files in: whole reads with a limit. Nothing here is kept beyond the call.
#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "base/result.h"

namespace retort {

// The content of a file of at most `limit` bytes.
Result<std::string> read_file(const std::string& path, std::size_t limit);

// The regular files of a folder and its subfolders, sorted by name; hidden ones are left out.
Result<std::vector<std::string>> list_folder(const std::string& path);

}  // namespace retort
