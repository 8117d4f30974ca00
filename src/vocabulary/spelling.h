// Spelling as bad as pupils': how far two words are apart, and how they sound.
#pragma once
#include <cstdint>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace retort {

// Optimal string alignment distance (insert, delete, replace, swap of neighbours), or `limit` + 1 if
// it is more than `limit`. Source: common knowledge (restricted Damerau-Levenshtein).
int edit_distance(std::string_view a, std::string_view b, int limit);

// How a folded word sounds, roughly: consonants with silent and doubled ones dropped, no inner vowels.
// A rule of our own for pupils' spelling: "tempreture" and "temperature" sound alike, "acselaration" and
// "acceleration" too.
std::string sound_key(std::string_view folded);

// The known words near a misspelt one.
class Speller {
 public:
  struct Candidate {
    std::string word;
    std::string stem;
    std::uint32_t letters = 0;  // which of a..z occur
    std::uint32_t id = 0;
    bool real = true;           // an English word, not a misspelling that a list names
  };

  // `letters` is worked out here.
  void add(Candidate candidate);

  // The sounds of candidates, worked out when first needed. Threads: one for each.
  class Sounds {
   public:
    struct Pair {
      std::string word;
      std::string stem;
    };
    const Pair& of(const Candidate& candidate, std::size_t index);

   private:
    std::vector<Pair> known_;
  };

  static constexpr std::uint32_t kNone = 0xFFFFFFFF;
  // The id of the one best candidate for `word` (folded, stem given), or kNone. English words go before
  // misspellings; a tie between two ids is no answer. Time: one pass over the candidates, most passed over by a glance at their letters.
  // `counts` says of a near candidate whether it may be the answer.
  [[nodiscard]] std::uint32_t best(std::string_view word, std::string_view stem, Sounds& sounds,
                                   const std::function<bool(const Candidate&)>& counts = {}) const;

  [[nodiscard]] const std::vector<Candidate>& candidates() const { return candidates_; }

 private:
  std::vector<Candidate> candidates_;
};

}  // namespace retort
