// Parts of a whole: "20 % of 40 is 8", "a third of 9 N is 3 N", "12 out of 40 is 30 %".
#include "calc/prose_finder.h"

namespace retort::calc {
namespace {

bool is_percent(const Leaf& leaf) {
  return leaf.unit && leaf.unit->symbol == "%";
}

}  // namespace

// Whether "of" (and nothing but an article) stands between two numbers.
bool Prose::joined_by_of(std::size_t a, std::size_t b) const {
  bool of = false;
  for (std::size_t i = facts_[a].token + 1; i < facts_[b].token; ++i) {
    std::string_view word = tokens_.word(i);
    of = of || word == "of";
    if (word != "of" && word != "the" && word != "that" && word != "this" && word != "my" && word != "our") return false;
  }
  return of;
}

// The sign or the verb stands right before the result: "of 40 = 8", "of 40 is 8", "of 40 so that's 8".
bool Prose::right_after(std::size_t fact, const Result& r) const {
  return r.lead != Lead::none && r.token - facts_[fact].token <= 6;
}

bool Prose::percent_of(const Result& r) {
  if (r.fact < 2) return false;
  const Leaf& whole = facts_[r.fact - 1].leaf;
  const Leaf& part = facts_[r.fact - 2].leaf;
  if (!is_percent(part) || is_percent(whole) || !joined_by_of(r.fact - 2, r.fact - 1) || !right_after(r.fact - 1, r)) return false;
  if (whole.unit && r.stated.unit && whole.unit->dimension != r.stated.unit->dimension) return false;
  Expression e;
  std::int16_t a = e.add_leaf(part);
  std::int16_t b = e.add_leaf(with_unit(whole, r.stated.unit));
  e.root = e.add_node(Op::multiply, a, b);
  Scaling scaling = r.stated.unit ? Scaling::si : Scaling::as_written;
  Leaf plain = part;
  plain.unit.reset();
  plain.value = part.value / 100;
  Expression written = e;
  written.leaves[0] = plain;
  const Expression& used = written;
  Value v = evaluate(used, scaling);
  if (v.state != State::ok) return false;
  if (is_rounded(v.number / scale(r.stated), v.rough, r.stated.decimal))
    report(r, part.source.begin, right(used, r));
  else
    report(r, part.source.begin, wrong(used, r.stated, find_slips(used, scale(r.stated), scaling, r.stated.decimal)));
  return true;
}

// "12 out of 40 is 30 %", "useful 40 J out of 200 J, efficiency 0.2"
bool Prose::out_of(const Result& r) {
  if (r.fact < 2) return false;
  bool percent = r.stated.unit && r.stated.unit->symbol == "%";
  const Leaf& whole = facts_[r.fact - 1].leaf;
  const Leaf& part = facts_[r.fact - 2].leaf;
  if ((r.stated.unit && !percent) || r.token - facts_[r.fact - 1].token > 10 || whole.value == 0 || is_percent(whole) || is_percent(part))
    return false;
  if (whole.unit && part.unit && whole.unit->dimension != part.unit->dimension) return false;
  bool said = false;
  for (std::size_t i = facts_[r.fact - 2].token + 1; i + 1 < facts_[r.fact - 1].token; ++i)
    said = said || (tokens_.word(i) == "out" && tokens_.word(i + 1) == "of");
  if (!said || (!percent && r.lead == Lead::none)) return false;
  Expression e;
  std::int16_t a = e.add_leaf(with_unit(part, whole.unit));
  std::int16_t b = e.add_leaf(with_unit(whole, part.unit));
  e.root = e.add_node(Op::divide, a, b);
  Value v = evaluate(e, Scaling::si);
  if (v.state != State::ok) return false;
  Exact value = percent ? Exact(v.number * 100) : v.number;
  if (is_rounded(value, false, r.stated.decimal)) {
    report(r, part.source.begin, right(e, r));
    return true;
  }
  if (!percent || r.lead == Lead::none) return false;
  std::vector<Slip> slips = find_slips(e, percent ? Exact(1, 100) : Exact(1), Scaling::si, r.stated.decimal);
  Judgement judgement = wrong(e, r.stated, std::move(slips));
  judgement.correct = sensible(value, e, &r.stated.decimal, "%");
  report(r, part.source.begin, std::move(judgement));
  return true;
}

// "the difference between 45 and 18 is 27", "12.4 g down to 11.8 g = 0.6 g"
bool Prose::difference_said(const Result& r) {
  if (r.fact < 2 || r.lead == Lead::none || r.token - facts_[r.fact - 1].token > 4) return false;
  const Fact& later = facts_[r.fact - 1];
  const Fact& earlier = facts_[r.fact - 2];
  bool between = false;
  for (std::size_t i = earlier.token > 4 ? earlier.token - 4 : 0; i < earlier.token; ++i)
    between = between || (tokens_.word(i) == "between" && i > 0 && tokens_.word(i - 1).starts_with("diff"));
  bool equals = tokens_.is(r.token - 1, TokenKind::equals) || tokens_.is(r.token - 2, TokenKind::equals);
  bool to = false;
  for (std::size_t i = earlier.token + 1; i < later.token && later.token - earlier.token <= 4; ++i) to = to || tokens_.word(i) == "to";
  if (!between && !(equals && to)) return false;
  const auto& unit = r.stated.unit;
  auto other = [&](const Leaf& leaf) { return leaf.unit && unit && leaf.unit->dimension != unit->dimension; };
  if (other(later.leaf) || other(earlier.leaf)) return false;
  Expression e;
  bool falls = later.leaf.value < earlier.leaf.value;
  std::int16_t a = e.add_leaf(with_unit((falls ? earlier : later).leaf, unit));
  std::int16_t b = e.add_leaf(with_unit((falls ? later : earlier).leaf, unit));
  e.root = e.add_node(Op::subtract, a, b);
  spread_units(e);
  std::uint32_t begin = earlier.leaf.source.begin;
  if (fits(e, r.stated))
    report(r, begin, right(e, r));
  else
    report(r, begin, wrong(e, r.stated, find_slips(e, scale(r.stated), unit ? Scaling::si : Scaling::as_written, r.stated.decimal)));
  return true;
}

// "a third of", "halving 14 gives": the part, 0 if none is said; `i` is the word.
Exact Prose::part_said(std::size_t i) const {
  std::string_view word = tokens_.word(i);
  std::string_view before = i > 0 ? tokens_.word(i - 1) : std::string_view{};
  bool one = before == "a" || before == "one";
  if (word == "third" && one) return Exact(1, 3);
  if (word == "quarter" && one) return Exact(1, 4);
  if (word == "fifth" && one) return Exact(1, 5);
  if (word == "tenth" && one) return Exact(1, 10);
  if (word == "halving") return Exact(1, 2);
  if (word == "doubling") return 2;
  if (word == "tripling" || word == "trebling") return 3;
  return 0;
}

}  // namespace retort::calc
