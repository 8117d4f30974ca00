// The heading of a table's column: what is measured, in which unit, and which repeat it is.
// "Force / N", "Force (N)", "Force in N", "length, cm", "T² / s²", "Time 2 / s", "Mean time / s", "run 1".
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "quantity/compound.h"

namespace retort::results {

enum class ColumnRole {
  reading,      // of a quantity
  mean,         // the pupil's own mean
  uncertainty,  // a range or an uncertainty of the pupil's own
  label,        // the number of the run, not a reading
};

struct Heading {
  std::string text;      // as written, in one line
  std::string quantity;  // "Force"; without unit and number of the repeat; may be empty ("run 1")
  std::string plain;     // the same with a number at its end kept ("Time 1", "v1")
  std::string unit;      // its symbol, as it should be written if it is known; empty if there is none
  std::optional<CompoundUnit> compound;  // none if there is no unit or it is not known
  int repeat = 0;        // from 1; 0 if the heading names none
  ColumnRole role = ColumnRole::reading;
};

// Reads a heading. Never fails: what is not understood is part of the quantity's name.
Heading read_heading(std::string_view text);

// In small ASCII letters, one space between words: for comparing names.
std::string folded(std::string_view text);

// Whether the words of `words` stand in `text` one after the other, both folded.
bool has_words(std::string_view text, std::string_view words);

// A unit alone, perhaps in brackets or behind a slash: "(N)", "/ cm", "s".
bool is_unit_alone(std::string_view text);

}  // namespace retort::results
