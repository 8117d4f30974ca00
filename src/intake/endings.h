// What the ending of a file's name says about how to read it, and why it cannot be read if so.
#pragma once
#include <optional>
#include <string>

#include "base/finding.h"

namespace retort {

enum class FileKind { text, docx, odt, pdf, csv, jsonl, zip };

// The kind of a file with this ending (in small letters, with its dot); none if it cannot be read.
std::optional<FileKind> kind_of(const std::string& ending);

// Why files with this ending cannot be read, and what to do.
Finding why_not(const std::string& ending, const std::string& file);

// Whether `path` (of a file below a folder) is something that systems and programs leave lying beside the pupils' files.
bool is_litter(const std::string& path);

}  // namespace retort
