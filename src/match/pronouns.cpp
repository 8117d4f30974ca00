#include "match/pronouns.h"

#include <algorithm>
#include <array>

namespace retort {
namespace {

constexpr std::uint32_t kMemory = 40;  // how far back, in positions
constexpr std::size_t kKinds = 3;

// The last phrase of a kind: where it stands, and all lists that have it.
struct Last {
  std::uint32_t first = 0;
  std::uint32_t last = 0;
  std::vector<ConceptId> concepts;
};

}  // namespace

void find_pronouns(const Program& program, const std::vector<Slot>& slots, std::vector<Sighting>& sightings) {
  std::array<Last, kKinds> memory;
  std::size_t said = sightings.size();
  // "this ray", "that line": the pronoun belongs to the noun behind it.
  std::vector<bool> noun(slots.size() + 1, false);
  for (const Sighting& s : sightings) noun[s.first] = noun[s.first] || program.concepts[s.concept_id].kind != Kind::none;
  for (std::size_t i = 0; i < said; ++i) {
    const Sighting s = sightings[i];
    if (s.concept_id == kPronoun) {
      if (noun[s.last + 1] && slots[s.last + 1].joined) continue;
      for (const Last& last : memory) {
        if (last.concepts.empty() || slots[s.first].position - slots[last.last].position > kMemory) continue;
        for (ConceptId id : last.concepts) sightings.push_back({id, s.first, s.last});
      }
      continue;
    }
    Kind kind = program.concepts[s.concept_id].kind;
    if (kind == Kind::none) continue;
    Last& last = memory[static_cast<std::size_t>(kind) - 1];
    if (last.first != s.first || last.concepts.empty()) {
      if (!last.concepts.empty() && s.last <= last.last && s.first > last.first) continue;  // inside a longer phrase
      last.first = s.first;
      last.last = s.last;
      last.concepts.clear();
    }
    last.last = std::max(last.last, s.last);
    last.concepts.push_back(s.concept_id);
  }
}

}  // namespace retort
