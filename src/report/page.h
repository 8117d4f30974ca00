// Plain text for a terminal: wrapping, and marks under the words they belong to.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/span.h"

namespace retort {

// How many columns `text` takes: one for each code point, none for combining marks, two for wide ones.
std::size_t columns(std::string_view text);

// Appends `text` wrapped to `width` columns, the first line after `first`, the others after `rest`.
void append_wrapped(std::string_view text, std::size_t width, std::string_view first, std::string_view rest, std::string& out);

// A stretch to be marked under the text.
struct Underline {
  Span span;         // bytes of the text
  std::string label; // written at its start
  char fill = '-';
};

// Appends `text` wrapped, each line with lines of marks under it. Control characters are left out.
void append_marked(std::string_view text, const std::vector<Underline>& marks, std::size_t width, std::string_view margin, std::string& out);

}  // namespace retort
