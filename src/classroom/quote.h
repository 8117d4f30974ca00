// A short quote around the words that earned a step.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "base/span.h"

namespace retort::classroom {

inline constexpr std::size_t kLongestQuote = 160;  // bytes

// The sentence or line around `evidence` (bytes of `text`, in order) if it is short enough; else the words from the first to the
// last of the evidence; else the first of it, cut at a letter. Spaces and list marks around it are left out, line breaks within
// are spaces. Empty if there is no evidence.
std::string quote(std::string_view text, const std::vector<Span>& evidence);

// `text` on one line, cut at the border of a letter with "..." if it is too long.
std::string one_line(std::string_view text, std::size_t longest = kLongestQuote);

}  // namespace retort::classroom
