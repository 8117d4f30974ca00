// Files in and out: whole reads with a limit, whole-or-nothing writes. Nothing here is kept in memory or
// on disk beyond the call.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace retort {

// The content of a file of at most `limit` bytes.
Result<std::string> read_file(const std::string& path, std::size_t limit);

// Writes `content` to `path`, whole or not at all: to a new file beside it, which then takes its place.
Status write_file(const std::string& path, std::string_view content);

// The regular files of a folder and its subfolders, sorted by name; hidden ones are left out.
Result<std::vector<std::string>> list_folder(const std::string& path);

}  // namespace retort
