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
  if (word == "and" && tokens.word(i + 2) == "it" && tokens.word(i + 3) == "by") {  // "and shared it by"
    length = 4;
    return true;
  }
  if (word == "times" || word == "over" || word == "x" || word == "minus" || word == "plus" || word == "per") return true;
  length = 2;
  std::string_view next = tokens.word(i + 1);
  return (next == "by" && (word.starts_with("multipl") || word.starts_with("divid") || word.starts_with("times") || word.starts_with("shar"))) ||
         (word == "take" && next == "away");
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

// How many symbols a word stands for: "F" one, "mgh" three; 0 if it is no run of symbols.
// A power belongs to one letter: the "ke" of "½ke²" is no kinetic energy.
std::size_t symbols_together(const FormulaBook& book, std::string_view raw, bool raised = false) {
  if (!raised && !book.by_symbol(raw).empty()) return 1;
  std::size_t n = 0;
  for (std::size_t i = 0; i < raw.size(); ++n) {
    std::size_t length = static_cast<unsigned char>(raw[i]) >= 0xC3 ? 2 : 1;
    bool delta = raw.substr(i, 2) == "\u0394";
    if (delta) length += i + 2 < raw.size() && static_cast<unsigned char>(raw[i + 2]) >= 0xC3 ? 2 : 1;
    if (i + length > raw.size() || book.by_symbol(raw.substr(i, length)).empty()) return 0;
    i += length;
  }
  return n;
}

std::size_t over_powers(const Tokens& tokens, std::size_t i) {
  while (tokens.is(i, TokenKind::squared) || tokens.is(i, TokenKind::cubed)) ++i;
  if (tokens.is(i, TokenKind::power) && tokens.is(i + 1, TokenKind::number)) i += 2;
  return i;
}

}  // namespace

SpokenFormula spoken_formula(const Tokens& tokens, const FormulaBook& book, std::size_t begin) {
  SpokenFormula best;
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
    best = {std::move(found), from};
    from = std::max(from, i > 0 ? i - 1 : 0);
  }
  return best;
}

std::optional<Expression> symbolic_expression(const Tokens& tokens, const FormulaBook& book, std::size_t sign) {
  std::size_t begin = sign;
  while (begin > 0 && sign - begin < kReach && !tokens.is(begin - 1, TokenKind::equals)) {
    TokenKind kind = tokens.kind(begin - 1);
    if (kind == TokenKind::stop || kind == TokenKind::comma || kind == TokenKind::line) return std::nullopt;
    --begin;
  }
  if (begin == 0 || !tokens.is(begin - 1, TokenKind::equals) || begin + 1 >= sign) return std::nullopt;
  std::size_t variables = 0;
  auto names = [&](std::size_t at, std::vector<Leaf>& leaves) -> std::size_t {
    std::vector<QuantityId> ids;
    Leaf leaf;
    leaf.figures = -1;
    bool raised = tokens.is(at + 1, TokenKind::squared) || tokens.is(at + 1, TokenKind::cubed);
    std::size_t n = book.phrase_at(tokens, at, ids);
    if (n > 1 || (n == 1 && !raised)) {
      leaves.assign(1, leaf);
      variables += 1;
      return n;
    }
    std::string_view raw = tokens.all[at].source.of(tokens.source);
    if (raw.size() > 6) return 0;
    std::size_t symbols = symbols_together(book, raw, raised);
    leaves.assign(symbols, leaf);
    variables += symbols;
    return symbols > 0 ? 1 : 0;
  };
  std::optional<Parsed> parsed = parse(tokens, begin, names);
  if (!parsed || parsed->end != sign || variables == 0 || parsed->expression.single()) return std::nullopt;
  for (Leaf& leaf : parsed->expression.leaves) {
    if (leaf.figures > 0) leaf.figures = 0;  // the formula's own numbers
  }
  return std::move(parsed->expression);
}

}  // namespace retort::calc
