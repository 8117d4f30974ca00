#include "calc/facts.h"

#include <algorithm>

#include "quantity/number_words.h"

namespace retort::calc {
namespace {

bool contains(const std::vector<QuantityId>& list, QuantityId id) {
  return std::find(list.begin(), list.end(), id) != list.end();
}

// Words that may stand between a name and its value.
bool is_symbol_word(const Tokens& tokens, std::size_t i) {
  const Token& token = tokens.all[i];
  return token.kind == TokenKind::word && token.length > 0 && token.source.size() <= 5;
}

bool stops(TokenKind kind) {
  return kind == TokenKind::stop || kind == TokenKind::line || kind == TokenKind::number;
}

// "I let it swing 20 times"
bool swings_before(const Tokens& tokens, std::size_t number) {
  for (std::size_t n = 1; n <= 3 && n <= number; ++n) {
    std::string_view word = tokens.word(number - n);
    if (word.starts_with("swing") || word == "swung" || word.starts_with("bounce") || word.starts_with("oscillat") || word.starts_with("vibrat"))
      return true;
  }
  return false;
}

// "two loops make a whole wave" counts nothing that was seen.
bool makes_one(const Tokens& tokens, std::size_t i) {
  std::string_view verb = tokens.word(i);
  bool makes = verb == "make" || verb == "makes" || verb == "is" || verb == "are" || verb == "equals" || verb == "in" || verb == "per";
  std::string_view one = tokens.word(i + 1);
  return makes && (one == "a" || one == "one" || one == "each" || one == "every" || one == "1");
}

// "waves", "full swings": the things that a whole number counts.
QuantityId counted_behind(const Tokens& tokens, const FormulaBook& book, std::size_t number) {
  std::vector<QuantityId> ids;
  for (std::size_t i = number + 1; i < number + 4 && i < tokens.size(); ++i) {
    if (tokens.kind(i) != TokenKind::word) break;
    if (tokens.word(i) == "times" && swings_before(tokens, number)) return book.find("number of waves");
    std::size_t length = book.phrase_at(tokens, i, ids);
    if (length == 0) continue;
    if (makes_one(tokens, i + length)) return kNoQuantity;
    for (QuantityId id : ids) {
      if (book.quantity(id).count) return id;
    }
  }
  return kNoQuantity;
}

// What else the words before a number name, behind the likeliest: "the solvent went 9.0 cm".
void other_names(const Tokens& tokens, const FormulaBook& book, std::size_t at, std::vector<QuantityId>& out) {
  constexpr std::size_t kReach = 7;
  for (std::size_t i = at; i > 0 && at - i < kReach && !stops(tokens.kind(i - 1)); --i) {
    std::vector<QuantityId> ids;
    std::size_t n = book.phrase_at(tokens, i - 1, ids);
    if (n == 0 || i - 1 + n > at) continue;
    for (QuantityId id : ids) {
      if (!contains(out, id)) out.push_back(id);
    }
  }
}

// "Volts 12 amps 3": the unit in front of its number
void unit_before(const Tokens& tokens, std::size_t number, Leaf& leaf) {
  if (leaf.unit || number == 0) return;
  std::string_view word = tokens.word(number - 1);
  bool plural = word.size() > 3 && word.ends_with("s");
  if (!plural) return;
  leaf.unit = read_unit(word);
}

// "18 → 51", "from 80 to 58": the first and the last value of a change
void change_names(const Tokens& tokens, const FormulaBook& book, std::size_t i, std::vector<QuantityId>& names) {
  auto arrow = [&](std::size_t at) { return tokens.is(at, TokenKind::equals) && tokens.all[at].source.of(tokens.source) != "="; };
  auto joins = [&](std::size_t at) { return tokens.word(at) == "to" || arrow(at); };
  auto number_before = [&](std::size_t at) {
    for (std::size_t n = 1; n <= 4 && n <= at; ++n) {
      if (tokens.is(at - n, TokenKind::number)) return true;
      if (tokens.is(at - n, TokenKind::stop)) return false;
    }
    return false;
  };
  bool first = (joins(i + 1) && tokens.is(i + 2, TokenKind::number)) || (i > 0 && tokens.word(i - 1) == "from");
  bool last = i > 1 && joins(i - 1) && number_before(i - 1);
  for (std::string_view role : {last ? "last value" : first ? "first value" : "", last ? "final speed" : first ? "initial speed" : ""}) {
    QuantityId id = role.empty() ? kNoQuantity : book.find(role);
    if (id != kNoQuantity && !contains(names, id)) names.push_back(id);
  }
}

// "three loops", "ten waves"
void counted_in_words(const Tokens& tokens, const FormulaBook& book, std::size_t i, std::vector<Fact>& out) {
  WordValue value = number_word(tokens.word(i));
  bool whole = value.kind == NumberWord::unit || value.kind == NumberWord::teen || value.kind == NumberWord::ten;
  if (!whole || value.value < 2) return;
  QuantityId things = counted_behind(tokens, book, i);
  if (things == kNoQuantity) return;
  Fact fact;
  fact.token = i;
  fact.leaf.value = exact(value.value);
  fact.leaf.figures = 1;
  fact.leaf.source = tokens.all[i].source;
  fact.names = {things};
  fact.counted = true;
  out.push_back(std::move(fact));
}

void name_behind(const Tokens& tokens, const FormulaBook& book, std::size_t number, std::vector<QuantityId>& out) {
  for (std::size_t i = number + 1; i < number + 4 && i < tokens.size(); ++i) {
    if (tokens.kind(i) != TokenKind::word) return;
    if (book.phrase_at(tokens, i, out) > 0) return;
    std::string_view word = tokens.word(i);
    if (word == "and" || word == "so" || word == "which" || word == "when" || word == "then" || word == "but") return;
  }
}

}  // namespace

NameFound find_name(const Tokens& tokens, const FormulaBook& book, std::size_t at, std::size_t reach) {
  std::vector<QuantityId> best;
  std::size_t best_end = 0;
  bool led = false;
  bool best_is_verb = false;
  std::size_t from = at;
  for (std::size_t n = 0; from > 0 && n < reach && !stops(tokens.kind(from - 1)); ++n) --from;
  for (std::size_t i = from; i < at; ++i) {
    std::vector<QuantityId> ids;
    bool verb = false;
    std::size_t n = book.phrase_at(tokens, i, ids, &verb);
    if (n > 0 && tokens.word(i + n) == "per" && i + n < at) {  // "energy per gram" is not an energy
      best.clear();
      best_end = 0;
      led = false;
      continue;
    }
    if (n == 0 || i + n > at || (verb && !best.empty() && !best_is_verb)) continue;
    bool leads = std::any_of(ids.begin(), ids.end(), [&](QuantityId id) { return book.quantity(id).leads; });
    if (leads || ((i + n > best_end || best_is_verb) && !led)) {
      best_is_verb = verb;
      best = ids;
      best_end = i + n;
    }
    led = led || leads;
  }
  // a symbol directly before "=" or "is"
  for (std::size_t i = at; i > from; --i) {
    if (i <= best_end) break;
    if (!is_symbol_word(tokens, i - 1)) continue;
    bool value_follows = tokens.is(i, TokenKind::equals) || tokens.word(i) == "is" || tokens.word(i) == "was" || tokens.word(i) == "of" || i == at;
    if (!value_follows) continue;
    std::string_view raw = tokens.all[i - 1].source.of(tokens.source);
    if (raw == "I" && !tokens.is(i, TokenKind::equals)) continue;
    if (raw == "a" && !tokens.is(i, TokenKind::equals)) continue;
    if (i > 1 && (tokens.word(i - 2) == "against" || tokens.word(i - 2) == "vs" || tokens.word(i - 2) == "versus")) continue;  // an axis
    std::vector<QuantityId> ids = book.by_symbol(raw);
    if (ids.empty()) continue;
    return {ids, true, i, false};
  }
  return {best, false, best_end, best_is_verb};
}

std::vector<QuantityId> named_before(const Tokens& tokens, const FormulaBook& book, std::size_t at, bool& symbol, std::size_t reach) {
  NameFound found = find_name(tokens, book, at, reach);
  symbol = found.symbol;
  return found.quantities;
}

void find_facts(const Tokens& tokens, const FormulaBook& book, std::vector<Fact>& out) {
  out.clear();
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if ((tokens.all[i].hint & 2) != 0) counted_in_words(tokens, book, i, out);
    if (!tokens.is(i, TokenKind::number)) continue;
    const Number& number = tokens.number(i);
    Fact fact;
    fact.token = i;
    fact.leaf = {number.decimal.value, number.decimal.figures, number.decimal.last_place, number.unit, false, tokens.all[i].source, number.too_large};
    QuantityId things = number.unit ? kNoQuantity : counted_behind(tokens, book, i);
    if (things != kNoQuantity && number.decimal.last_place == 0) {
      fact.names = {things};
      fact.counted = true;
    }
    unit_before(tokens, i, fact.leaf);
    out.push_back(std::move(fact));
  }
}

