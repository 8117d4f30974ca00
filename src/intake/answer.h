// A pupil's answer, as it came in.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "base/finding.h"

namespace retort {

inline constexpr std::size_t kLongestAnswer = 1U << 20;          // bytes; an answer has about a thousand
inline constexpr std::size_t kLongestLine = 4 * kLongestAnswer;  // of a .jsonl file: escapes take room

struct Answer {
  std::string id;
  std::string text;
  std::string origin;  // the file it came from, as the user named it
  std::string rubric;  // "" if the input does not say
  std::string group;
  int mark = -1;  // -1: none
  int mark2 = -1;
  std::string extra;     // other keys, as the JSON of an object; "" if there are none
  bool labelled = true;  // whether the input gave the id; if not, it says where the answer stood ("line 3")
};

class Pseudonyms;

// Puts the code of the label in its place, and takes out other keys, which may hold names. Does nothing without codes.
void disguise(Answer& answer, Pseudonyms* codes);

// Reads one line of .jsonl. Faults go to `findings`; with one of severity error there is no answer (false).
bool read_answer_line(std::string_view line, const std::string& file, std::size_t number, Answer& out, Findings& findings);

}  // namespace retort
