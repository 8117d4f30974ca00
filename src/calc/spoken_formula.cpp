#include "calc/spoken_formula.h"

#include <algorithm>

namespace retort::calc {
namespace {

constexpr std::size_t kReach = 30;

bool joins(const Tokens& tokens, std::size_t i, std::size_t& length) {
  TokenKind kind = tokens.kind(i);
  length = 1;
  if (kind == TokenKind::times || kind == TokenKind::divide || kind == TokenKind::plus || kind == TokenKind::minus) return true;
  std::string_view word = tokens.word(i);
  if (word == "times" || word == "over" || word == "x" || word == "minus" || word == "plus" || word == "per") return true;
  length = 2;
  std::string_view next = tokens.word(i + 1);
  return (next == "by" && (word.starts_with("multipl") || word.starts_with("divid") || word.starts_with("times") || word.starts_with("shar"))) || (word == "take" && next == "away");
}

// A name or a single symbol at `i`; how many tokens it takes.
std::size_t item(const Tokens& tokens, const FormulaBook& book, std::size_t i, std::vector<QuantityId>& out) {
  out.clear();
  while (tokens.word(i) == "the" || tokens.word(i) == "a") ++i;
  if (std::size_t n = book.phrase_at(tokens, i, out)) return n;
  if (!tokens.is(i, TokenKind::word) || tokens.all[i].source.size() > 4) return 0;
  out = book.by_symbol(tokens.all[i].source.of(tokens.source));
  return out.empty() ? 0 : 1;
}

std::size_t over_powers(const Tokens& tokens, std::size_t i) {
  while (tokens.is(i, TokenKind::squared) || tokens.is(i, TokenKind::cubed)) ++i;
  if (tokens.is(i, TokenKind::power) && tokens.is(i + 1, TokenKind::number)) i += 2;
  return i;
}

}  // namespace

std::vector<std::vector<QuantityId>> spoken_formula(const Tokens& tokens, const FormulaBook& book, std::size_t begin) {
  std::vector<std::vector<QuantityId>> best;
  for (std::size_t from = begin > kReach ? begin - kReach : 0; from < begin; ++from) {
    std::vector<std::vector<QuantityId>> found;
    std::vector<QuantityId> names;
    std::size_t i = from;
    while (i < begin) {
      while (tokens.word(i) == "the" || tokens.word(i) == "a") ++i;
      std::size_t n = item(tokens, book, i, names);
      if (n == 0 || i + n > begin) break;
      found.push_back(names);
      i = over_powers(tokens, i + n);
      std::size_t length = 0;
      if (i >= begin || !joins(tokens, i, length)) break;
      i += length;
    }
    if (found.size() < 2) continue;
    best = std::move(found);
    from = std::max(from, i > 0 ? i - 1 : 0);
  }
  return best;
}

}  // namespace retort::calc
