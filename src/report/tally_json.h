// A tally as JSON lines, which cohort/tally_read.h reads: the same bytes for the same answers, whatever their order and split.
#pragma once
#include <string>

#include "cohort/tally.h"

namespace retort {

// One line for each rubric and one for each group of it; each is an object with "tally" (the format), "seed" and what the
// DEVELOPERS file lists. No line is longer than a line of answers may be.
std::string tally_json(const cohort::Tally& tally);

}  // namespace retort
