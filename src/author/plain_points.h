// Marking points as a teacher types them, one a line, read into plain data.
//
//   Title: Cooling of soup
//   Question: Describe how ... [6 marks]
//   Table: time 2 min, 4 min, 6 min
//   - measure the starting temperature with a thermometer
//   * stir before each reading [1 mark]
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "base/finding.h"

namespace retort::author {

struct PlainPoint {
  std::string text;  // the whole, without bullet, number or "[1 mark]"
  bool core = true;  // not marked "(extra)"
  Span span;         // of the line's text in the file
};

struct PlainPoints {
  std::string title;
  std::string question;
  std::string quantity;             // of the question's table
  std::vector<std::string> values;  // "1.5 N"
  std::vector<PlainPoint> points;
};

// "a stop clock / stopwatch", "measure it or record it": each by itself, with what stands before the first in common left out.
std::vector<std::string> alternatives(const std::string& text);

// Reads `content` (the file `name`). Lines that cannot be used are told in `findings`; the others are read.
PlainPoints read_plain_points(std::string_view content, const std::string& name, Findings& findings);

}  // namespace retort::author
