// Divided by the wrong number of readings, waves or gaps.
#include <cstdlib>

#include "calc/judge_helpers.h"
#include "calc/ordinals.h"
#include "calc/slips.h"

namespace retort::calc {

bool Judge::counted_exactly(long n) const {
  return std::any_of(near_.begin(), near_.end(), [&](const Fact& fact) { return fact.counted && fact.leaf.value == n; });
}

// The number of things the text counts, near enough to `not_this` to be taken for it; 0 for none.
long Judge::counted_things(long not_this, bool named_one, Span own) const {
  long found = 0;
  long last = last_of_a_row(tokens_, near_from_, near_to_);  // "from the first crest to the sixth"
  if (last > 0 && last == not_this) return last - 1;
  long only = 0;
  int counts = 0;
  for (const Fact& fact : near_) {
    if (!fact.counted || fact.leaf.value.get_den() != 1 || fact.leaf.value > 1000) continue;
    bool inside = fact.leaf.source.begin >= own.begin && fact.leaf.source.end <= own.end;
    std::string_view things = book_.quantity(fact.names[0]).name;
    if (inside || things == "loops" || things == "readings") continue;
    long n = fact.leaf.value.get_num().get_si();
    if (n == not_this) {
      if (last == kToTheLast) continue;
      return 0;
    }
    if (n > 1) ++counts, only = n;
    if (n > 1 && (std::labs(n - not_this) == 1 || n == 2 * not_this || not_this == 2 * n)) found = n;
  }
  if (last == kToTheLast && counted_exactly(not_this)) last = not_this;
  if (last > 0 && last == not_this) found = last - 1;
  return found == 0 && named_one && counts == 1 ? only : found;
}

// "A leg has 4 cm², there are four: 4 × 4 = 16 cm²": one number of the text gives its unit to one number of the sum, and an equal
// one is a count, if the sum comes out so. Nothing if it does not.
std::optional<Judge::Bound> Judge::one_is_a_count(const Bound& bound, const Stated& stated, Span own) const {
  const std::vector<Leaf>& leaves = bound.expression.leaves;
  auto givers = [&](const Leaf& leaf) {
    return std::count_if(near_.begin(), near_.end(), [&](const Fact& fact) {
      bool inside = fact.leaf.source.begin >= own.begin && fact.leaf.source.end <= own.end;
      return !inside && fact.leaf.value == leaf.value && fact.leaf.unit == leaf.unit;
    });
  };
  for (std::size_t i = 0; i < leaves.size(); ++i) {
    for (std::size_t k = 0; k < leaves.size(); ++k) {
      const Leaf& a = leaves[i];
      const Leaf& b = leaves[k];
      if (i == k || !a.unit || !b.bound || a.value != b.value || a.unit != b.unit || b.value.get_den() != 1 || givers(b) != 1) continue;
      Bound out = bound;
      out.expression.leaves[k].unit.reset();
      out.expression.leaves[k].bound = false;
      out.names[k].clear();
      Match m = match(out.expression, stated);
      if (m.right && m.dimensions_fit && !m.left_unconverted) return out;
    }
  }
  return std::nullopt;
}

bool Judge::wrong_count(const Bound& bound, const Stated& stated, const Named& named, Span own, Judgement& out) const {
  const Expression& e = bound.expression;
  long divisor = 0;
  int sum = -1;
  std::size_t terms = terms_of_mean(e, divisor, sum);
  Exact total;
  long right_count = 0;
  if (terms > 1) {
    bool mean = is(named, "mean") || terms > 2;
    if (mean && static_cast<long>(terms) != divisor && std::labs(static_cast<long>(terms) - divisor) <= 2) right_count = static_cast<long>(terms);
  } else {
    const Node& root = e.node(e.root);
    if (root.op != Op::divide || e.node(root.right).op != Op::leaf || e.node(root.left).op != Op::leaf) return false;
    const Leaf& by = e.leaf_of(e.node(root.right));
    if (by.value.get_den() != 1 || by.value < 1 || by.value > 1000 || (by.unit && (!by.bound || by.unit->dimension == dimension::kTime)))
      return false;
    divisor = by.value.get_num().get_si();
    sum = root.left;
    long listed = readings_with_sum(tokens_, near_, e.leaf_of(e.node(root.left)).value, own);
    if (is(named, "mean") || listed > 2)
      right_count = listed;
    else if (!e.leaf_of(e.node(root.left)).unit && is(named, "frequency"))
      return false;
    else
      right_count = counted_things(divisor, named.tight && (is(named, "period") || is(named, "wavelength")), own);
    if (right_count == divisor) right_count = 0;
  }
  if (right_count == 0) return false;
  Expression part = e;
  part.root = static_cast<std::int16_t>(sum);
  Value v = evaluate(part, stated.unit && !is_percent(stated.unit) && terms == 0 ? Scaling::si : Scaling::as_written);
  if (v.state != State::ok) return false;
  Exact value = v.number / right_count;
  if (stated.unit && terms == 0 && v.dimension == stated.unit->dimension) value /= scale_of(stated);
  out.verdict = Verdict::wrong;
  out.slips = {Slip::count};
  out.correct = sensible(value, e, &stated.decimal, unit_of(stated));
  return true;
}

}  // namespace retort::calc
