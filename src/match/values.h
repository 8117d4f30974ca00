// Specific values checked against the question's table: lists, ranges with a step, "go up in one point
// fives", other units of the same quantity, 100 g for about 1 N, "the same for 25, 35 ...".
#pragma once
#include <string>
#include <vector>

#include "match/program.h"

namespace retort {

struct ValuesVerdict {
  StepStatus status = StepStatus::missing;
  std::vector<Sighting> evidence;  // slots; concept ids mean nothing here
  std::string note;                // what is wrong or lacking; empty if nothing
};

// Judges the answer's values and adds sightings of the reserved lists (numbers, table values, ...) to
// `sightings`, which holds what the vocabulary made and nothing else yet. `quantities` are the answer's, `flags` the slots' scopes.
ValuesVerdict find_values(const Program& program, const Document& document, const std::vector<Slot>& slots,
                          const std::vector<Quantity>& quantities, const std::vector<std::uint8_t>& flags,
                          std::vector<Sighting>& sightings);

}  // namespace retort
