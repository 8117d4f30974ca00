// PDF files with a text layer, read by poppler's pdftotext in a process of its own.
#pragma once
#include <string>
#include <string_view>

#include "base/result.h"
#include "intake/child_process.h"

namespace retort {

// The text of the PDF file open as `fd`, which stays the caller's; lines that were only wrapped are joined. `reader` is the
// program, found in PATH if it has no slash. `file` stands for the file in findings.
Result<std::string> read_pdf(int fd, const std::string& file, const std::string& reader, const ChildLimits& limits = {});

// Joins lines with the next one where the next one's first word would not have fitted behind them, as far as the number of
// characters tells.
std::string join_wrapped(std::string_view text);

// A raised exponent comes out of a PDF file in the line: "x 10-3". Marks it: "x 10^-3". Only where a minus stands, since "x 103" may be meant.
std::string mark_powers(std::string_view text);

}  // namespace retort
