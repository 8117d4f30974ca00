// A small memory: what "it", "that" or "them" stands for.
#pragma once
#include "match/program.h"

namespace retort {

// For each pronoun adds sightings of the quantity, the instrument and the thing last named before it.
void find_pronouns(const Program& program, const std::vector<Slot>& slots, std::vector<Sighting>& sightings);

}  // namespace retort