void name_facts(const Tokens& tokens, const FormulaBook& book, std::vector<Fact>& facts) {
  for (Fact& fact : facts) {
    if (fact.counted || fact.token >= tokens.size()) continue;
    bool symbol = false;
    fact.names = named_before(tokens, book, fact.token, symbol);
    bool worked_with = symbol && tokens.kind(fact.token + 1) >= TokenKind::plus && tokens.kind(fact.token + 1) <= TokenKind::divide;
    if (worked_with) fact.names.clear();  // "n = 1/1.5" does not say that n is 1
    if (!symbol) other_names(tokens, book, fact.token, fact.names);
    if (fact.names.empty()) name_behind(tokens, book, fact.token, fact.names);
    change_names(tokens, book, fact.token, fact.names);
  }
}

int fit(const FormulaBook& book, QuantityId variable, const Leaf& leaf, const std::vector<QuantityId>& names) {
  const QuantityEntry& entry = book.quantity(variable);
  bool named = contains(names, variable);
  bool any_unit = entry.named_only && entry.unit.dimension.none();
  if (entry.count) return named && !leaf.unit ? 4 : 0;
  if (leaf.unit && !any_unit && leaf.unit->dimension != entry.unit.dimension) return 0;
  if (named) return 4;
  if (entry.named_only) return 0;
  if (leaf.unit && !leaf.unit->dimension.none()) return names.empty() ? 2 : 1;
  return 0;
}

}  // namespace retort::calc
