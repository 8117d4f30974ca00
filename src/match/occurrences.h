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
  static constexpr std::uint32_t kNone = 0xFFFFFFFF;

  void bare(ConceptId id, View view, std::vector<Occurrence>& out) const;
  void run(Range pattern, View view, std::vector<Occurrence>& out);
  bool run_part(Range part, View view, std::vector<Occurrence>& out);
  bool follow(const std::vector<Occurrence>& before, const std::vector<Occurrence>& items, std::uint32_t gap,
              std::vector<Occurrence>& out) const;
  void beside(const std::vector<Occurrence>& a, const std::vector<Occurrence>& b, std::vector<Occurrence>& out) const;
  // No sighting and no pattern: it cannot occur.
  [[nodiscard]] bool absent(ConceptId id) const { return !sighted(id) && !made_of_patterns_[id]; }
  [[nodiscard]] bool sighted(ConceptId id) const { return seen_in_[id] == answer_; }
  [[nodiscard]] bool any_absent(Range pattern) const;
  [[nodiscard]] View plain(View view) const;
  [[nodiscard]] bool counts(const Occurrence& occurrence, View view) const;
  // In a list of short answers a comma parts what must stand together: "weight is independent, extension dependent".
  [[nodiscard]] bool short_answer() const { return program_.rubric->kind == RubricKind::points; }
  [[nodiscard]] std::uint32_t between(std::uint32_t left_last, std::uint32_t right_first) const {
    return slots_[right_first].position - slots_[left_last].position - 1;
  }

  const Program& program_;
  std::span<const Slot> slots_;
  std::span<const std::uint8_t> flags_;
  std::uint32_t answer_ = 0;                 // the answer's number: what was made in it counts
  bool denied_ = false;                      // whether any slot is
  bool listed_ = false;
  // A concept's sightings are chained, the last first; only what an answer touches is written.
  std::vector<std::uint32_t> seen_in_;       // by concept: the last answer it was sighted in
  std::vector<std::uint32_t> last_;          // by concept: its last sighting in that answer
  std::vector<std::uint32_t> before_;        // by sighting: the one before of the same concept
  std::span<const Sighting> sightings_;
  std::vector<std::uint8_t> made_of_patterns_;         // by concept
  std::vector<std::uint32_t> made_in_[kViews];         // by concept: the answer its list is of
  std::vector<std::vector<Occurrence>> lists_[kViews]; // by concept
  std::vector<Occurrence> none_;

  // Buffers that are used again, since run() calls itself by way of find().
  class Buffer {
   public:
    explicit Buffer(Occurrences& owner) : owner_(owner) {
      if (!owner.buffers_.empty()) {
        list.swap(owner.buffers_.back());
        owner.buffers_.pop_back();
      }
      list.clear();
    }
    ~Buffer() { owner_.buffers_.push_back(std::move(list)); }
    Buffer(const Buffer&) = delete;
    Buffer& operator=(const Buffer&) = delete;
    std::vector<Occurrence> list;

   private:
    Occurrences& owner_;
  };
  std::vector<std::vector<Occurrence>> buffers_;
};

}  // namespace retort
