#include "calc/chains.h"

#include "calc/chain_finder.h"

namespace retort::calc {

std::vector<Chain> ChainFinder::run() {
  while (at_ < tokens_.size()) {
    std::size_t begin = at_;
    if (!chain_at(begin)) at_ = std::max(at_, begin + 1);
  }
  return std::move(chains_);
}

bool ChainFinder::chain_at(std::size_t begin) {
  TokenKind kind = tokens_.kind(begin);
  if (kind == TokenKind::word && tokens_.word(begin).size() < 4) return false;
  if (kind == TokenKind::number && stands_alone(begin)) return false;
  std::optional<Parsed> parsed;
  if (stacked(begin) || taken_from(begin)) return true;
  if (starts_operand(kind)) {
    // the end of an expression in symbols: "useful ÷ total × 100"
    TokenKind before = begin > 0 ? tokens_.kind(begin - 1) : TokenKind::stop;
    if (before == TokenKind::times || before == TokenKind::divide) return false;
    if (kind == TokenKind::minus && begin > 0 && !starts_sign(begin)) return false;
    parsed = parse(tokens_, begin);
  } else if (kind == TokenKind::divide || kind == TokenKind::times) {
    return operator_first(begin);
  }
  if (!parsed) return false;
  std::size_t end = parsed->end;
  Chain chain;
  if (build(begin, std::move(*parsed), chain)) {
    at_ = chain.end_token;
    chains_.push_back(chain);
    undo(chain);
    return true;
  }
  if (!chain.unknown.empty() && !chain.parts[0].single() && at_ <= begin) {  // "v² = 2 × 0.9 × 1.25", "v = 2.25"
    std::size_t before = chains_.size();
    undo(chain);
    if (chains_.size() > before) return true;
  }
  at_ = std::max(at_ + 1, end);
  return true;
}

bool ChainFinder::build(std::size_t begin, Parsed parsed, Chain& chain) {
  chain.first_token = begin;
  chain.parts.push_back(std::move(parsed.expression));
  chain.stated.push_back(stated_at(begin, parsed.end));
  chain.end_token = parsed.end;
  if (begin > 1 && tokens_.is(begin - 1, TokenKind::equals)) transform(chain, first_sign_from(tokens_, begin - 1));
  follow(chain);
  bool whole = finish(chain);
  if (whole) counted_in_time(chain);
  if (whole) so_many_of(chain);
  if (whole || !chain.parts[0].single()) complete_name(chain);
  return whole;
}

// A number that nothing is done with: most numbers in prose.
bool ChainFinder::stands_alone(std::size_t i) const {
  TokenKind next = tokens_.kind(i + 1);
  if (next == TokenKind::word && !tokens_.is(i + 2, TokenKind::equals)) {
    if (!tokens_.number(i).unit) return true;
    for (std::size_t k = i + 2; k < i + 9; ++k) {  // the same in another unit may follow
      if (tokens_.is(k, TokenKind::number)) return !tokens_.number(k).unit || tokens_.number(k).unit->dimension != tokens_.number(i).unit->dimension;
    }
    return true;
  }
  return next == TokenKind::stop || (next == TokenKind::comma && !tokens_.number(i).unit);
}

bool ChainFinder::starts_sign(std::size_t i) const {
  TokenKind before = tokens_.kind(i - 1);
  return before == TokenKind::equals || before == TokenKind::open || before == TokenKind::line || before == TokenKind::word ||
         before == TokenKind::comma;
}

// "it took 25.2 s. I divided by 10": what the operator acts on.
const Fact* ChainFinder::quantity_before(std::size_t at) const {
  const Fact* found = nullptr;
  for (std::size_t i = facts_before(at) > 20 ? facts_before(at) - 20 : 0; i < facts_before(at); ++i) {
    const Fact& fact = facts_[i];
    if (at - fact.token <= 16 && (fact.leaf.unit || found == nullptr || !found->leaf.unit || at - fact.token <= 3)) found = &fact;
  }
  return found;
}

// How many facts stand before token `at`.
std::size_t ChainFinder::facts_before(std::size_t at) const {
  auto found = std::partition_point(facts_.begin(), facts_.end(), [&](const Fact& fact) { return fact.token < at; });
  return static_cast<std::size_t>(found - facts_.begin());
}

Stated ChainFinder::stated_at(std::size_t begin, std::size_t end) const {
  Stated out;
  std::size_t i = begin;
  if (tokens_.is(i, TokenKind::minus)) ++i;
  if (i + 1 != end || !tokens_.is(i, TokenKind::number)) return out;
  const Number& number = tokens_.number(i);
  out.decimal = number.decimal;
  if (out.decimal.figures == kMostDigits) out.decimal.figures = 0;
  out.unit = number.unit;
  out.source = tokens_.all[i].source;
  out.digits = number.digits;
  if (i > begin && tokens_.all[i].glued) out.digits.begin = tokens_.all[begin].source.begin;
  out.token = i;
  return out;
}

// Signs of equality, over a line's end; 0 if there is none.
std::size_t ChainFinder::sign_at(std::size_t i) const {
  std::size_t k = i;
  while (tokens_.is(k, TokenKind::line) && k < i + 3) ++k;
  return tokens_.is(k, TokenKind::equals) ? k + 1 : 0;
}

// "1/2 mv² = ...": a factor of a formula in symbols, not a part of the sum.
bool ChainFinder::is_factor_of_symbols(const Chain& chain) const {
  const Expression& e = chain.parts[0];
  if (chain.parts.size() != 1 || e.leaves.size() != 2 || e.node(e.root).op != Op::divide || !tokens_.is(chain.end_token, TokenKind::word))
    return false;
  bool half = e.leaves[0].value == 1 && e.leaves[1].value == 2;
  bool sphere = e.leaves[0].value == 4 && e.leaves[1].value == 3;
  return (half || sphere) && tokens_.all[chain.end_token].source.size() <= 4 && !is_filler_word(tokens_.word(chain.end_token));
}

void ChainFinder::follow(Chain& chain) {
  if (is_factor_of_symbols(chain) || balanced(chain)) return;
  while (chain.parts.size() < kMostParts) {
    std::size_t i = chain.end_token;
    if (is_unit_words(i)) ++i;
    std::size_t behind = sign_at(i);
    if (behind == 0) behind = same_name_again(chain, i);
    if (behind != 0) {
      if (!take_part(chain, behind)) break;
      continue;
    }
    if (converted_in_brackets(chain)) continue;
    if (!worded_result(chain)) break;
  }
}

// "v = 20 × 1.7" and on the next line "v = 34": behind the second sign; 0 if it is not so.
std::size_t ChainFinder::same_name_again(const Chain& chain, std::size_t i) const {
  if (!tokens_.is(i, TokenKind::line) || chain.parts.back().single()) return 0;
  while (tokens_.is(i, TokenKind::line)) ++i;
  std::size_t sign = chain.first_token;
  if (sign < 2 || !tokens_.is(sign - 1, TokenKind::equals) || !tokens_.is(i + 1, TokenKind::equals)) return 0;
  std::string_view before = tokens_.word(sign - 2);
  return !before.empty() && before == tokens_.word(i) ? i + 2 : 0;
}

// A unit that is not in the table ("bpm"), between a number and a sign.
bool ChainFinder::is_unit_words(std::size_t i) const {
  return tokens_.is(i, TokenKind::word) && tokens_.all[i].length > 0 && tokens_.all[i].source.size() <= 12 && sign_at(i + 1) != 0 &&
         tokens_.is(i - 1, TokenKind::number) && !tokens_.number(i - 1).unit && book_.by_symbol(tokens_.all[i].source.of(tokens_.source)).empty();
}

bool ChainFinder::take_part(Chain& chain, std::size_t i) {
  while (tokens_.is(i, TokenKind::line)) ++i;
  for (std::size_t n = 0; n < 3 && tokens_.is(i, TokenKind::word) && is_filler_word(tokens_.word(i)); ++n) ++i;
  if (tokens_.is(i, TokenKind::equals)) ++i;
  if (tokens_.is(i, TokenKind::plus) || tokens_.word(i) == "\u00B1") ++i;            // "= +5", "= ±0.2"
  if (tokens_.is(i, TokenKind::times) && tokens_.is(i + 1, TokenKind::number)) ++i;  // "= x40"
  if (!starts_operand(tokens_.kind(i))) return false;
  std::optional<Parsed> parsed = parse(tokens_, i);
  if (!parsed) return false;
  TokenKind next = tokens_.kind(parsed->end);
  bool unknown = (next == TokenKind::times || next == TokenKind::divide) && tokens_.is(parsed->end + 1, TokenKind::word) &&
                 tokens_.all[parsed->end + 1].source.size() <= 2;  // "25 × 0.1 = 24 × c"
  if (unknown) return false;
  if (chain.parts.size() == 1) chain.second_token = i;
  TokenKind behind = tokens_.kind(i + 1);
  bool another = tokens_.is(i, TokenKind::number) && behind >= TokenKind::root && behind <= TokenKind::arctangent && !tokens_.all[i + 1].glued &&
                 sign_at(parsed->end) != 0;
  bool goes_on =
      behind == TokenKind::times && tokens_.all[i + 1].in_words && tokens_.all[i + 1].source.of(tokens_.source).find(' ') != std::string_view::npos;
  another = another || (tokens_.is(i, TokenKind::number) && goes_on && !parsed->expression.single());  // "= 25 and times 6 is 150"
  if (another) parsed = Parsed{leaf_alone(i), i + 1};  // "sin 30 = 0.5 sin 19 = 0.326": a second statement
  chain.parts.push_back(std::move(parsed->expression));
  chain.stated.push_back(stated_at(i, parsed->end));
  chain.end_token = parsed->end;
  return !another;
}

Expression ChainFinder::leaf_alone(std::size_t i) const {
  const Number& number = tokens_.number(i);
  Expression out;
  out.root = out.add_leaf({number.decimal.value, number.decimal.figures, number.decimal.last_place, number.unit, false, tokens_.all[i].source});
  return out;
}

// "5 masses of 100 g = 500 g": so many of them stand before.
void ChainFinder::so_many_of(Chain& chain) const {
  Expression& e = chain.parts[0];
  std::size_t at = chain.first_token;
  if (!e.single() || e.leaves.size() != 1 || !e.leaves[0].unit || at < 3 || tokens_.word(at - 1) != "of") return;
  std::size_t before = at - 2;
  while (before > 0 && at - before < 5 && tokens_.is(before, TokenKind::word)) --before;
  if (!tokens_.is(before, TokenKind::number)) return;
  Expression count = leaf_alone(before);
  Value second = evaluate(chain.parts[1], Scaling::si);
  if (count.leaves[0].unit || count.leaves[0].value < 2 || second.state != State::ok ||
      second.number != count.leaves[0].value * e.leaves[0].value * exact(e.leaves[0].unit->scale))
    return;
  std::int16_t n = e.add_leaf(count.leaves[0]);
  e.root = e.add_node(Op::multiply, n, e.root);
  chain.first_token = before;
}

// "22 in 15 secs x 4 = 88": what is multiplied stands before the time.
void ChainFinder::counted_in_time(Chain& chain) const {
  Expression& e = chain.parts[0];
  const Node& root = e.node(e.root);
  std::size_t at = chain.first_token;
  if (chain.parts.size() != 2 || root.op != Op::multiply || e.leaves.size() != 2 || at < 2 || tokens_.word(at - 1) != "in") return;
  std::size_t before = tokens_.is(at - 2, TokenKind::number) ? at - 2 : at - 3;
  if (!e.leaves[0].unit || e.leaves[0].unit->dimension != dimension::kTime || !tokens_.is(before, TokenKind::number)) return;
  Leaf counted = leaf_alone(before).leaves[0];
  if (counted.unit || counted.value * e.leaves[1].value != chain.stated.back().decimal.value) return;
  e.leaves[0] = counted;
  chain.first_token = before;
}

// "I got 40 by doing 6 / 0.15", "25 N/m (3 / 0.12)"
bool ChainFinder::result_before(Chain& chain) {
  bool reason = false;
  std::size_t i = chain.first_token;
  for (std::size_t n = 0; n < 7 && i > 0; ++n) {
    --i;
    TokenKind kind = tokens_.kind(i);
    if (kind == TokenKind::number) break;
    if (kind == TokenKind::word) {
      reason = reason || is_reason_word(tokens_.word(i));
      continue;
    }
    if (kind == TokenKind::open) {
      reason = true;
      continue;
    }
    if (kind != TokenKind::comma && kind != TokenKind::stop) return false;
  }
  bool that_is = chain.first_token >= 2 && tokens_.word(chain.first_token - 1) == "is" &&
                 (tokens_.word(chain.first_token - 2) == "that" || tokens_.word(chain.first_token - 2) == "this");
  that_is = that_is || (chain.first_token >= 1 && tokens_.word(chain.first_token - 1) == "thats");
  reason = reason || (that_is && chain.first_token - i <= 4);
  if (!tokens_.is(i, TokenKind::number) || !reason || chain.parts[0].range_like) return false;
  if (!chains_.empty() && chains_.back().end_token > i) return false;
  Leaf leaf{tokens_.number(i).decimal.value,
            tokens_.number(i).decimal.figures,
            tokens_.number(i).decimal.last_place,
            tokens_.number(i).unit,
            false,
            tokens_.all[i].source};
  Expression result;
  result.root = result.add_leaf(leaf);
  chain.parts.push_back(std::move(result));
  chain.stated.push_back(stated_at(i, i + 1));
  bool symbol = false;
  chain.named.quantities = named_before(tokens_, book_, i, symbol);
  chain.named.tight = false;
  chain.named.symbol = symbol;
  chain.named.tight = i > 0 && (tokens_.word(i - 1) == "is" || tokens_.word(i - 1) == "was" ||
                                (i > 1 && (tokens_.word(i - 2) == "came" || tokens_.word(i - 2) == "comes" || tokens_.word(i - 2) == "out")));
  chain.backwards = true;
  chain.loose = !that_is;
  return true;
}

bool ChainFinder::finish(Chain& chain) {
  // what comes last must be a number; what is behind it is no part of this
  while (chain.parts.size() > 1 && chain.stated.back().decimal.figures == 0) {
    chain.parts.pop_back();
    chain.stated.pop_back();
  }
  // "8 g in 200 cm³ = 8 ÷ 200 = 0.04 g/cm³": the first number is not what follows
  bool things = chain.parts.size() > 2 && chain.parts[0].single() && chain.parts[1].single() && !chain.stated[0].unit && chain.stated[1].unit &&
                !same_value(chain.parts[0], chain.parts[1]);  // "7 squares = 35 mm = 3.5 cm"
  if (things) {
    chain.parts.erase(chain.parts.begin());
    chain.stated.erase(chain.stated.begin());
  }
  if (chain.parts.size() > 2 && chain.parts[0].single() && !chain.parts[1].single() && !same_value(chain.parts[0], chain.parts[1])) {
    chain.first_token = chain.second_token;
    chain.parts.erase(chain.parts.begin());
    chain.stated.erase(chain.stated.begin());
  }
  // "100 g = 0.1 kg → 1 N": a number of another kind is no longer the same thing
  if (chain.parts[0].single()) {
    for (std::size_t i = 1; i < chain.parts.size(); ++i) {
      const auto& a = chain.stated[i - 1].unit;
      const auto& b = chain.stated[i].unit;
      if (!chain.parts[i].single() || !a || !b || a->dimension == b->dimension) continue;
      chain.parts.resize(i);
      chain.stated.resize(i);
      chain.end_token = chain.stated.back().token + 1;
      break;
    }
  }
  if (chain.parts.size() == 1 && !chain.parts[0].single()) {
    if (!result_before(chain)) return false;
  }
  if (chain.parts.size() < 2) return false;
  if (std::all_of(chain.parts.begin(), chain.parts.end(), [](const Expression& e) { return e.single(); }) && !converts(chain)) return false;
  std::uint32_t begin = chain.backwards ? chain.stated.back().source.begin : tokens_.all[named_from(chain)].source.begin;
  std::uint32_t end = chain.backwards ? tokens_.all[chain.end_token - 1].source.end : chain.stated.back().source.end;
  chain.span = {begin, std::max(begin, end)};
  return true;
}

bool ChainFinder::same_value(const Expression& a, const Expression& b) {
  Value x = evaluate(a, Scaling::as_written);
  Value y = evaluate(b, Scaling::as_written);
  return x.state == State::ok && y.state == State::ok && abs(x.number - y.number) * 50 <= abs(x.number);
}

// Numbers alone are a calculation only if the unit changes.
bool ChainFinder::converts(const Chain& chain) {
  for (std::size_t i = 0; i + 1 < chain.stated.size(); ++i) {
    const auto& a = chain.stated[i].unit;
    const auto& b = chain.stated[i + 1].unit;
    if (a && b && a->dimension == b->dimension && (!(a->scale == b->scale) || a->symbol != b->symbol)) return true;
  }
  return false;
}

// The chain's span takes in the symbol or word before its first sign.
std::size_t ChainFinder::named_from(const Chain& chain) const {
  std::size_t i = chain.first_token;
  if (i < 2 || !tokens_.is(i - 1, TokenKind::equals)) return i;
  std::size_t sign = first_sign_from(tokens_, i - 1);
  return sign > 0 && tokens_.is(sign - 1, TokenKind::word) ? sign - 1 : i;
}

std::vector<Chain> find_chains(const Tokens& tokens, const FormulaBook& book, const std::vector<Fact>& facts) {
  return ChainFinder(tokens, book, facts).run();
}

}  // namespace retort::calc
