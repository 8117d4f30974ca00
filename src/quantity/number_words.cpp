#include "quantity/number_words.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace retort {
namespace {

struct Entry {
  std::string_view word;
  WordValue value;
};

using enum NumberWord;

// Sorted by word; plurals and the commonest misspellings stand as entries of their own.
constexpr std::array kWords = {
    Entry{"eight", {unit, 8}},         Entry{"eighteen", {teen, 18}},  Entry{"eighty", {ten, 80}},    Entry{"eleven", {teen, 11}},
    Entry{"fifteen", {teen, 15}},      Entry{"fifty", {ten, 50}},      Entry{"five", {unit, 5}},      Entry{"fives", {unit, 5}},
    Entry{"fiveteen", {teen, 15}},     Entry{"forteen", {teen, 14}},   Entry{"forty", {ten, 40}},     Entry{"four", {unit, 4}},
    Entry{"fourteen", {teen, 14}},     Entry{"fourty", {ten, 40}},     Entry{"half", {half, 0.5}},    Entry{"hundred", {hundred, 100}},
    Entry{"hundreds", {hundred, 100}}, Entry{"nine", {unit, 9}},       Entry{"nineteen", {teen, 19}}, Entry{"ninety", {ten, 90}},
    Entry{"nought", {unit, 0}},        Entry{"one", {unit, 1}},        Entry{"point", {point, 0}},    Entry{"quarter", {quarter, 0.25}},
    Entry{"seven", {unit, 7}},         Entry{"seventeen", {teen, 17}}, Entry{"seventy", {ten, 70}},   Entry{"six", {unit, 6}},
    Entry{"sixteen", {teen, 16}},      Entry{"sixty", {ten, 60}},      Entry{"ten", {teen, 10}},      Entry{"tens", {teen, 10}},
    Entry{"thirteen", {teen, 13}},     Entry{"thirty", {ten, 30}},     Entry{"three", {unit, 3}},     Entry{"twelve", {teen, 12}},
    Entry{"twenties", {ten, 20}},      Entry{"twenty", {ten, 20}},     Entry{"two", {unit, 2}},       Entry{"zero", {unit, 0}},
};

static_assert(std::is_sorted(kWords.begin(), kWords.end(), [](const Entry& a, const Entry& b) { return a.word < b.word; }));

// Which letters begin a number word: nearly all words are told apart by that ("the" by its third).
struct Starts {
  std::array<std::uint32_t, 26> second{};
  std::array<std::uint32_t, 26> third{};
  constexpr Starts() {
    for (const Entry& entry : kWords) {
      second[static_cast<std::size_t>(entry.word[0] - 'a')] |= 1U << (entry.word[1] - 'a');
      third[static_cast<std::size_t>(entry.word[0] - 'a')] |= 1U << (entry.word[2] - 'a');
    }
  }
  [[nodiscard]] constexpr bool may_begin(std::string_view word) const {
    auto letter = [&](std::size_t i) { return word[i] >= 'a' && word[i] <= 'z'; };
    if (!letter(0) || !letter(1) || !letter(2)) return false;
    auto first = static_cast<std::size_t>(word[0] - 'a');
    return (second[first] >> (word[1] - 'a') & third[first] >> (word[2] - 'a') & 1U) != 0;
  }
};
constexpr Starts kStarts;

}  // namespace

WordValue number_word(std::string_view folded) {
  if (folded.size() < 3 || folded.size() > 9 || !kStarts.may_begin(folded)) return {};
  const auto* found =
      std::lower_bound(kWords.begin(), kWords.end(), folded, [](const Entry& entry, std::string_view word) { return entry.word < word; });
  return found != kWords.end() && found->word == folded ? found->value : WordValue{};
}

}  // namespace retort
