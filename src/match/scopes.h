// What stretches of an answer are not to be taken as said: denied, dismissed, taken back, copied from the
// question, or only listed as apparatus.
#pragma once
#include <cstdint>
#include <vector>

#include "match/program.h"

namespace retort {

enum SlotFlag : std::uint8_t {
  kDenied = 1,   // "I wouldn't bother repeating"
  kCopied = 2,   // the question's own words
  kListed = 4,   // "Equipment: ruler, stand"
  kMarker = 8,   // the number of a list item
};

// Sets `flags` (one for each slot).
void find_scopes(const Program& program, const Document& document, const std::vector<Slot>& slots,
                 const std::vector<Sighting>& sightings, std::vector<std::uint8_t>& flags);

}  // namespace retort
