// A number that follows, with units that do not.
#include "calc/judge_helpers.h"
#include "calc/slips.h"

namespace retort::calc {

// Of the quantities named nearby, those that have the expression's own dimension.
std::vector<QuantityId> Judge::only_fitting(const std::vector<QuantityId>& nearby, const Expression& e) const {
  std::vector<QuantityId> out;
  Value si = evaluate(e, Scaling::si);
  if (si.unknown > 0 || si.dimension.none()) return out;
  for (QuantityId id : nearby) {
    if (book_.quantity(id).unit.dimension == si.dimension) out.push_back(id);
  }
  return out;
}

// A quotient of two values whose units are written one after the other.
bool Judge::sign_left_out(const Expression& e, const CompoundUnit& stated) {
  const Node& root = e.node(e.root);
  if (root.op != Op::divide || e.node(root.left).op != Op::leaf || e.node(root.right).op != Op::leaf) return false;
  const Leaf& top = e.leaf_of(e.node(root.left));
  const Leaf& below = e.leaf_of(e.node(root.right));
  return top.unit && below.unit && unit_product(*top.unit, *below.unit).dimension == stated.dimension && stated.symbol.find('/') == std::string::npos;
}

// The number follows from the expression as written, but the units do not: which one slip would mend both?
bool Judge::wrong_structure(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const {
  if (!stated.unit || is_percent(stated.unit)) return false;
  const Expression& e = bound.expression;
  Value si = evaluate(e, Scaling::si);
  Value written = evaluate(e, Scaling::as_written);
  if (si.state != State::ok) return false;
  bool computed = is_rounded(written.number, written.rough, stated.decimal) || is_rounded(si.number / scale_of(stated), si.rough, stated.decimal) ||
                  is_badly_rounded(written.number, written.rough, stated.decimal);
  bool same = si.dimension == stated.unit->dimension && !si.clash;
  if (!computed || same) return false;
  bool strict = si.unknown == 0 || unknown_are_pure(e, true);
  if (!strict && !unknown_are_pure(e, false)) return false;
  if (named.quantities.empty() && !only_fitting(named.nearby, e).empty() && !si.clash) return false;
  bool expected = std::any_of(named.quantities.begin(), named.quantities.end(),
                              [&](QuantityId id) { return book_.quantity(id).unit.dimension == si.dimension && !si.dimension.none(); });
  bool wanted = std::any_of(named.quantities.begin(), named.quantities.end(),
                            [&](QuantityId id) { return book_.quantity(id).unit.dimension == stated.unit->dimension; });
  if (expected && !wanted && !si.clash) return false;           // only the unit is wrong
  if (!wanted && sign_left_out(e, *stated.unit)) return false;  // "4 N / 0.08 m = 50 Nm": only the sign is left out
  for (Slip slip : {Slip::upside_down, Slip::operation, Slip::square}) {
    for (const Altered& one : altered(e)) {
      if (one.slip != slip || (slip == Slip::square && !strict && !one.whole)) continue;
      Value v = evaluate(one.expression, Scaling::si);
      if (v.state != State::ok || v.clash || v.dimension != stated.unit->dimension || v.unknown > si.unknown) continue;
      out.verdict = Verdict::wrong;
      out.slips = {slip};
      out.correct = sensible(v.number / scale_of(stated), e, &stated.decimal, unit_of(stated));
      return true;
    }
  }
  return false;
}

// Whether a formula for the quantity takes a value in a unit that the sum has: of "F = 0.75 kg × 2.4" it is the force, not the frequency.
bool Judge::takes_unit_of(const QuantityEntry& quantity, const Expression& e) const {
  QuantityId id = book_.find(quantity.name);
  if (id == kNoQuantity) return false;
  return std::any_of(book_.giving(id).begin(), book_.giving(id).end(), [&](std::uint16_t index) {
    const std::vector<QuantityId>& variables = book_.formulas()[index].variables;
    return std::any_of(variables.begin(), variables.end(), [&](QuantityId v) {
      return v != kNoQuantity && std::any_of(e.leaves.begin(), e.leaves.end(),
                                             [&](const Leaf& leaf) { return leaf.unit && leaf.unit->dimension == book_.quantity(v).unit.dimension; });
    });
  });
}

bool Judge::wrong_unit(const Bound& bound, const Stated& stated, const Named& by_name, Judgement& out) const {
  Named named = by_name;
  if (named.quantities.empty()) named.quantities = only_fitting(by_name.nearby, bound.expression);
  if (!stated.unit || is_percent(stated.unit) || named.quantities.empty()) return false;
  const Expression& e = bound.expression;
  Value si = evaluate(e, Scaling::si);
  Value written = evaluate(e, Scaling::as_written);
  bool known = si.unknown == 0 || unknown_are_pure(e, false);
  if (si.dimension == stated.unit->dimension && !si.clash) return false;
  const QuantityEntry* best = nullptr;
  for (QuantityId id : named.quantities) {
    const QuantityEntry& entry = book_.quantity(id);
    if (entry.unit.dimension.none() && entry.name != "refractive index" && entry.name != "efficiency" && entry.name != "magnification" &&
        entry.name != "retention factor")
      return false;
    if (entry.unit.dimension == stated.unit->dimension) return false;
    if (entry.unit.dimension == dimension::kTemperature && stated.unit->dimension == dimension::kAngle) return false;
    if (entry.name == "gravitational field strength" ||
        (entry.name == "acceleration" && stated.unit->dimension == dimension::kForce / dimension::kMass))
      return false;
    bool agrees = known && !si.dimension.none() && entry.unit.dimension == si.dimension;
    if (best == nullptr || agrees || (!takes_unit_of(*best, e) && takes_unit_of(entry, e))) best = &entry;
  }
  bool agrees = known && !si.dimension.none() && best->unit.dimension == si.dimension && !si.clash;
  if ((!named.tight || (named.symbol && !named.formula)) && !agrees) return false;
  bool number_fits = is_rounded(written.number, written.rough, stated.decimal) || is_rounded(si.number, si.rough, stated.decimal);
  if (!number_fits) return false;
  out.verdict = Verdict::wrong;
  out.slips = {Slip::unit_wrong};
  out.correct = sensible(agrees ? si.number / exact(best->unit.scale) : written.number, e, &stated.decimal, best->unit.symbol);
  return true;
}

}  // namespace retort::calc
