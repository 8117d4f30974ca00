// Against the formulas of the book.
#include "calc/assignments.h"
#include "calc/slips.h"

namespace retort::calc {

namespace {

// "KE of the bus: mass 0.3 kg, speed 4 m/s, so 0.3 × 4² = 4.8 J": one quantity is spoken of, and each number of the sum has a
// name and a unit.
bool said_of_all(const std::vector<std::vector<QuantityId>>& names, const Expression& e, const Named& named) {
  if (named.nearby.size() != 1) return false;
  std::size_t values = 0;
  for (std::size_t i = 0; i < e.leaves.size(); ++i) {
    const Leaf& leaf = e.leaves[i];
    if (leaf.source.empty() || leaf.figures <= 0) continue;
    if (names[i].empty() || !leaf.unit) return false;
    ++values;
  }
  return values > 1;
}

}  // namespace

// "3 loops is 1.5 waves": divided by the waves, where the loops are named too.
bool Judge::half_of_loops(const Expression& e) const {
  return std::any_of(near_.begin(), near_.end(), [&](const Fact& fact) {
    bool loops = fact.counted && !fact.names.empty() && book_.quantity(fact.names[0]).name == "loops";
    return loops && std::any_of(e.leaves.begin(), e.leaves.end(), [&](const Leaf& leaf) { return !leaf.unit && leaf.value * 2 == fact.leaf.value; });
  });
}

// The sum is right as written, but it is not the sum that the named quantity needs.
bool Judge::wrong_formula(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const {
  struct Candidate {
    Expression expression;
    int score;
    const Formula* formula;
    QuantityId quantity;
  };
  std::vector<Candidate> candidates;
  bool fits_usual = false;
  bool any_unit = std::any_of(bound.expression.leaves.begin(), bound.expression.leaves.end(), [](const Leaf& leaf) { return leaf.unit.has_value(); });
  int loose = named.tight && !named.quantities.empty() ? (any_unit ? 1 : 3) : 0;
  if (half_of_loops(bound.expression)) return false;
  if (bound.expression.node(bound.expression.root).right < 0) return false;  // "sin 35 is 0.574" stands for itself
  const std::vector<QuantityId>& wanted = named.quantities.empty() ? named.nearby : named.quantities;
  for (QuantityId id : wanted) {
    const QuantityEntry& entry = book_.quantity(id);
    if (is_percent(stated.unit) && entry.unit.symbol != "%" && entry.named_only && entry.unit.dimension.none()) continue;
    if (named.quantities.empty() && !said_of_all(bound.names, bound.expression, named) && stated.unit &&
        evaluate(bound.expression, Scaling::si).unknown == 0 && evaluate(bound.expression, Scaling::si).dimension == stated.unit->dimension)
      return false;
    if (stated.unit && !is_percent(stated.unit) && book_.quantity(id).unit.dimension != stated.unit->dimension && !book_.quantity(id).named_only)
      continue;
    for (const Formula* known : book_.for_text(id, tokens_)) {
      const Formula& formula = *known;
      if (squared_in_head(formula.tree, bound.expression)) continue;
      for (const auto& one : Assignments(book_, formula, bound.expression, bound.names).run(formula.turned ? 0 : loose)) {
        Expression f = filled(formula, one.chosen);
        if (!formula.when.empty() && doubled(bound.expression)) return false;  // "there and back" is in the number already
        if (Match m = match(f, stated); m.right && (m.dimensions_fit || evaluate(f, Scaling::si).unknown > 0)) {
          // without a unit, a sum in mixed units that was not written with them was meant in the base units
          Value si = evaluate(f, Scaling::si);
          if (stated.unit || is_rounded(si.number, si.rough, stated.decimal) || !bound.any || si.unknown > 0) {
            fits_usual = true;
            if (!formula.when.empty()) return false;
          }
        }
        candidates.push_back({std::move(f), one.score, &formula, id});
      }
      // one value of the formula was left out of the sum, but stands in the text
      for (const auto& one : Assignments(book_, formula, bound.expression, bound.names).run_with_one_of(near_)) {
        candidates.push_back({filled(formula, one.chosen), one.score, &formula, id});
      }
    }
  }
  bool special = std::any_of(candidates.begin(), candidates.end(), [](const Candidate& c) { return !c.formula->when.empty(); });
  if (special)
    std::erase_if(candidates, [](const Candidate& c) { return c.formula->when.empty(); });
  else if (fits_usual)
    return false;
  std::stable_sort(candidates.begin(), candidates.end(), [](const Candidate& a, const Candidate& b) { return a.score > b.score; });
  for (const Candidate& c : candidates) {
    Exact scale = stated.unit ? scale_of(stated) : exact(book_.quantity(c.quantity).unit.scale);
    std::vector<Slip> slips = find_slips(c.expression, scale, Scaling::si, stated.decimal);
    if (slips.empty() || slips[0] == Slip::rounding) continue;
    // a letter and one figure may stand for much
    if (c.score == 0 && named.symbol && !named.formula && stated.decimal.figures < 2 && slips[0] == Slip::operation) continue;
    if (slips.size() > 1 && find_slips(c.expression, Exact(1), Scaling::as_written, stated.decimal) == std::vector<Slip>{slips[0]}) slips.resize(1);
    if (c.score == 0 && slips[0] == Slip::power_of_ten) continue;  // numbers without unit or name say nothing of it
    bool counts = std::any_of(c.formula->variables.begin(), c.formula->variables.end(),
                              [&](QuantityId id) { return id != kNoQuantity && book_.quantity(id).count; });
    if (counts && (slips[0] == Slip::operation || slips[0] == Slip::square)) slips = {Slip::count};  // loops for waves, or waves for loops
    Value v = evaluate(c.expression, Scaling::si);
    out.verdict = Verdict::wrong;
    out.slips = slips;
    out.formula = c.formula->text;
    out.correct = sensible(v.number / scale, c.expression, &stated.decimal, stated.unit ? unit_of(stated) : book_.quantity(c.quantity).unit.symbol);
    return true;
  }
  return false;
}

}  // namespace retort::calc
