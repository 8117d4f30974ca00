// Tallies from the lines that report/tally_json.h writes: each line is a part, and parts add up.
#pragma once
#include <string>

#include "cohort/tally.h"
#include "rubric/json.h"

namespace retort::cohort {

inline constexpr int kTallyFormat = 1;

// Adds the part in `object` (an object with "tally") to `into`, whole or not at all. `where` names its line in findings;
// false if it cannot be used.
bool read_tally(const json::Value& object, const std::string& where, Tally& into, Findings& findings);

}  // namespace retort::cohort
