// Slips that the kind of quantity gives away.
#include "calc/judge_helpers.h"
#include "calc/slips.h"

namespace retort::calc {

// "2.1 + 2.3 + 2.2 / 3 = 2.2": the brackets of a mean are not written, but reckoned with.
std::optional<Expression> Judge::brackets_meant(const Expression& plain, const Stated& stated) {
  const Node& root = plain.node(plain.root);
  if ((root.op != Op::add && root.op != Op::subtract) || plain.node(root.right).op != Op::divide) return std::nullopt;
  const Node division = plain.node(root.right);
  if (plain.node(division.left).op != Op::leaf || plain.node(division.right).op != Op::leaf) return std::nullopt;
  Expression meant = plain;
  std::int16_t top = meant.add_node(root.op, root.left, division.left);
  meant.root = meant.add_node(Op::divide, top, division.right);
  Value v = evaluate(meant, Scaling::as_written);
  bool percent = is_percent(stated.unit) && !has_hundred(plain);
  if (v.state != State::ok || !is_rounded(percent ? Exact(v.number * 100) : v.number, v.rough, stated.decimal)) return std::nullopt;
  return meant;
}

// "extension = 12.2 + 4.2": a quantity that is a difference.
bool Judge::added_for_taken_away(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const {
  const Expression& e = bound.expression;
  const Node& root = e.node(e.root);
  if (root.op != Op::add || !named.tight || e.node(root.left).op != Op::leaf || e.node(root.right).op != Op::leaf) return false;
  bool difference = std::any_of(named.quantities.begin(), named.quantities.end(), [&](QuantityId id) {
    std::vector<const Formula*> formulas = book_.for_text(id, tokens_);
    return std::any_of(formulas.begin(), formulas.end(),
                       [](const Formula* f) { return !f->turned && f->tree.node(f->tree.root).op == Op::subtract; });
  });
  if (!difference) return false;
  Expression meant = e;
  meant.node(meant.root).op = Op::subtract;
  Value v = evaluate(meant, stated.unit ? Scaling::si : Scaling::as_written);
  out.verdict = Verdict::wrong;
  out.slips = {Slip::operation};
  bool in_units = v.dimension == (stated.unit ? stated.unit->dimension : Dimension{});
  out.correct = sensible(abs(in_units ? Exact(v.number / scale_of(stated)) : v.number), e, &stated.decimal, unit_of(stated));
  return true;
}

// An efficiency above 1 or a refractive index below 1: the division is the wrong way up.
bool Judge::out_of_range(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const {
  const Expression& e = bound.expression;
  bool percent = is_percent(stated.unit);
  auto divisions = std::count_if(e.nodes.begin(), e.nodes.end(), [](const Node& n) { return n.op == Op::divide; });
  const std::vector<QuantityId>& names = named.quantities.empty() ? named.nearby : named.quantities;
  if (divisions != 1 || names.empty() || (stated.unit && !percent)) return false;
  Value v = evaluate(e, Scaling::si);
  if (v.state != State::ok || v.number == 0 || !v.dimension.none()) return false;
  Exact fraction = percent && has_hundred(e) ? Exact(v.number / 100) : v.number;
  for (QuantityId id : names) {
    const QuantityEntry& entry = book_.quantity(id);
    if (named.quantities.empty() && entry.name != "efficiency") continue;  // "efficiency: 80 J goes in ... so 80/60"
    bool beyond = (entry.most && fraction > *entry.most) || (entry.least && fraction < *entry.least);
    if (!beyond) continue;
    Exact value = 1 / fraction;
    out.verdict = Verdict::wrong;
    out.slips = {Slip::upside_down};
    out.correct = sensible(percent ? Exact(value * 100) : value, e, &stated.decimal, unit_of(stated));
    return true;
  }
  return false;
}

// "uncertainty is half the range which is 14.7 - 14.1 = 0.6"
bool Judge::half_left_out(const Bound& bound, const Stated& stated, const Named& named, Span own, Judgement& out) const {
  const Expression& e = bound.expression;
  if (e.node(e.root).op != Op::subtract || !is(named, "uncertainty")) return false;
  bool half = false;
  bool plain_range = false;
  for (std::size_t i = first_token_from(own.begin > 60 ? own.begin - 60 : 0); i < tokens_.size() && tokens_.all[i].source.begin < own.begin; ++i) {
    half = half || tokens_.word(i) == "half";
    // "the range is 0.52 - 0.48 = 0.04" is no more than the range
    if (tokens_.word(i) == "range" && tokens_.word(i - 2) != "half" && tokens_.word(i - 1) != "half") {
      half = false;
      plain_range = tokens_.word(i + 1) == "is" || tokens_.word(i + 1) == "was" || tokens_.is(i + 1, TokenKind::equals);
    }
  }
  if (plain_range) return false;
  for (std::size_t i = first_token_from(own.end); i < tokens_.size() && tokens_.all[i].source.begin < own.end + 45; ++i)
    half = half || tokens_.word(i) == "half";
  if (!half) return false;
  Value v = evaluate(e, Scaling::as_written);
  out.verdict = Verdict::wrong;
  out.slips = {Slip::square};
  out.correct = sensible(v.number / 2, e, &stated.decimal, unit_of(stated));
  return true;
}

// The pupil's own formula in symbols with the numbers put in, in their order, against what was reckoned:
// "2π√(L/g) = 2π × 0.4/9.8".
bool Judge::against_symbols(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const {
  if (!named.symbols || bound.expression.single()) return false;
  Expression tree = *named.symbols;
  std::vector<Leaf*> variables;
  std::vector<Exact> constants;
  for (Leaf& leaf : tree.leaves) {
    if (leaf.figures == -1)
      variables.push_back(&leaf);
    else
      constants.push_back(leaf.value);
  }
  std::vector<const Leaf*> numbers;
  for (const Leaf& leaf : bound.expression.leaves) {
    auto constant = std::find_if(constants.begin(), constants.end(), [&](const Exact& value) { return abs(value - leaf.value) < Exact(1, 100); });
    if (constant != constants.end())
      constants.erase(constant);
    else if (leaf.figures > 0 || !leaf.source.empty())
      numbers.push_back(&leaf);
  }
  if (numbers.size() != variables.size()) return false;
  if (squared_in_head(tree, bound.expression)) return false;
  // a square that was worked out before ("T² = 2.02 s²")
  if (std::any_of(numbers.begin(), numbers.end(),
                  [](const Leaf* leaf) { return leaf->bound && leaf->unit && leaf->unit->symbol.find("\u00B2") != std::string::npos; }))
    return false;
  for (std::size_t i = 0; i < numbers.size(); ++i) *variables[i] = *numbers[i];
  spread_units(tree);
  Scaling scaling = evaluate(bound.expression, Scaling::as_written).number == 0 ? Scaling::si : Scaling::as_written;
  Value formula = evaluate(tree, scaling);
  if (formula.state != State::ok || formula.number == 0) return false;
  Exact factor = is_percent(stated.unit) && !has_hundred(tree) ? Exact(100) : Exact(1);
  Value si = evaluate(tree, Scaling::si);
  if (is_rounded(formula.number * factor, formula.rough, stated.decimal) || is_rounded(si.number / scale_of(stated), si.rough, stated.decimal))
    return false;
  std::vector<Slip> slips = find_slips(tree, 1 / factor, scaling, stated.decimal);
  if (slips.empty() || slips[0] == Slip::rounding || slips[0] == Slip::power_of_ten) return false;
  out.verdict = Verdict::wrong;
  out.slips = slips;
  out.correct = sensible(formula.number * factor, bound.expression, &stated.decimal, unit_of(stated));
  return true;
}

namespace {

bool is_square(const Exact& value) {
  return mpz_perfect_square_p(value.get_num().get_mpz_t()) != 0 && mpz_perfect_square_p(value.get_den().get_mpz_t()) != 0;
}

}  // namespace

// Whether a number of the sum was said before it.
bool Judge::stands_near(const Leaf& leaf) const {
  return std::any_of(near_.begin(), near_.end(),
                     [&](const Fact& fact) { return fact.leaf.value == leaf.value && fact.leaf.source.begin < leaf.source.begin; });
}

// A square that was worked out in the head ("I = 1.5 A, P = I²R = 2.25 × 4.0").
bool Judge::squared_in_head(const Expression& formula, const Expression& e) const {
  bool squared = std::any_of(formula.nodes.begin(), formula.nodes.end(), [](const Node& n) { return n.op == Op::power; });
  return squared && std::any_of(e.leaves.begin(), e.leaves.end(), [&](const Leaf& leaf) {
           if (leaf.value > 3 && !leaf.unit && is_square(leaf.value) && !stands_near(leaf)) return true;
           return std::any_of(near_.begin(), near_.end(), [&](const Fact& fact) {
             return fact.leaf.value > 0 && fact.leaf.value != 1 && fact.leaf.value * fact.leaf.value == leaf.value;
           });
         });
}

// Whether a number of the expression is twice another one of the text.
bool Judge::doubled(const Expression& e) const {
  return std::any_of(e.leaves.begin(), e.leaves.end(), [&](const Leaf& leaf) {
    return std::any_of(near_.begin(), near_.end(), [&](const Fact& fact) { return fact.leaf.value * 2 == leaf.value && fact.leaf.value > 5; });
  });
}

// "3/55 × 100" for a change from 52 to 55: the last value was taken where the first is needed.
bool Judge::wrong_base(const Bound& bound, const Stated& stated, const Named& named, Span own, Judgement& out) const {
  const Expression& e = bound.expression;
  if (!is_percent(stated.unit) || !is(named, "percentage change")) return false;
  for (const Node& n : e.nodes) {
    if (n.op != Op::divide || e.node(n.right).op != Op::leaf) continue;
    const Exact& base = e.leaf_of(e.node(n.right)).value;
    Expression part = e;
    part.root = n.left;
    Value change = evaluate(part, Scaling::as_written);
    for (std::size_t i = 0; i + 1 < near_.size() && near_[i].token < near_[i + 1].token; ++i) {
      auto inside = [&](const Fact& fact) { return fact.leaf.source.begin >= own.begin && fact.leaf.source.end <= own.end; };
      if (inside(near_[i]) || inside(near_[i + 1])) continue;
      if (tokens_.is(near_[i].token + 1, TokenKind::minus)) continue;  // "3.25 - 3.90": the first one is taken away from
      const Exact& first = near_[i].leaf.value;
      const Exact& last = near_[i + 1].leaf.value;
      if (first == 0 || last != base || first == last || abs(last - first) != abs(change.number)) continue;
      out.verdict = Verdict::wrong;
      out.slips = {Slip::operation};
      out.correct = sensible(abs(change.number) / first * 100, e, &stated.decimal, unit_of(stated));
      return true;
    }
  }
  return false;
}

}  // namespace retort::calc
