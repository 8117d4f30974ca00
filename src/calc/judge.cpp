#include "calc/judge.h"

#include <algorithm>
#include <cstdlib>

#include "calc/judge_helpers.h"
#include "calc/slips.h"

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

// The unit that the expression's own units make; empty if some are unknown.
std::optional<CompoundUnit> own_unit(const Expression& e, int i) {
  const Node& n = e.node(i);
  switch (n.op) {
    case Op::leaf: {
      const Leaf& leaf = e.leaf_of(n);
      return leaf.unit ? *leaf.unit : CompoundUnit{};
    }
    case Op::add:
    case Op::subtract: {
      auto left = own_unit(e, n.left);
      auto right = own_unit(e, n.right);
      if (!left || !right) return std::nullopt;
      return left->dimension.none() ? right : left;
    }
    case Op::negate:
      return own_unit(e, n.left);
    case Op::multiply:
    case Op::divide: {
      auto left = own_unit(e, n.left);
      auto right = own_unit(e, n.right);
      if (!left || !right) return std::nullopt;
      return n.op == Op::multiply ? unit_product(*left, *right) : unit_quotient(*left, *right);
    }
    case Op::power: {
      auto base = own_unit(e, n.left);
      if (!base) return std::nullopt;
      CompoundUnit out = *base;
      for (int k = 1; k < n.index; ++k) out = unit_product(out, *base);
      return out;
    }
    default:
      return std::nullopt;
  }
}

}  // namespace

bool Judge::is(const Named& named, std::string_view quantity) const {
  return std::any_of(named.quantities.begin(), named.quantities.end(), [&](QuantityId id) { return book_.quantity(id).name == quantity; });
}

// In a long text only what stands in the neighbourhood is looked at, so that time stays linear.
void Judge::look_around(Span own) const {
  constexpr std::size_t kNear = 120;  // numbers on each side
  near_.clear();
  auto at = std::partition_point(facts_.begin(), facts_.begin() + static_cast<std::ptrdiff_t>(own_facts_),
                                 [&](const Fact& fact) { return fact.leaf.source.begin < own.begin; });
  auto index = static_cast<std::size_t>(at - facts_.begin());
  std::size_t from = index > kNear ? index - kNear : 0;
  near_.insert(near_.end(), facts_.begin() + static_cast<std::ptrdiff_t>(from),
               facts_.begin() + static_cast<std::ptrdiff_t>(std::min(own_facts_, index + kNear)));
  near_.insert(near_.end(), facts_.begin() + static_cast<std::ptrdiff_t>(own_facts_), facts_.end());
  near_from_ = first_token_from(own.begin > 4000 ? own.begin - 4000 : 0);
  near_to_ = first_token_from(own.end + 2000);
}

std::size_t Judge::first_token_from(std::uint32_t byte) const {
  auto at = std::partition_point(tokens_.all.begin(), tokens_.all.end(), [&](const Token& token) { return token.source.begin < byte; });
  return static_cast<std::size_t>(at - tokens_.all.begin());
}

Judge::Bound Judge::bind(const Expression& expression, const Named& named, Span own) const {
  Bound out{expression, {}, false};
  for (Leaf& leaf : out.expression.leaves) {
    std::vector<QuantityId> names;
    if (!leaf.source.empty() && leaf.figures > 0) {
      const Fact* best = nullptr;
      for (const Fact& fact : near_) {
        bool inside = fact.leaf.source.begin >= own.begin && fact.leaf.source.end <= own.end;
        if (inside || fact.leaf.value != leaf.value) continue;
        if (leaf.unit && fact.leaf.unit && fact.leaf.unit->dimension != leaf.unit->dimension) continue;
        // "2 ×" of a formula is not the "2.0 m" of the text
        if (!leaf.unit && may_be_pure(leaf) && fact.leaf.last_place != leaf.last_place) continue;
        bool better = best == nullptr || (fact.leaf.unit && !best->leaf.unit) ||
                      (fact.leaf.source.end <= own.begin && (fact.leaf.unit.has_value() || !best->leaf.unit));
        if (better) best = &fact;
      }
      if (best != nullptr) {
        names = best->names;
        if (!leaf.unit && best->leaf.unit && !best->leaf.unit->dimension.none()) {
          leaf.unit = best->leaf.unit;
          leaf.bound = true;
          out.any = true;
        }
      }
      if (!leaf.unit) {
        if (const CompoundUnit* unit = book_.constant_unit(leaf.value)) {
          leaf.unit = *unit;
          leaf.bound = true;
          out.any = true;
        }
      }
    }
    out.names.push_back(std::move(names));
  }
  name_operands(out, named);
  spread_units(out.expression);
  return out;
}

