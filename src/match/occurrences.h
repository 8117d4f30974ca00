// Where the concepts of a Program occur in one answer. Concepts made of patterns are worked out when first
// asked for.
#pragma once
#include <cstdint>
#include <span>
#include <vector>

#include "match/program.h"

namespace retort {

struct Occurrence {
  std::uint32_t first = 0;  // slots [first, last]
  std::uint32_t last = 0;
  friend bool operator==(Occurrence, Occurrence) = default;
};

// Which words count.
enum class View : std::uint8_t {
  said,       // neither denied, copied nor merely listed
  or_listed,  // listed apparatus too
  as_is,      // denied ones too: for patterns that say themselves what is not to be
};
inline constexpr std::size_t kViews = 3;

class Occurrences {
 public:
  explicit Occurrences(const Program& program);

  // Starts a new answer. `sightings` may come in any order; `flags` has one entry for each slot.
  void reset(std::span<const Slot> slots, std::span<const Sighting> sightings, std::span<const std::uint8_t> flags);

  // The occurrences of a concept, by first slot. Good until reset().
  const std::vector<Occurrence>& find(ConceptId id, View view);

  [[nodiscard]] std::uint32_t position(std::uint32_t slot) const { return slots_[slot].position; }

 private:
  struct Entry {
    std::uint64_t made = 0;  // the answer's number, when `list` is its own
    std::vector<Occurrence> list;
  };

  void bare(ConceptId id, View view, std::vector<Occurrence>& out) const;
  void run(const PatternCode& pattern, View view, std::vector<Occurrence>& out);
  bool run_part(const PatternCode::Part& part, View view, std::vector<Occurrence>& out);
  bool follow(const std::vector<Occurrence>& before, const std::vector<Occurrence>& items, std::uint32_t gap,
              std::vector<Occurrence>& out) const;
  void beside(const std::vector<Occurrence>& a, const std::vector<Occurrence>& b, std::vector<Occurrence>& out) const;
  [[nodiscard]] bool counts(const Occurrence& occurrence, View view) const;
  [[nodiscard]] std::uint32_t between(std::uint32_t left_last, std::uint32_t right_first) const {
    return slots_[right_first].position - slots_[left_last].position - 1;
  }

  const Program& program_;
  std::span<const Slot> slots_;
  std::span<const std::uint8_t> flags_;
  std::uint64_t answer_ = 0;
  std::vector<std::uint32_t> starts_;          // by concept: where its sightings begin in `sorted_`
  std::vector<Occurrence> sorted_;
  std::vector<Entry> entries_[kViews];
};

}  // namespace retort
