// What a chain works out, by the names around it.
#include "calc/chain_finder.h"

namespace retort::calc {

// By its own words, but a name that stands right before the result comes first.
void ChainFinder::complete_name(Chain& chain) const {
  Named between = std::move(chain.named);
  chain.named = {};
  name(chain);
  if (chain.backwards || !between.quantities.empty()) {
    chain.named.quantities = std::move(between.quantities);
    chain.named.tight = between.tight;
    chain.named.symbol = between.symbol;
  }
  name_behind(chain);
}

// What is worked out: the name before the first sign of equality of the line.
void ChainFinder::name(Chain& chain) const {
  std::size_t begin = chain.first_token;
  if (begin == 0) return;
  std::size_t at = begin - 1;
  if (tokens_.is(at, TokenKind::comma) && at > 0) --at;
  while (tokens_.is(at, TokenKind::line) && at > 0 && tokens_.is(at + 1, TokenKind::equals)) --at;
  std::size_t first_sign = tokens_.is(at, TokenKind::equals) ? first_sign_from(tokens_, at) : begin;
  SpokenFormula spoken = spoken_formula(tokens_, book_, begin);
  bool said = spoken.operands.size() > 1 && spoken.begin > 1 && first_sign == begin;
  NameFound found = said ? find_name(tokens_, book_, spoken.begin - 1) : find_name(tokens_, book_, first_sign);
  bool sign = first_sign < begin;
  // without a sign the name must stand right before: "the speed is 8 × 2.5"
  bool verb = tokens_.word(begin - 1) == "is" || tokens_.word(begin - 1) == "was" || tokens_.word(begin - 1) == "be" ||
              (!found.symbol && says_result(found.end, begin));
  bool close_by = sign || verb || said || found.symbol || found.end + 2 >= begin || led(found.quantities);
  chain.raised = raised_before(first_sign);
  if (close_by && !chain.raised) chain.named.quantities = found.quantities;
  chain.named.symbol = found.symbol;
  chain.named.tight = (sign && !found.verb) || verb || (found.end == begin && !found.symbol);  // "power 40 × 5 = 200 W"
  if (chain.named.quantities.empty() && !chain.raised) earlier_formula(chain, begin);
  if (chain.named.quantities.empty() && !chain.raised) nearby(chain, begin);
  chain.named.operands = std::move(spoken.operands);
  if (sign) chain.named.symbols = symbolic_expression(tokens_, book_, begin - 1);
  chain.named.formula = sign && (first_sign + 2 < begin || (found.symbol && formula_before(first_sign)));
  transform(chain, first_sign);
  if (!chain.unknown.empty()) chain.named = {};
}

// "F = ma so for the 0.75 kg trolley F = ...": the letter before the sign had a formula before.
bool ChainFinder::formula_before(std::size_t sign) const {
  if (sign == 0) return false;
  std::string_view letter = tokens_.word(sign - 1);
  for (std::size_t i = sign > 120 ? sign - 120 : 1; i + 1 < sign && !letter.empty(); ++i) {
    if (tokens_.is(i, TokenKind::equals) && tokens_.word(i - 1) == letter && tokens_.is(i + 1, TokenKind::word)) return true;
  }
  return false;
}

// "the spring constant worked out as 4.5/0.18": between the name and the sum stands nothing but that it was worked out.
bool ChainFinder::says_result(std::size_t from, std::size_t to) const {
  static constexpr std::string_view kWords[] = {"worked", "works", "work",   "out",   "as", "to",  "be",  "came", "comes",     "come",
                                                "at",     "about", "turned", "turns", "i",  "get", "got", "then", "therefore", "equals"};
  if (from == 0 || from >= to || to - from > 5) return false;
  for (std::size_t i = from; i < to; ++i) {
    if (std::find(std::begin(kWords), std::end(kWords), tokens_.word(i)) == std::end(kWords)) return false;
  }
  return true;
}

// "v² = ...", "1/R = ...", "sin c = ...": what the statement works out is not yet what is asked for.
void ChainFinder::transform(Chain& chain, std::size_t sign) const {
  if (sign < 2 || !tokens_.is(sign, TokenKind::equals)) return;
  TokenKind last = tokens_.kind(sign - 1);
  auto unknown = [&](std::size_t i, Op inverse) {
    chain.unknown = tokens_.word(i);
    chain.inverse = inverse;
  };
  if (last == TokenKind::squared && tokens_.is(sign - 2, TokenKind::word)) return unknown(sign - 2, Op::root);
  bool caret = sign >= 3 && last == TokenKind::number && tokens_.is(sign - 2, TokenKind::power) && tokens_.number(sign - 1).decimal.value == 2;
  if (caret) {
    unknown(sign - 3, Op::root);
    chain.raised = true;
    chain.named.quantities.clear();
    return;
  }
  if (last != TokenKind::word) return;
  TokenKind before = tokens_.kind(sign - 2);
  if (before == TokenKind::sine) return unknown(sign - 1, Op::arcsine);
  if (before == TokenKind::cosine) return unknown(sign - 1, Op::arccosine);
  if (before == TokenKind::tangent) return unknown(sign - 1, Op::arctangent);
  if (before == TokenKind::divide && sign >= 3 && tokens_.is(sign - 3, TokenKind::number) && tokens_.number(sign - 3).decimal.value == 1)
    return unknown(sign - 1, Op::divide);
  std::string_view word = tokens_.word(sign - 1);
  if (chain.raised && word.size() == 2 && word[1] == '2') {
    chain.unknown = word.substr(0, 1);
    chain.inverse = Op::root;
  }
}

// "... = 35.28 so v = 5.94": the second statement as a chain of its own.
void ChainFinder::undo(const Chain& chain) {
  if (chain.unknown.empty()) return;
  std::size_t i = chain.end_token;
  for (std::size_t n = 0; n < 6 && i < tokens_.size(); ++n, ++i) {
    bool statement = tokens_.word(i) == chain.unknown && (tokens_.is(i + 1, TokenKind::equals) || tokens_.word(i + 1) == "is");
    if (statement) break;
    if (tokens_.is(i, TokenKind::number) || tokens_.is(i, TokenKind::equals)) return;
  }
  if (tokens_.word(i) != chain.unknown || tokens_.word(i).empty()) return;
  std::size_t at = i + 2;
  while (at < i + 14 && at < tokens_.size() && !(tokens_.is(at, TokenKind::number) && tokens_.is(at - 1, TokenKind::equals)) &&
         !tokens_.is(at, TokenKind::line) && at != i + 2)
    ++at;
  if (tokens_.is(i + 2, TokenKind::number)) at = i + 2;
  if (!tokens_.is(at, TokenKind::number)) return;
  for (const Expression& part : chain.parts) {  // "3.14 × 0.4² = 0.50 (d = 0.4)": it was put in
    for (const Leaf& leaf : part.leaves) {
      if (leaf.value == tokens_.number(at).decimal.value) return;
    }
  }
  Chain next;
  next.parts.push_back(undone(chain));
  next.stated.push_back(Stated{});
  std::optional<Parsed> result = parse(tokens_, at);
  if (!result || !result->expression.single()) return;
  next.parts.push_back(std::move(result->expression));
  next.stated.push_back(stated_at(at, result->end));
  next.first_token = i;
  next.end_token = result->end;
  next.span = {tokens_.all[i].source.begin, next.stated.back().source.end};
  bool symbol = false;
  next.named.quantities = named_before(tokens_, book_, i + 1, symbol, 1);
  next.named.symbol = true;
  at_ = next.end_token;
  chains_.push_back(std::move(next));
}

// The inverse of what the statement worked out, of its exact value.
Expression ChainFinder::undone(const Chain& chain) {
  Expression e;
  for (const Expression& part : chain.parts) {
    if (part.single()) continue;
    e = part;
    break;
  }
  if (e.root < 0) e = chain.parts.back();
  if (chain.inverse == Op::divide) {
    Leaf one;
    one.value = 1;
    std::int16_t top = e.add_leaf(one);
    e.root = e.add_node(Op::divide, top, e.root);
  } else {
    e.root = e.add_node(chain.inverse, e.root);
  }
  return e;
}

bool ChainFinder::led(const std::vector<QuantityId>& names) const {
  return std::any_of(names.begin(), names.end(), [&](QuantityId id) { return book_.quantity(id).leads; });
}

// "v² = ..." does not state v
bool ChainFinder::raised_before(std::size_t sign) const {
  if (sign == 0) return false;
  TokenKind kind = tokens_.kind(sign - 1);
  if (kind == TokenKind::squared || kind == TokenKind::cubed) return true;
  std::string_view word = tokens_.word(sign - 1);
  return word.size() == 2 && word[1] == '2' && book_.by_symbol(tokens_.all[sign - 1].source.of(tokens_.source)).empty();
}

// Whatever is named in the sentences before.
void ChainFinder::nearby(Chain& chain, std::size_t begin) const {
  for (std::size_t i = begin > 45 ? begin - 45 : 0; i < begin; ++i) {
    std::vector<QuantityId> ids;
    if (book_.phrase_at(tokens_, i, ids) == 0) continue;
    for (QuantityId id : ids) {
      if (std::find(chain.named.nearby.begin(), chain.named.nearby.end(), id) == chain.named.nearby.end()) chain.named.nearby.push_back(id);
    }
  }
}

// "... = 0.4 so that's the wavelength"
void ChainFinder::name_behind(Chain& chain) const {
  if (!chain.named.quantities.empty()) return;
  for (std::size_t i = chain.end_token; i < chain.end_token + 6 && i < tokens_.size(); ++i) {
    if (tokens_.kind(i) != TokenKind::word && tokens_.kind(i) != TokenKind::comma) return;
    std::vector<QuantityId> ids;
    std::string_view before = i > chain.end_token ? tokens_.word(i - 1) : std::string_view{};
    std::string_view further = i > chain.end_token + 1 ? tokens_.word(i - 2) : std::string_view{};
    bool points = before == "for" || before == "is" || before == "thats" || further == "is" || further == "thats" || further == "for";
    if (book_.phrase_at(tokens_, i, ids) > 0) {
      if (points) chain.named = {ids, true, false, {}, {}, false, {}};
      return;
    }
    if (!is_filler_word(tokens_.word(i))) return;
  }
}

// "a = (v - u) / t" on a line of its own, before the numbers
void ChainFinder::earlier_formula(Chain& chain, std::size_t begin) const {
  std::size_t stop = begin > 60 ? begin - 60 : 0;
  for (std::size_t i = begin; i > stop; --i) {
    if (!tokens_.is(i - 1, TokenKind::equals) || i >= tokens_.size()) continue;
    TokenKind kind = tokens_.kind(i);
    bool symbols = kind == TokenKind::word || kind == TokenKind::open ||
                   (kind >= TokenKind::root && kind <= TokenKind::arctangent && tokens_.is(i + 1, TokenKind::word));
    if (!symbols) continue;
    bool symbol = false;
    std::vector<QuantityId> found = named_before(tokens_, book_, i - 1, symbol);
    if (found.empty() || raised_before(i - 1)) continue;
    chain.named = {found, false, symbol, {}, {}, false, {}};
    return;
  }
}

}  // namespace retort::calc