// The names of a formula in words or symbols, given to the numbers in their order.
void Judge::name_operands(Bound& bound, const Named& named) {
  std::vector<std::size_t> places;
  for (std::size_t i = 0; i < bound.expression.leaves.size(); ++i) {
    const Leaf& leaf = bound.expression.leaves[i];
    if (!leaf.source.empty() && leaf.figures > 0) places.push_back(i);
  }
  if (places.size() != named.operands.size() || places.size() < 2) return;
  auto agrees = [&](std::size_t k) {
    const std::vector<QuantityId>& names = bound.names[places[k]];
    const Leaf& leaf = bound.expression.leaves[places[k]];
    bool free = names.empty() && (!leaf.unit || leaf.bound);
    return free || std::any_of(names.begin(), names.end(), [&](QuantityId id) {
             return std::find(named.operands[k].begin(), named.operands[k].end(), id) != named.operands[k].end();
           });
  };
  for (std::size_t k = 0; k < places.size(); ++k) {
    if (!agrees(k)) return;
  }
  for (std::size_t k = 0; k < places.size(); ++k) bound.names[places[k]] = named.operands[k];
}

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

Expression Judge::filled(const Formula& formula, const std::vector<const Leaf*>& chosen) const {
  Expression out = formula.tree;
  for (std::size_t i = 0; i < out.leaves.size(); ++i) {
    if (chosen[i] != nullptr) out.leaves[i] = *chosen[i];
  }
  spread_units(out);
  return out;
}

void Judge::wrong_value(const Expression& plain, const Bound& bound, const Stated& stated, Judgement& out) const {
  out.verdict = Verdict::wrong;
  Value si = evaluate(bound.expression, Scaling::si);
  bool known = stated.unit && !is_percent(stated.unit) && si.dimension == stated.unit->dimension && !si.clash;
  bool half_known = stated.unit && !is_percent(stated.unit) && si.unknown > 0;
  bool percent = is_percent(stated.unit) && !has_hundred(plain);
  known = known || (!stated.unit && si.unknown == 0 && si.dimension.none() && !si.clash && si.number != evaluate(plain, Scaling::as_written).number);
  if (known || half_known) out.slips = find_slips(bound.expression, scale_of(stated), Scaling::si, stated.decimal);
  Exact scale = percent ? Exact(1, 100) : Exact(1);
  if (out.slips.empty() && !known) out.slips = find_slips(plain, scale, Scaling::as_written, stated.decimal);
  if (out.slips.empty()) {  // "9/45 = 5 l/s": turned over as the numbers stand
    std::vector<Slip> slips = find_slips(plain, scale, Scaling::as_written, stated.decimal);
    if (slips == std::vector<Slip>{Slip::upside_down}) out.slips = slips;
  }
  if (out.slips.empty()) out.slips = {Slip::arithmetic};
  Value value = known ? si : evaluate(plain, Scaling::as_written);
  out.correct = sensible(known ? Exact(value.number / scale_of(stated)) : Exact(value.number / scale), plain, &stated.decimal, unit_of(stated));
}

