#include "calc/readings.h"

#include "calc/settle_labels.h"

namespace retort::calc {
namespace {

// Whether two numbers stand side by side in a list.
bool side_by_side(const Tokens& tokens, const Fact& first, const Fact& second) {
  std::size_t a = first.token;
  std::size_t b = second.token;
  if (b > a + 5) return false;
  bool same = first.leaf.unit && second.leaf.unit && first.leaf.unit->scale == second.leaf.unit->scale &&
              first.leaf.unit->dimension == second.leaf.unit->dimension;
  bool parted = false;
  for (std::size_t i = a + 1; i < b; ++i) {
    TokenKind kind = tokens.kind(i);
    std::string_view word = tokens.word(i);
    if (kind == TokenKind::comma || kind == TokenKind::line || word == "and" || word == "n" || kind == TokenKind::plus || word == "then" ||
        word == "&") {
      parted = true;
      continue;
    }
    if (is_label_sign(tokens, i)) {
      parted = true;
      continue;
    }
    if (kind == TokenKind::word && (word == "trial" || word == "time" || word == "reading" || word == "go" || word == "test" || word == "run" ||
                                    word == "again" || word.empty()))
      continue;
    if (kind == TokenKind::word && same && parted && b - a <= 4) continue;
    return false;
  }
  return parted || (b == a + 1 && ((!first.leaf.unit && !second.leaf.unit) || same));
}

bool same_unit(const Leaf& a, const Leaf& b) {
  return !a.unit || !b.unit || a.unit->dimension == b.unit->dimension;
}

}  // namespace

std::vector<std::vector<std::size_t>> reading_lists(const Tokens& tokens, const std::vector<Fact>& facts) {
  std::vector<std::vector<std::size_t>> out;
  for (std::size_t begin = 0; begin < facts.size();) {
    std::size_t end = begin + 1;
    while (end < facts.size() && side_by_side(tokens, facts[end - 1], facts[end]) && same_unit(facts[end - 1].leaf, facts[end].leaf)) ++end;
    if (end - begin >= 2) {
      out.emplace_back();
      for (std::size_t i = begin; i < end; ++i) out.back().push_back(i);
    }
    begin = end;
  }
  return out;
}

std::vector<std::size_t> readings_before(const Tokens& tokens, const std::vector<Fact>& facts, std::size_t result) {
  constexpr std::size_t kReach = 80;
  std::size_t end = result;
  while (end > 0 && facts[result].token - facts[end - 1].token < kReach) {
    std::size_t begin = end - 1;
    while (begin > 0 && side_by_side(tokens, facts[begin - 1], facts[begin]) && same_unit(facts[begin - 1].leaf, facts[begin].leaf)) --begin;
    if (end - begin >= 2) {
      std::vector<std::size_t> out;
      for (std::size_t i = begin; i < end; ++i) out.push_back(i);
      return out;
    }
    --end;
  }
  return {};
}

}  // namespace retort::calc
