// The one table of words for findings: what is wrong and what to do about it.
#pragma once
#include <string>
#include <string_view>

#include "base/finding.h"

namespace retort {

struct Message {
  Code code;
  std::string_view name;  // stable short name, used in tests and in machine-readable output
  Severity severity;
  std::string_view what;  // {0}, {1} are filled from Finding::notes
  std::string_view todo;  // what the reader can do; may be empty
};

// The entry for `code`. Every code has one.
const Message& message(Code code);

// How many entries the table has (for the test that walks it).
std::size_t message_count();

// Fills {0}.. in `pattern` from `notes`; a missing note leaves nothing.
std::string fill(std::string_view pattern, const std::vector<std::string>& notes);

// Notes on steps, as patterns for fill().
inline constexpr std::string_view kNoteContradicted = "this is said as well, and goes against it: \"{0}\"";
inline constexpr std::string_view kNoteCountsOnce = "this is the same point as \"{0}\", and counts once";

struct LineColumn {
  std::size_t line = 1;    // from 1
  std::size_t column = 1;  // from 1, counted in code points
};

// Where byte `offset` stands in `source`. Linear in `offset`: use it when printing only.
LineColumn locate(std::string_view source, std::size_t offset);

// One line for people: "file:line:column: error: what. To do: todo".
// `source` is the content of the finding's file, empty if it is not at hand (then no line is shown).
std::string describe(const Finding& finding, std::string_view source);

// A printable form of untrusted text for messages: control characters replaced, cut to `limit` bytes
// at a code point border.
std::string printable(std::string_view text, std::size_t limit = 80);

}  // namespace retort