void Judge::remark(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const {
  const Expression& e = bound.expression;
  Value si = evaluate(e, Scaling::si);
  if (!stated.unit) {
    bool has_one = (si.unknown == 0 || unknown_are_pure(e, false)) && !si.dimension.none();
    bool named_one = named.tight && !named.quantities.empty() && std::all_of(named.quantities.begin(), named.quantities.end(), [&](QuantityId id) {
                       return !book_.quantity(id).unit.dimension.none();
                     });
    if (has_one || named_one) out.remarks.push_back(Remark::unit_missing);
  }
  int least = 99;
  for (const Leaf& leaf : e.leaves) {
    bool count = leaf.last_place == 0 && !leaf.unit;
    if (leaf.figures > 0 && !count && !leaf.source.empty()) least = std::min(least, leaf.figures);
  }
  if (least == 99 || e.single()) return;
  bool only_sums =
      std::all_of(e.nodes.begin(), e.nodes.end(), [](const Node& n) { return n.op == Op::leaf || n.op == Op::add || n.op == Op::subtract; });
  // a sum is good to the place of its least precise term
  Exact coarsest = 0;
  for (const Leaf& leaf : e.leaves)
    coarsest = std::max(coarsest, Exact(power_of_ten(leaf.last_place) * (leaf.unit && stated.unit ? exact(leaf.unit->scale) : scale_of(stated))));
  bool same_scale = std::all_of(e.leaves.begin(), e.leaves.end(), [&](const Leaf& leaf) {
    return leaf.unit.has_value() == e.leaves[0].unit.has_value() && (!leaf.unit || leaf.unit->scale == e.leaves[0].unit->scale);
  });
  Exact stated_place = power_of_ten(stated.decimal.last_place) * scale_of(stated);
  bool ends = ends_by(si.number / scale_of(stated), stated.decimal.last_place) && stated.decimal.figures <= least + 2;
  int figures = stated.decimal.figures - stated.decimal.trailing_zeros;  // zeros at the end of a whole number need be no figures
  if (only_sums ? same_scale && stated_place < coarsest : (figures > least + 1 && figures > 2 && !ends))
    out.remarks.push_back(Remark::too_many_figures);
  bool shortened = !ends_by(si.number / scale_of(stated), stated.decimal.last_place) && !ends_by(si.number, stated.decimal.last_place);
  if (!only_sums && shortened && stated.decimal.figures < std::min(least, 2)) out.remarks.push_back(Remark::too_few_figures);
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

Judgement Judge::judge(const Expression& expression, const Stated& stated, const Named& named, Span own) const {
  Judgement out;
  Value value = evaluate(expression, Scaling::as_written);
  if (value.state != State::ok) {
    out.doubt = value.state == State::divides_by_zero ? Doubt::divides_by_zero : value.state == State::no_value ? Doubt::no_value : Doubt::too_large;
    return out;
  }
  look_around(own);
  Expression plain = expression;
  spread_units(plain);
  Bound bound = bind(expression, named, own);
  Match with_units = match(bound.expression, stated);
  if (!with_units.right || !with_units.dimensions_fit) {
    if (std::optional<Bound> counted = one_is_a_count(bound, stated, own)) {
      bound = *std::move(counted);
      with_units = match(bound.expression, stated);
    }
  }
  if (!with_units.dimensions_fit || with_units.left_unconverted) {
    if (std::optional<Bound> filled_in = with_constant(bound, stated)) {
      bound = *std::move(filled_in);
      with_units = match(bound.expression, stated);
    }
  }
  const Bound as_bound = bound;
  if (!with_units.right || !with_units.dimensions_fit) {
    if (wrong_structure(bound, stated, named, out) || wrong_unit(bound, stated, named, out)) return out;
    if (!with_units.dimensions_fit && bound.any) {
      // units from elsewhere in the text did not fit: go by what stands here
      bound = {plain, std::vector<std::vector<QuantityId>>(plain.leaves.size()), false};
      with_units = match(plain, stated);
    }
  }
  if (!with_units.right && !with_units.dimensions_fit) {
    Value written = evaluate(plain, Scaling::as_written);
    if (is_rounded(written.number, written.rough, stated.decimal)) {
      out.verdict = Verdict::wrong;
      out.slips = {Slip::unit_wrong};
      auto unit = own_unit(plain, plain.root);
      out.correct = sensible(written.number, plain, &stated.decimal, unit ? unit->symbol : "");
      return out;
    }
  }
  if (!with_units.right) {
    if (std::optional<Expression> meant = brackets_meant(plain, stated)) return judge(*meant, stated, named, own);
  }
  if (!with_units.right) {
    if (wrong_formula(as_bound, stated, named, out) && out.slips[0] != Slip::arithmetic && out.slips.size() == 1) return out;
    out = {};
    wrong_value(plain, bound, stated, out);
    return out;
  }
  if (added_for_taken_away(as_bound, stated, named, out)) return out;
  if (out_of_range(bound, stated, named, out) || half_left_out(bound, stated, named, own, out) || wrong_count(bound, stated, named, own, out) ||
      wrong_unit(bound, stated, named, out) || against_symbols(as_bound, stated, named, out) || wrong_base(bound, stated, named, own, out) ||
      wrong_formula(as_bound, stated, named, out))
    return out;
  out.verdict = Verdict::right;
  remark(bound, stated, named, out);
  return out;
}

}  // namespace retort::calc
