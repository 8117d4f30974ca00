#include "calc/ordinals.h"

#include <algorithm>
#include <string_view>

#include "calc/readings.h"

namespace retort::calc {
namespace {

long ordinal(std::string_view word) {
  static constexpr std::string_view kWords[] = {"first",   "second", "third", "fourth", "fifth",    "sixth",
                                                "seventh", "eighth", "ninth", "tenth",  "eleventh", "twelfth"};
  for (std::size_t i = 0; i < std::size(kWords); ++i) {
    if (kWords[i] == word) return static_cast<long>(i + 1);
  }
  long value = 0;
  std::size_t i = 0;
  for (; i < word.size() && i < 3 && word[i] >= '0' && word[i] <= '9'; ++i) value = value * 10 + (word[i] - '0');
  if (i == 0 || i + 2 != word.size()) return word == "eigth" ? 8 : word == "twentieth" ? 20 : 0;
  std::string_view ending = word.substr(i);
  return ending == "th" || ending == "st" || ending == "nd" || ending == "rd" ? value : 0;
}

// "drop 1 ... drop 11"
long numbered_row(const Tokens& tokens, std::size_t from, std::size_t to) {
  for (std::size_t i = std::max<std::size_t>(from, 1); i < to; ++i) {
    if (!tokens.is(i, TokenKind::number) || tokens.number(i).unit || tokens.number(i).decimal.value != 1) continue;
    std::string_view thing = tokens.word(i - 1);
    if (thing.size() < 3) continue;
    for (std::size_t k = i + 2; k < tokens.size() && k < i + 16; ++k) {
      if (!tokens.is(k, TokenKind::number) || tokens.word(k - 1) != thing || tokens.number(k).decimal.value.get_den() != 1) continue;
      Exact n = tokens.number(k).decimal.value;
      if (n > 2 && n < 1000) return n.get_num().get_si();
    }
  }
  return 0;
}

}  // namespace

long last_of_a_row(const Tokens& tokens, std::size_t from, std::size_t to) {
  constexpr std::size_t kReach = 10;
  for (std::size_t i = from; i < to; ++i) {
    if (ordinal(tokens.word(i)) != 1) continue;
    bool joined = false;
    for (std::size_t k = i + 1; k < tokens.size() && k < i + kReach; ++k) {
      std::string_view word = tokens.word(k);
      joined = joined || word == "to" || word == "and";
      if (long n = ordinal(word); joined && n > 2) return n;
      if (word == "last") return kToTheLast;
    }
  }
  return numbered_row(tokens, from, to);
}

long readings_with_sum(const Tokens& tokens, const std::vector<Fact>& facts, const Exact& sum, Span own) {
  for (const std::vector<std::size_t>& list : reading_lists(tokens, facts)) {
    Exact total = 0;
    for (std::size_t i : list) total += facts[i].leaf.value;
    Span span = facts[list.front()].leaf.source;
    bool inside = span.begin >= own.begin && span.end <= own.end;
    if (inside || list.size() < 3) continue;
    if (total == sum) return static_cast<long>(list.size());
    for (std::size_t i : list) {  // one left out
      if (sum != 0 && total - facts[i].leaf.value == sum) return static_cast<long>(list.size()) - 1;
    }
  }
  return 0;
}

}  // namespace retort::calc
