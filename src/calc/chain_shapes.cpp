// Expressions that are not written from left to right: an operand that stands before, fractions over lines,
// one taken from another, an equation with an unknown.
#include "calc/chain_finder.h"

namespace retort::calc {

// "it took 25.2 s. I divided by 10", "186 and then ÷ 3": what the operator acts on stands before. Of the
// numbers there, the one is meant that gives the result; the nearest with a unit, if none does.
bool ChainFinder::operator_first(std::size_t begin) {
  bool worded = tokens_.all[begin].in_words;
  bool in_formula = begin >= 2 && tokens_.kind(begin - 2) >= TokenKind::plus && tokens_.kind(begin - 2) <= TokenKind::power;
  if (begin == 0 || in_formula ||
      (!worded && !tokens_.is(begin - 1, TokenKind::comma) && (!tokens_.is(begin - 1, TokenKind::word) || !is_filler_word(tokens_.word(begin - 1)))))
    return false;
  std::vector<Leaf> operands;
  if (const Fact* usual = quantity_before(begin)) operands.push_back(usual->leaf);
  for (std::size_t i = facts_before(begin); i-- > 0 && operands.size() < 5 && begin - facts_[i].token <= 16;) operands.push_back(facts_[i].leaf);
  std::optional<Chain> chosen;
  if (std::optional<Parsed> summed = sum_of_list(begin)) {
    Chain chain;
    if (build(begin, std::move(*summed), chain)) chosen = std::move(chain);
  }
  for (const Leaf& operand : operands) {
    if (chosen && gives_result(*chosen)) break;
    std::optional<Parsed> parsed = parse_rest(tokens_, operand, begin);
    if (!parsed || parsed->end == begin) return false;
    Chain chain;
    if (!build(begin, std::move(*parsed), chain)) continue;
    if (!chosen || gives_result(chain)) chosen = std::move(chain);
  }
  if (!chosen) return false;
  at_ = chosen->end_token;
  chains_.push_back(std::move(*chosen));
  return true;
}

bool ChainFinder::gives_result(const Chain& chain) {
  Value v = evaluate(chain.parts[0], Scaling::as_written);
  return v.state == State::ok && is_rounded(v.number, v.rough, chain.stated.back().decimal);
}

// "4, 7, 0, 9 and 5. I added them up and divided by 5"
std::optional<Parsed> ChainFinder::sum_of_list(std::size_t begin) const {
  bool added = false;
  for (std::size_t n = 1; n <= 16 && n <= begin; ++n)
    added = added || tokens_.word(begin - n).starts_with("add") || tokens_.word(begin - n) == "total" || tokens_.word(begin - n) == "sum";
  if (!added) return std::nullopt;
  std::size_t next = facts_before(begin);
  if (next == facts_.size()) return std::nullopt;
  std::vector<std::size_t> list = readings_before(tokens_, facts_, next);
  if (list.size() < 2 || begin - facts_[list.back()].token > 14) return std::nullopt;
  std::optional<Parsed> parsed = parse_rest(tokens_, facts_[list[0]].leaf, begin);
  if (!parsed || parsed->end == begin) return std::nullopt;
  // the sum takes the place of its first reading
  Expression& e = parsed->expression;
  std::int16_t sum = e.add_node(Op::leaf, -1, -1, 0);
  for (std::size_t i = 1; i < list.size(); ++i) {
    std::int16_t leaf = e.add_leaf(facts_[list[i]].leaf);
    sum = e.add_node(Op::add, sum, leaf);
  }
  for (Node& node : e.nodes) {
    if (node.op != Op::add && node.left >= 0 && e.node(node.left).op == Op::leaf && e.node(node.left).index == 0) node.left = sum;
  }
  return parsed;
}

// "took away 18 from 54 and got 36"
bool ChainFinder::taken_from(std::size_t begin) {
  std::string_view verb = tokens_.word(begin);
  if (verb != "took" && verb != "take" && verb != "taking" && verb != "subtracted" && verb != "subtract" && verb != "takeaway" && verb != "minused")
    return false;
  std::size_t i = begin + 1;
  if (tokens_.word(i) == "away" || tokens_.word(i) == "off") ++i;
  if (!tokens_.is(i, TokenKind::number) || tokens_.word(i + 1) != "from" || !tokens_.is(i + 2, TokenKind::number)) return false;
  std::optional<Parsed> less = parse(tokens_, i);
  std::optional<Parsed> from = parse(tokens_, i + 2);
  if (!less || !from || !less->expression.single() || !from->expression.single()) return false;
  Parsed difference = *from;
  std::int16_t right = difference.expression.add_leaf(less->expression.leaves[0]);
  difference.expression.root = difference.expression.add_node(Op::subtract, from->expression.root, right);
  Chain chain;
  if (!build(begin, std::move(difference), chain)) return false;
  at_ = chain.end_token;
  chains_.push_back(std::move(chain));
  return true;
}

// "100 × 30 = p × 20 so p = 150": what is left of the equation is divided by the number beside the unknown.
bool ChainFinder::balanced(Chain& chain) {
  std::size_t i = sign_at(chain.end_token);
  if (i == 0 || chain.parts.size() != 1 || chain.parts[0].single()) return false;
  bool unknown_first = tokens_.is(i, TokenKind::word) && tokens_.is(i + 1, TokenKind::times) && tokens_.is(i + 2, TokenKind::number);
  bool number_first = tokens_.is(i, TokenKind::number) && tokens_.is(i + 1, TokenKind::times) && tokens_.is(i + 2, TokenKind::word);
  if (!unknown_first && !number_first) return false;
  std::string_view unknown = tokens_.word(unknown_first ? i : i + 2);
  std::optional<Parsed> beside = parse(tokens_, unknown_first ? i + 2 : i);
  if (!beside || !beside->expression.single() || unknown.size() > 3) return false;
  for (std::size_t k = i + 3; k < i + 10; ++k) {
    if (tokens_.word(k) != unknown || !tokens_.is(k + 1, TokenKind::equals) || !tokens_.is(k + 2, TokenKind::number)) continue;
    std::optional<Parsed> result = parse(tokens_, k + 2);
    if (!result || !result->expression.single()) return false;
    Expression& e = chain.parts[0];
    std::int16_t by = e.add_leaf(beside->expression.leaves[0]);
    e.root = e.add_node(Op::divide, e.root, by);
    chain.parts.push_back(std::move(result->expression));
    chain.stated.push_back(stated_at(k + 2, result->end));
    chain.end_token = result->end;
    return true;
  }
  return false;
}

// A fraction over three lines: "1.1", "---- = 2.62", "0.42".
bool ChainFinder::stacked(std::size_t begin) {
  bool bar = tokens_.is(begin, TokenKind::number) && tokens_.is(begin + 1, TokenKind::line) && tokens_.is(begin + 2, TokenKind::word) &&
             tokens_.word(begin + 2).starts_with("---");
  if (!bar || !tokens_.is(begin + 3, TokenKind::equals)) return false;
  std::size_t i = begin + 4;
  if (!tokens_.is(i, TokenKind::number) || !tokens_.is(i + 1, TokenKind::line) || !tokens_.is(i + 2, TokenKind::number)) return false;
  std::optional<Parsed> top = parse(tokens_, begin);
  std::optional<Parsed> bottom = parse(tokens_, i + 2);
  std::optional<Parsed> result = parse(tokens_, i);
  if (!top || !bottom || !result || !top->expression.single() || !bottom->expression.single()) return false;
  Chain chain;
  chain.first_token = begin;
  Expression fraction = top->expression;
  std::int16_t below = fraction.add_leaf(bottom->expression.leaves[0]);
  fraction.root = fraction.add_node(Op::divide, top->expression.root, below);
  chain.parts = {std::move(fraction), std::move(result->expression)};
  chain.stated = {Stated{}, stated_at(i, i + 1)};
  chain.end_token = bottom->end;
  name(chain);
  chain.span = {tokens_.all[begin].source.begin, tokens_.all[i + 2].source.end};
  at_ = chain.end_token;
  chains_.push_back(std::move(chain));
  return true;
}

}  // namespace retort::calc
