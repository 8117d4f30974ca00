// Patterns: what a rubric's author writes to say which words earn a step. No regular expressions.
//
//   measure             a word, in any inflection and near enough in spelling
//   stop clock          words side by side
//   {length}            any wording of a word list of the vocabulary
//   (a | b c | {d})     any of these
//   X Y                 Y within a few words after X
//   X ... Y             Y farther on, within a sentence or so
//   X + Y               Y directly after X
//   X & Y               both near each other, in either order
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "base/finding.h"

namespace retort {

// The reach of "X Y", "X ... Y" and "X & Y", in words between; a sentence or line end counts as three words.
inline constexpr std::uint32_t kNear = 4;
inline constexpr std::uint32_t kFar = 14;

struct Pattern;

struct Item {
  enum class Kind { phrase, list, group } kind = Kind::phrase;
  std::string text;                 // the phrase, or the word list's name
  std::vector<Pattern> any;         // of a group
  Span span;                        // in the rubric file
  std::uint32_t gap = 0;            // how many words may stand between this item and the one before
};

struct Sequence {
  std::vector<Item> items;
};

struct Pattern {
  std::string text;                 // as written
  std::vector<Sequence> parts;      // joined by &
  Span span;
};

// Reads a pattern. `span` is the pattern's place in `file`, quotes included. Faults go to `findings`, and
// what could be read is returned.
Pattern parse_pattern(std::string_view text, Span span, const std::string& file, Findings& findings);

// Whether a wording of a word list is a pattern rather than a plain phrase.
bool is_pattern(std::string_view wording);

}  // namespace retort
