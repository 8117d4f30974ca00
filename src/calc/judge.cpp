#include "calc/judge.h"

#include <algorithm>
#include <cstdlib>

#include "calc/ordinals.h"
#include "calc/slips.h"

namespace retort::calc {
namespace {

// Numbers that formulas and means are full of, and that need no unit.
bool may_be_pure(const Leaf& leaf) {
  if (leaf.unit) return false;
  if (leaf.figures == 0) return true;
  const Exact& v = leaf.value;
  return v == Exact(1, 2) || v == 2 || v == 3 || v == 4 || v == 10 || v == 100 || v == 1000 || v == 60 || v == 1 || v == Exact(157, 50) || v == Exact(1571, 500);
}
bool is_formula_constant(const Leaf& leaf) {
  return !leaf.unit && (leaf.figures == 0 || leaf.value == Exact(1, 2) || leaf.value == Exact(157, 50) || leaf.value == Exact(1571, 500));
}

bool unknown_are_pure(const Expression& e, bool strict) {
  return std::all_of(e.leaves.begin(), e.leaves.end(), [&](const Leaf& leaf) { return leaf.unit || leaf.source.empty() || (strict ? is_formula_constant(leaf) : may_be_pure(leaf)); });
}

bool is_percent(const std::optional<CompoundUnit>& unit) { return unit && unit->symbol == "%"; }

bool has_hundred(const Expression& e) {
  return std::any_of(e.leaves.begin(), e.leaves.end(), [](const Leaf& leaf) { return leaf.value == 100; });
}

Exact scale_of(const Stated& stated) { return stated.unit ? exact(stated.unit->scale) : Exact(1); }

std::string unit_of(const Stated& stated) { return stated.unit ? stated.unit->symbol : std::string(); }

// The unit that the expression's own units make; empty if some are unknown.
std::optional<CompoundUnit> own_unit(const Expression& e, int i) {
  const Node& n = e.node(i);
  switch (n.op) {
    case Op::leaf: {
      const Leaf& leaf = e.leaf_of(n);
      return leaf.unit ? *leaf.unit : CompoundUnit{};
    }
    case Op::add: case Op::subtract: {
      auto left = own_unit(e, n.left);
      auto right = own_unit(e, n.right);
      if (!left || !right) return std::nullopt;
      return left->dimension.none() ? right : left;
    }
    case Op::negate: return own_unit(e, n.left);
    case Op::multiply: case Op::divide: {
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
    default: return std::nullopt;
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
  auto at = std::partition_point(facts_.begin(), facts_.begin() + static_cast<std::ptrdiff_t>(own_facts_), [&](const Fact& fact) { return fact.leaf.source.begin < own.begin; });
  auto index = static_cast<std::size_t>(at - facts_.begin());
  std::size_t from = index > kNear ? index - kNear : 0;
  near_.insert(near_.end(), facts_.begin() + static_cast<std::ptrdiff_t>(from), facts_.begin() + static_cast<std::ptrdiff_t>(std::min(own_facts_, index + kNear)));
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
        bool better = best == nullptr || (fact.leaf.unit && !best->leaf.unit) || (fact.leaf.source.end <= own.begin && (fact.leaf.unit.has_value() || !best->leaf.unit));
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
  bool all_free = std::all_of(places.begin(), places.end(), [&](std::size_t i) { return bound.names[i].empty() && (!bound.expression.leaves[i].unit || bound.expression.leaves[i].bound); });
  if (!all_free) return;
  for (std::size_t k = 0; k < places.size(); ++k) bound.names[places[k]] = named.operands[k];
}

// Whether what is left over between the operands' units and the result's can be the units that were not
// written: s, h, kg; but not "hundreds of hertz".
bool Judge::plausible_rest(const Value& value, const CompoundUnit& unit, const Expression& expression) const {
  Dimension rest = unit.dimension / value.dimension;
  // scale of the operands with units: SI value over written value
  Value written = evaluate(expression, Scaling::as_written);
  if (written.number == 0 || value.number == 0) return true;
  Exact scale = exact(unit.scale) / (value.number / written.number);
  if (scale == 1) return true;
  auto usual = [&](const Dimension& dimension, const Exact& factor, bool& known) {
    int exponent = 0;
    Exact rest_scale = factor;
    while (rest_scale >= 10 && exponent < 30) rest_scale /= 10, ++exponent;
    while (rest_scale < 1 && exponent > -30) rest_scale *= 10, --exponent;
    Scale as_scale;
    as_scale.exponent = exponent;
    if (rest_scale != 1) {
      for (long n : {36L, 6L, 864L}) {
        if (factor == n * (n == 36 ? 100 : n == 6 ? 10 : 100)) as_scale = *times_power(Scale{}, Scale{n * (n == 36 ? 100 : n == 6 ? 10 : 100), 1, 0}, 1);
      }
      if (as_scale.exponent == exponent && as_scale.numerator == 1) return known = true, false;
    }
    return book_.usual_scale(dimension, as_scale, known);
  };
  bool known = false;
  bool known_inverse = false;
  bool fits = usual(rest, scale, known);
  bool inverse_fits = usual(Dimension{} / rest, 1 / scale, known_inverse);
  if (!known && !known_inverse) return true;
  return (known && fits) || (known_inverse && inverse_fits);
}

Judge::Match Judge::match(const Expression& expression, const Stated& stated) const {
  Match out;
  Value si = evaluate(expression, Scaling::si);
  Value written = evaluate(expression, Scaling::as_written);
  auto is_it = [&](const Value& v, const Exact& factor) { return is_rounded(v.number * factor, v.rough, stated.decimal); };
  out.known = si.unknown == 0 || unknown_are_pure(expression, false);
  if (!stated.unit || is_percent(stated.unit)) {
    // "50 mm / 2.0 cm": a ratio of two lengths needs them in the same unit
    bool ratio = out.known && si.dimension.none() && std::any_of(expression.leaves.begin(), expression.leaves.end(), [](const Leaf& leaf) { return leaf.unit && !leaf.bound && leaf.unit->symbol != "%"; });
    out.right = (!ratio && is_it(written, 1)) || is_it(si, 1);
    if (is_percent(stated.unit)) out.right = out.right || is_it(written, 100) || is_it(si, 100);
    out.dimensions_fit = true;
    return out;
  }
  Exact scale = exact(stated.unit->scale);
  bool same = si.dimension == stated.unit->dimension && !si.clash;
  bool si_right = is_rounded(si.number / scale, si.rough, stated.decimal);
  // "5 min x 60 = 300 s": the factor of the conversion is written out
  if (same && is_it(written, 1) && expression.leaves.size() == 2) {
    for (const Leaf& leaf : expression.leaves) si_right = si_right || (leaf.unit && is_rounded(leaf.value * exact(leaf.unit->scale) / scale, false, stated.decimal));
  }
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
    out.right = plausible_rest(si, *stated.unit, expression);
    out.left_unconverted = !out.right;
  }
  return out;
}

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
  bool expected = std::any_of(named.quantities.begin(), named.quantities.end(), [&](QuantityId id) { return book_.quantity(id).unit.dimension == si.dimension && !si.dimension.none(); });
  bool wanted = std::any_of(named.quantities.begin(), named.quantities.end(), [&](QuantityId id) { return book_.quantity(id).unit.dimension == stated.unit->dimension; });
  if (expected && !wanted && !si.clash) return false;  // only the unit is wrong
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
    if (entry.unit.dimension.none() && entry.name != "refractive index" && entry.name != "efficiency" && entry.name != "magnification" && entry.name != "retention factor") return false;
    if (entry.unit.dimension == stated.unit->dimension) return false;
    if (entry.unit.dimension == dimension::kTemperature && stated.unit->dimension == dimension::kAngle) return false;
    if (entry.name == "gravitational field strength" || (entry.name == "acceleration" && stated.unit->dimension == dimension::kForce / dimension::kMass)) return false;
    bool agrees = known && !si.dimension.none() && entry.unit.dimension == si.dimension;
    if (best == nullptr || agrees) best = &entry;
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
    if (by.value.get_den() != 1 || by.value < 1 || by.value > 1000 || (by.unit && (!by.bound || by.unit->dimension == dimension::kTime))) return false;
    divisor = by.value.get_num().get_si();
    sum = root.left;
    long listed = readings_with_sum(tokens_, near_, e.leaf_of(e.node(root.left)).value, own);
    if (is(named, "mean") || listed > 2) right_count = listed;
    else if (!e.leaf_of(e.node(root.left)).unit && is(named, "frequency")) return false;
    else right_count = counted_things(divisor, named.tight && (is(named, "period") || is(named, "wavelength")), own);
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

// "2.1 + 2.3 + 2.2 / 3 = 2.2": the brackets of a mean are not written, but reckoned with.
bool Judge::brackets_meant(const Expression& plain, const Stated& stated) {
  const Node& root = plain.node(plain.root);
  if ((root.op != Op::add && root.op != Op::subtract) || plain.node(root.right).op != Op::divide) return false;
  const Node division = plain.node(root.right);
  if (plain.node(division.left).op != Op::leaf || plain.node(division.right).op != Op::leaf) return false;
  Expression meant = plain;
  std::int16_t top = meant.add_node(root.op, root.left, division.left);
  meant.root = meant.add_node(Op::divide, top, division.right);
  Value v = evaluate(meant, Scaling::as_written);
  return v.state == State::ok && is_rounded(v.number, v.rough, stated.decimal);
}

// "extension = 12.2 + 4.2": a quantity that is a difference.
bool Judge::added_for_taken_away(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const {
  const Expression& e = bound.expression;
  const Node& root = e.node(e.root);
  if (root.op != Op::add || !named.tight || e.node(root.left).op != Op::leaf || e.node(root.right).op != Op::leaf) return false;
  bool difference = std::any_of(named.quantities.begin(), named.quantities.end(), [&](QuantityId id) {
    std::vector<const Formula*> formulas = book_.for_text(id, tokens_);
    return std::any_of(formulas.begin(), formulas.end(), [](const Formula* f) { return !f->turned && f->tree.node(f->tree.root).op == Op::subtract; });
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
  if (divisions != 1 || named.quantities.empty() || (stated.unit && !percent)) return false;
  Value v = evaluate(e, Scaling::si);
  if (v.state != State::ok || v.number == 0 || !v.dimension.none()) return false;
  Exact fraction = percent && has_hundred(e) ? Exact(v.number / 100) : v.number;
  for (QuantityId id : named.quantities) {
    const QuantityEntry& entry = book_.quantity(id);
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
  for (std::size_t i = first_token_from(own.begin > 60 ? own.begin - 60 : 0); i < tokens_.size() && tokens_.all[i].source.begin < own.begin; ++i) {
    half = half || tokens_.word(i) == "half";
    // "the range is 0.52 - 0.48 = 0.04" is no more than the range
    if (tokens_.word(i) == "range" && tokens_.word(i - 2) != "half" && tokens_.word(i - 1) != "half") half = false;
  }
  for (std::size_t i = first_token_from(own.end); i < tokens_.size() && tokens_.all[i].source.begin < own.end + 45; ++i) half = half || tokens_.word(i) == "half";
  if (!half) return false;
  Value v = evaluate(e, Scaling::as_written);
  out.verdict = Verdict::wrong;
  out.slips = {Slip::square};
  out.correct = sensible(v.number / 2, e, &stated.decimal, unit_of(stated));
  return true;
}

Expression Judge::filled(const Formula& formula, const std::vector<const Leaf*>& chosen) const {
  Expression out = formula.tree;
  for (std::size_t i = 0; i < out.leaves.size(); ++i) {
    if (chosen[i] != nullptr) out.leaves[i] = *chosen[i];
  }
  spread_units(out);
  return out;
}

namespace {

// All ways to give a formula's variables the leaves of an expression, each used once.
class Assignments {
 public:
  Assignments(const FormulaBook& book, const Formula& formula, const Expression& e, const std::vector<std::vector<QuantityId>>& names)
      : book_(book), formula_(formula), e_(e), names_(names), chosen_(formula.variables.size(), nullptr), used_(e.leaves.size(), false) {}

  struct One {
    std::vector<const Leaf*> chosen;
    int score = 0;
  };
  // With one variable taken from what the text states elsewhere.
  std::vector<One> run_with_one_of(const std::vector<Fact>& facts) {
    if (e_.leaves.size() > 8 || e_.leaves.size() < 2) return {};
    others_ = &facts;
    next(0, 0);
    return std::move(found_);
  }
  // `loose`: how many variables may take a number that has neither a unit nor a name.
  std::vector<One> run(int loose) {
    if (e_.leaves.size() > 8) return {};
    next(0, 0);
    if (found_.empty() && loose > 0) {
      loose_ = loose;
      next(0, 0);
    }
    std::stable_sort(found_.begin(), found_.end(), [](const One& a, const One& b) { return a.score > b.score; });
    return std::move(found_);
  }

 private:
  void next(std::size_t variable, int score) {
    if (found_.size() >= 24) return;
    if (variable == formula_.variables.size()) {
      if (others_ == nullptr && rest_is_pure()) found_.push_back({chosen_, score});
      return;
    }
    if (formula_.variables[variable] == kNoQuantity) return next(variable + 1, score);
    if (others_ != nullptr) from_elsewhere(variable, score);
    for (std::size_t i = 0; i < e_.leaves.size(); ++i) {
      if (used_[i] || e_.leaves[i].figures == 0) continue;
      int s = fit(book_, formula_.variables[variable], e_.leaves[i], names_[i]);
      bool free = s == 0 && loose_ > 0 && !e_.leaves[i].unit && names_[i].empty() && !book_.quantity(formula_.variables[variable]).count && in_order(i);
      if (s == 0 && !free) continue;
      if (free) {
        --loose_;
        used_[i] = true;
        chosen_[variable] = &e_.leaves[i];
        next(variable + 1, score);
        chosen_[variable] = nullptr;
        used_[i] = false;
        ++loose_;
        continue;
      }
      used_[i] = true;
      chosen_[variable] = &e_.leaves[i];
      next(variable + 1, score + s);
      chosen_[variable] = nullptr;
      used_[i] = false;
    }
  }
  void from_elsewhere(std::size_t variable, int score) {
    const std::vector<Fact>* facts = others_;
    const Fact* only = nullptr;
    for (const Fact& fact : *facts) {
      bool in_sum = std::any_of(e_.leaves.begin(), e_.leaves.end(), [&](const Leaf& leaf) { return leaf.value == fact.leaf.value; });
      if (in_sum || !fact.leaf.unit || fit(book_, formula_.variables[variable], fact.leaf, fact.names) < 2) continue;
      if (only != nullptr) return;
      only = &fact;
    }
    if (only == nullptr) return;
    others_ = nullptr;
    chosen_[variable] = &only->leaf;
    next(variable + 1, score + 2);
    chosen_[variable] = nullptr;
    others_ = facts;
  }
  // Numbers without a name are taken in the order in which they stand.
  bool in_order(std::size_t leaf) const {
    for (std::size_t i = leaf + 1; i < used_.size(); ++i) {
      if (used_[i] && !e_.leaves[i].unit && names_[i].empty()) return false;
    }
    return true;
  }
  // What is left over must be a number of the formula itself, or the same reading once more.
  bool rest_is_pure() const {
    for (std::size_t i = 0; i < e_.leaves.size(); ++i) {
      if (used_[i] || e_.leaves[i].value == 1 || e_.leaves[i].value == 100 || is_constant_of_formula(e_.leaves[i])) continue;
      bool again = false;
      for (std::size_t k = 0; k < e_.leaves.size(); ++k) again = again || (used_[k] && e_.leaves[k].value == e_.leaves[i].value);
      if (!again) return false;
    }
    return true;
  }

  bool is_constant_of_formula(const Leaf& leaf) const {
    for (std::size_t i = 0; i < formula_.variables.size(); ++i) {
      if (formula_.variables[i] == kNoQuantity && abs(formula_.tree.leaves[i].value - leaf.value) < Exact(1, 100)) return true;
    }
    return false;
  }

  const FormulaBook& book_;
  const Formula& formula_;
  const Expression& e_;
  const std::vector<std::vector<QuantityId>>& names_;
  std::vector<const Leaf*> chosen_;
  std::vector<bool> used_;
  const std::vector<Fact>* others_ = nullptr;
  int loose_ = 0;  // how many variables may take a number that nothing names
  std::vector<One> found_;
};

}  // namespace

// The pupil's own formula in symbols with the numbers put in, in their order, against what was reckoned:
// "2π√(L/g) = 2π × 0.4/9.8".
bool Judge::against_symbols(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const {
  if (!named.symbols || bound.expression.single()) return false;
  Expression tree = *named.symbols;
  std::vector<Leaf*> variables;
  std::vector<Exact> constants;
  for (Leaf& leaf : tree.leaves) {
    if (leaf.figures == -1) variables.push_back(&leaf);
    else constants.push_back(leaf.value);
  }
  std::vector<const Leaf*> numbers;
  for (const Leaf& leaf : bound.expression.leaves) {
    auto constant = std::find_if(constants.begin(), constants.end(), [&](const Exact& value) { return abs(value - leaf.value) < Exact(1, 100); });
    if (constant != constants.end()) constants.erase(constant);
    else if (leaf.figures > 0 || !leaf.source.empty()) numbers.push_back(&leaf);
  }
  if (numbers.size() != variables.size()) return false;
  // a square that was worked out before ("T² = 2.02 s²")
  if (std::any_of(numbers.begin(), numbers.end(), [](const Leaf* leaf) { return leaf->bound && leaf->unit && leaf->unit->symbol.find("\u00B2") != std::string::npos; })) return false;
  for (std::size_t i = 0; i < numbers.size(); ++i) *variables[i] = *numbers[i];
  spread_units(tree);
  Scaling scaling = evaluate(bound.expression, Scaling::as_written).number == 0 ? Scaling::si : Scaling::as_written;
  Value formula = evaluate(tree, scaling);
  if (formula.state != State::ok || formula.number == 0) return false;
  Exact factor = is_percent(stated.unit) && !has_hundred(tree) ? Exact(100) : Exact(1);
  Value si = evaluate(tree, Scaling::si);
  if (is_rounded(formula.number * factor, formula.rough, stated.decimal) || is_rounded(si.number / scale_of(stated), si.rough, stated.decimal)) return false;
  std::vector<Slip> slips = find_slips(tree, 1 / factor, scaling, stated.decimal);
  if (slips.empty() || slips[0] == Slip::rounding || slips[0] == Slip::power_of_ten) return false;
  out.verdict = Verdict::wrong;
  out.slips = slips;
  out.correct = sensible(formula.number * factor, bound.expression, &stated.decimal, unit_of(stated));
  return true;
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
  if (bound.expression.node(bound.expression.root).right < 0) return false;  // "sin 35 is 0.574" stands for itself
  const std::vector<QuantityId>& wanted = named.quantities.empty() ? named.nearby : named.quantities;
  for (QuantityId id : wanted) {
    const QuantityEntry& entry = book_.quantity(id);
    if (is_percent(stated.unit) && entry.unit.symbol != "%" && entry.named_only && entry.unit.dimension.none()) continue;
    if (named.quantities.empty() && stated.unit && evaluate(bound.expression, Scaling::si).unknown == 0 && evaluate(bound.expression, Scaling::si).dimension == stated.unit->dimension) return false;
    if (stated.unit && !is_percent(stated.unit) && book_.quantity(id).unit.dimension != stated.unit->dimension && !book_.quantity(id).named_only) continue;
    for (const Formula* known : book_.for_text(id, tokens_)) {
      const Formula& formula = *known;
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
  if (special) std::erase_if(candidates, [](const Candidate& c) { return c.formula->when.empty(); });
  else if (fits_usual) return false;
  std::stable_sort(candidates.begin(), candidates.end(), [](const Candidate& a, const Candidate& b) { return a.score > b.score; });
  for (const Candidate& c : candidates) {
    Exact scale = stated.unit ? scale_of(stated) : exact(book_.quantity(c.quantity).unit.scale);
    std::vector<Slip> slips = find_slips(c.expression, scale, Scaling::si, stated.decimal);
    if (slips.empty() || slips[0] == Slip::rounding) continue;
    if (c.score == 0 && slips[0] == Slip::power_of_ten) continue;  // numbers without unit or name say nothing of it
    bool counts = std::any_of(c.formula->variables.begin(), c.formula->variables.end(), [&](QuantityId id) { return id != kNoQuantity && book_.quantity(id).count; });
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
  if (out.slips.empty()) out.slips = {Slip::arithmetic};
  Value value = known ? si : evaluate(plain, Scaling::as_written);
  out.correct = sensible(known ? Exact(value.number / scale_of(stated)) : Exact(value.number / scale), plain, &stated.decimal, unit_of(stated));
}

void Judge::remark(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const {
  const Expression& e = bound.expression;
  Value si = evaluate(e, Scaling::si);
  if (!stated.unit) {
    bool has_one = (si.unknown == 0 || unknown_are_pure(e, false)) && !si.dimension.none();
    bool named_one = named.tight && !named.quantities.empty() && std::all_of(named.quantities.begin(), named.quantities.end(), [&](QuantityId id) { return !book_.quantity(id).unit.dimension.none(); });
    if (has_one || named_one) out.remarks.push_back(Remark::unit_missing);
  }
  int least = 99;
  for (const Leaf& leaf : e.leaves) {
    bool count = leaf.last_place == 0 && !leaf.unit;
    if (leaf.figures > 0 && !count && !leaf.source.empty()) least = std::min(least, leaf.figures);
  }
  if (least == 99 || e.single()) return;
  bool only_sums = std::all_of(e.nodes.begin(), e.nodes.end(), [](const Node& n) { return n.op == Op::leaf || n.op == Op::add || n.op == Op::subtract; });
  // a sum is good to the place of its least precise term
  Exact coarsest = 0;
  for (const Leaf& leaf : e.leaves) coarsest = std::max(coarsest, Exact(power_of_ten(leaf.last_place) * (leaf.unit && stated.unit ? exact(leaf.unit->scale) : Exact(1))));
  bool same_scale = std::all_of(e.leaves.begin(), e.leaves.end(), [&](const Leaf& leaf) { return leaf.unit.has_value() == e.leaves[0].unit.has_value() && (!leaf.unit || leaf.unit->scale == e.leaves[0].unit->scale); });
  Exact stated_place = power_of_ten(stated.decimal.last_place) * scale_of(stated);
  bool ends = ends_by(si.number / scale_of(stated), stated.decimal.last_place) && stated.decimal.figures <= least + 2;
  if (only_sums ? same_scale && stated_place < coarsest : (stated.decimal.figures > least + 1 && stated.decimal.figures > 2 && !ends)) out.remarks.push_back(Remark::too_many_figures);
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
  const Bound as_bound = bound;
  Match with_units = match(bound.expression, stated);
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
  if (!with_units.right && brackets_meant(plain, stated)) with_units.right = true;
  if (!with_units.right) {
    if (wrong_formula(as_bound, stated, named, out) && out.slips[0] != Slip::arithmetic && out.slips.size() == 1) return out;
    out = {};
    wrong_value(plain, bound, stated, out);
    return out;
  }
  if (added_for_taken_away(as_bound, stated, named, out)) return out;
  if (out_of_range(bound, stated, named, out) || half_left_out(bound, stated, named, own, out) || wrong_count(bound, stated, named, own, out) || wrong_unit(bound, stated, named, out) || against_symbols(as_bound, stated, named, out) || wrong_base(bound, stated, named, own, out) || wrong_formula(as_bound, stated, named, out)) return out;
  out.verdict = Verdict::right;
  remark(bound, stated, named, out);
  return out;
}

}  // namespace retort::calc
