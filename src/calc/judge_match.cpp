// Whether a stated result follows from an expression, with the units that stand there or are known.
#include <algorithm>

#include "calc/judge_helpers.h"

namespace retort::calc {
namespace {

// What the written units of a product are worth together; nothing where they do not multiply.
std::optional<Scale> scale_of_units(const Expression& e, int i) {
  const Node& n = e.node(i);
  switch (n.op) {
    case Op::leaf:
      return e.leaf_of(n).unit ? e.leaf_of(n).unit->scale : Scale{};
    case Op::negate:
    case Op::add:
    case Op::subtract:
      return scale_of_units(e, n.left);
    case Op::power: {
      std::optional<Scale> base = scale_of_units(e, n.left);
      return base ? times_power(Scale{}, *base, n.index) : std::nullopt;
    }
    case Op::multiply:
    case Op::divide: {
      std::optional<Scale> left = scale_of_units(e, n.left);
      std::optional<Scale> right = scale_of_units(e, n.right);
      return left && right ? times_power(*left, *right, n.op == Op::multiply ? 1 : -1) : std::nullopt;
    }
    default:
      return std::nullopt;
  }
}

}  // namespace

// Whether what is left over between the operands' units and the result's can be the units that were not
// written: s, h, kg; but not "hundreds of hertz".
bool Judge::plausible_rest(const Dimension& written, const CompoundUnit& unit, const Expression& expression) const {
  std::optional<Scale> own = scale_of_units(expression, expression.root);
  std::optional<Scale> rest = own ? times_power(unit.scale, *own, -1) : std::nullopt;
  std::optional<Scale> inverse = rest ? times_power(Scale{}, *rest, -1) : std::nullopt;
  if (!rest || !inverse || *rest == Scale{}) return true;
  Dimension left_over = unit.dimension / written;
  bool known = false;
  bool known_inverse = false;
  bool fits = book_.usual_scale(left_over, *rest, known);
  bool inverse_fits = book_.usual_scale(Dimension{} / left_over, *inverse, known_inverse);
  if (!known && !known_inverse) return true;
  return (known && fits) || (known_inverse && inverse_fits);
}

// "5 min x 60 = 300 s", "25 cm³ × 0.1 mol/dm³ / 1000": the factor of the conversion is written out.
bool Judge::converted_by_hand(const Expression& expression, const Stated& stated) {
  static constexpr long kFactors[] = {10, 60, 100, 1000, 3600, 10000, 1000000};
  for (std::size_t i = 0; i < expression.leaves.size(); ++i) {
    const Leaf& leaf = expression.leaves[i];
    bool factor = std::any_of(std::begin(kFactors), std::end(kFactors), [&](long n) { return leaf.value == n; });
    bool only_two = expression.leaves.size() == 2 && !leaf.unit;  // "72 km/h / 3.6"
    if ((!factor && !only_two) || (leaf.unit && !leaf.bound)) continue;
    Expression without = expression;
    without.leaves[i].value = 1;
    without.leaves[i].unit.reset();
    Value v = evaluate(without, Scaling::si);
    if (v.state == State::ok && !v.clash && v.dimension == stated.unit->dimension && is_rounded(v.number / scale_of(stated), v.rough, stated.decimal))
      return true;
  }
  return false;
}

Judge::Match Judge::match(const Expression& expression, const Stated& stated) const {
  Match out;
  Value si = evaluate(expression, Scaling::si);
  Value written = evaluate(expression, Scaling::as_written);
  auto is_it = [&](const Value& v, const Exact& factor) { return is_rounded(v.number * factor, v.rough, stated.decimal); };
  out.known = si.unknown == 0 || unknown_are_pure(expression, false);
  if (!stated.unit || is_percent(stated.unit)) {
    // "50 mm / 2.0 cm": a ratio of two lengths needs them in the same unit
    bool ratio = out.known && si.dimension.none() && std::any_of(expression.leaves.begin(), expression.leaves.end(), [](const Leaf& leaf) {
                   return leaf.unit && !leaf.bound && leaf.unit->symbol != "%";
                 });
    out.right = (!ratio && is_it(written, 1)) || is_it(si, 1);
    // "the image is 45 mm, the cell 50 µm: 45/50 = 0.9": both named with units that are not the same
    bool all_bound = out.known && si.dimension.none() && !expression.single() &&
                     std::all_of(expression.leaves.begin(), expression.leaves.end(), [](const Leaf& leaf) { return leaf.unit && leaf.bound; });
    if (all_bound && !stated.unit && !is_it(si, 1)) out.right = false;
    if (is_percent(stated.unit)) out.right = out.right || is_it(written, 100) || is_it(si, 100);
    out.dimensions_fit = true;
    return out;
  }
  Exact scale = exact(stated.unit->scale);
  bool same = si.dimension == stated.unit->dimension && !si.clash;
  bool si_right = is_rounded(si.number / scale, si.rough, stated.decimal);
  if (same && is_it(written, 1)) si_right = si_right || converted_by_hand(expression, stated);
  if (si_right && same) {
    out.right = true;
    return out;
  }
  if (si.unknown == 0) {
    out.dimensions_fit = same;
    out.right = same && si_right;
    return out;
  }
  out.dimensions_fit = same || !unknown_are_pure(expression, false);
  if (si_right) {
    out.right = true;
    return out;
  }
  if (is_it(written, 1)) {
    out.right = plausible_rest(si.dimension, *stated.unit, expression);
    out.left_unconverted = !out.right;
  }
  return out;
}

// "300 g × 10 = 3000 N": the 10 is a constant if that alone makes the units fit.
std::optional<Judge::Bound> Judge::with_constant(const Bound& bound, const Stated& stated) const {
  if (!stated.unit) return std::nullopt;
  for (std::size_t i = 0; i < bound.expression.leaves.size(); ++i) {
    const Leaf& leaf = bound.expression.leaves[i];
    const CompoundUnit* unit = leaf.unit ? nullptr : book_.constant_unit(leaf.value, true);
    if (unit == nullptr) continue;
    Bound out = bound;
    out.expression.leaves[i].unit = *unit;
    out.expression.leaves[i].bound = true;
    Value v = evaluate(out.expression, Scaling::si);
    if (v.state == State::ok && !v.clash && v.unknown == 0 && v.dimension == stated.unit->dimension) return out;
  }
  return std::nullopt;
}

}  // namespace retort::calc
