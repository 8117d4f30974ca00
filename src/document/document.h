// Word processors' files → text: paragraphs a line each, cells of a table parted by tabs, raised and lowered signs and
// equations written in a line, notes at the end.
//
// Insertions of tracked changes are kept and deletions left out; hidden text, comments, headers, footers, the
// instructions of fields and prompts of forms are left out. Macros are never looked at.
// Formats: OOXML WordprocessingML (ECMA-376) and OpenDocument text (ISO/IEC 26300).
#pragma once
#include <string>

#include "document/package.h"

namespace retort {

// Reads a .docx file from `fd`, which must be able to seek and stays the caller's. `file` stands for it in findings.
// Fails if it is damaged, locked, over a limit or something else; `findings` gets what is odd about it.
Result<std::string> read_docx(int fd, const std::string& file, Findings& findings, const DocumentLimits& limits = {});

// The same for an .odt file.
Result<std::string> read_odt(int fd, const std::string& file, Findings& findings, const DocumentLimits& limits = {});

}  // namespace retort
