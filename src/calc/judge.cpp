#include "calc/judge.h"

#include <algorithm>
#include <cstdlib>

#include "calc/judge_helpers.h"
#include "calc/slips.h"

namespace retort::calc {
namespace {

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
