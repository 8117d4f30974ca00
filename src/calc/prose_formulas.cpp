// Results by the formulas of the book.
#include "calc/prose_finder.h"

namespace retort::calc {

bool Prose::by_formula(const Result& r) {
  std::vector<QuantityId> wanted = r.named.quantities;
  if (!r.stated.unit && !r.close_name) wanted.clear();
  bool by_unit = wanted.empty() && r.stated.unit && !r.stated.unit->dimension.none();
  if (by_unit) {
    for (std::size_t id = 0; id < book_.quantities().size(); ++id) {
      const QuantityEntry& entry = book_.quantities()[id];
      if (entry.unit.dimension == r.stated.unit->dimension && !entry.named_only) wanted.push_back(static_cast<QuantityId>(id));
    }
  }
  if (r.lead == Lead::weak && by_unit) return false;
  std::vector<Filled> all;
  for (QuantityId id : wanted) {
    const QuantityEntry& entry = book_.quantity(id);
    bool any_unit = entry.named_only && entry.unit.dimension.none();
    if (r.stated.unit && !any_unit && r.stated.unit->dimension != entry.unit.dimension) continue;
    if (r.stated.unit && r.stated.unit->symbol == "%" && any_unit && entry.unit.symbol != "%") continue;
    for (const Formula* formula : book_.for_text(id, tokens_)) {
      bool given = r.lead == Lead::weak || (r.defined && !r.worded && !r.formula && !formula_said(r));  // no more than a value
      if (formula->turned && given) continue;
      fill(r, *formula, all);
    }
  }
  std::size_t by_name = all.size();
  if (!by_unit && r.lead == Lead::strong && r.stated.unit && !r.stated.unit->dimension.none()) {
    for (std::size_t id = 0; id < book_.quantities().size(); ++id) {
      const QuantityEntry& entry = book_.quantities()[id];
      if (entry.unit.dimension != r.stated.unit->dimension || entry.named_only) continue;
      for (std::uint16_t index : book_.giving(static_cast<QuantityId>(id))) fill(r, book_.formulas()[index], all);
    }
  }
  std::stable_sort(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(by_name),
                   [](const Filled& a, const Filled& b) { return a.score > b.score; });
  for (const Filled& one : all) {
    if (!fits(one.expression, r.stated)) continue;
    Judgement judgement = right(one.expression, r);
    judgement.formula = one.formula->text;
    report(r, facts_[one.first].leaf.source.begin, std::move(judgement));
    return true;
  }
  all.resize(by_name);
  if (unit_of_another_kind(r)) return true;
  bool only_defined = r.defined && !r.worded && !r.formula;
  if (r.lead != Lead::strong || by_unit) return false;
  if (only_defined && r.token > 2 && tokens_.is(r.token - 3, TokenKind::open)) return false;  // "(d = 0.4)"
  bool unsaid = only_defined && !formula_said(r);  // "Ek = 10 J" may be given: only a slip tells that it was worked out
  for (const Filled& one : all) {
    if (!one.sure || (unsaid && (one.doubtful || !agree(all)))) continue;
    Exact in = r.stated.unit ? scale(r.stated) : exact(book_.quantity(one.formula->result).unit.scale);
    std::vector<Slip> slips = find_slips(one.expression, in, Scaling::si, r.stated.decimal);
    if (unsaid && !std::any_of(slips.begin(), slips.end(), [](Slip slip) { return slip == Slip::square || slip == Slip::upside_down; })) continue;
    if (slips.empty() && (!agree(all) || one.doubtful || only_defined)) continue;
    Judgement judgement = wrong(one.expression, r.stated, slips);
    judgement.formula = one.formula->text;
    report(r, facts_[one.first].leaf.source.begin, std::move(judgement));
    return true;
  }
  return false;
}

// Whether all formulas that could be meant give the same.
bool Prose::agree(const std::vector<Filled>& all) {
  Value first = evaluate(all[0].expression, Scaling::si);
  return std::all_of(all.begin(), all.end(), [&](const Filled& one) { return evaluate(one.expression, Scaling::si).number == first.number; });
}

// A formula for what is stated, in symbols or words, before it: "a = F/m", then on its own line "a = 3.0".
bool Prose::formula_said(const Result& r) const {
  if (r.token < 2) return false;
  if (verb_before_brackets(r) != 0) return true;
  std::string_view symbol = tokens_.word(r.token - 2);
  for (std::size_t i = r.token > 200 ? r.token - 200 : 1; i + 1 < r.token && !symbol.empty(); ++i) {
    if (tokens_.is(i, TokenKind::equals) && tokens_.word(i - 1) == symbol && tokens_.is(i + 1, TokenKind::word)) return true;
  }
  for (std::size_t i = r.token > 60 ? r.token - 60 : 1; i + 2 < r.token; ++i) {  // "spring const = F/e, ..., k = 1 N/m"
    if (!tokens_.is(i, TokenKind::equals) || !tokens_.is(i + 1, TokenKind::word) || !tokens_.is(i + 2, TokenKind::divide)) continue;
    NameFound found = find_name(tokens_, book_, i, 4);
    for (QuantityId id : found.quantities) {
      if (std::find(r.named.quantities.begin(), r.named.quantities.end(), id) != r.named.quantities.end()) return true;
    }
  }
  return false;
}

// "weight = 1.96 kg": the number comes out, but in a unit of another quantity.
bool Prose::unit_of_another_kind(const Result& r) {
  if (r.lead != Lead::strong || !r.stated.unit || r.stated.unit->dimension.none() || !r.close_name) return false;
  if (r.named.symbol && !r.formula) return false;
  for (QuantityId id : r.named.quantities) {
    const QuantityEntry& entry = book_.quantity(id);
    if (entry.unit.dimension.none() || entry.unit.dimension == r.stated.unit->dimension) return false;
  }
  for (QuantityId id : r.named.quantities) {
    std::vector<Filled> all;
    for (const Formula* formula : book_.for_text(id, tokens_)) {
      if (!formula->turned) fill(r, *formula, all);
    }
    for (const Filled& one : all) {
      Value v = evaluate(one.expression, Scaling::si);
      if (v.state != State::ok || !is_rounded(v.number, v.rough, r.stated.decimal)) continue;
      Judgement judgement;
      judgement.verdict = Verdict::wrong;
      judgement.slips = {Slip::unit_wrong};
      judgement.correct = sensible(v.number, one.expression, &r.stated.decimal, book_.quantity(id).unit.symbol);
      judgement.formula = one.formula->text;
      report(r, facts_[one.first].leaf.source.begin, std::move(judgement));
      return true;
    }
  }
  return false;
}

// A difference of a number with a unit and one without.
bool Prose::mixed(const Expression& e) {
  return std::any_of(e.nodes.begin(), e.nodes.end(), [&](const Node& n) {
    bool leaves = (n.op == Op::subtract || n.op == Op::add) && e.node(n.left).op == Op::leaf && e.node(n.right).op == Op::leaf;
    return leaves && e.leaf_of(e.node(n.left)).unit.has_value() != e.leaf_of(e.node(n.right)).unit.has_value();
  });
}

// The best values before the result for the formula's variables, if all are there.
void Prose::fill(const Result& r, const Formula& formula, std::vector<Filled>& all) const {
  std::vector<std::size_t> inputs = nearest(r, kMostInputs, true);
  std::vector<const Leaf*> chosen(formula.variables.size(), nullptr);
  std::vector<bool> used(inputs.size(), false);
  Filled out;
  out.formula = &formula;
  out.first = r.fact;
  for (std::size_t v = 0; v < formula.variables.size(); ++v) {
    if (formula.variables[v] == kNoQuantity) continue;
    int best = 0;
    std::size_t which = inputs.size();
    std::size_t as_good = 0;
    for (std::size_t k = 0; k < inputs.size(); ++k) {
      int s = used[k] ? 0 : fit(book_, formula.variables[v], facts_[inputs[k]].leaf, facts_[inputs[k]].names);
      if (s == 0) continue;
      if (s == best) ++as_good;
      if (s <= best) continue;
      best = s;
      which = k;
      as_good = 0;
    }
    if (best == 0) return;
    used[which] = true;
    chosen[v] = &facts_[inputs[which]].leaf;
    out.score += best;
    out.sure = out.sure && as_good == 0;
    out.doubtful = out.doubtful || best < 2;
    out.first = std::min(out.first, inputs[which]);
  }
  out.expression = judge_.filled(formula, chosen);
  if (!evaluate(out.expression, Scaling::si).clash && !mixed(out.expression)) all.push_back(std::move(out));
}

}  // namespace retort::calc
