// Quotients and products of two values that stand close by.
#include "calc/prose_finder.h"

namespace retort::calc {

bool Prose::any_two(const Result& r) {
  std::vector<std::size_t> inputs = nearest(r, r.lead == Lead::strong ? 4 : 2);
  if (r.lead == Lead::weak && (inputs.size() < 2 || r.token - facts_[inputs[1]].token > 8 || r.stated.decimal.figures < 2)) return false;
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    for (std::size_t k = 0; k < inputs.size(); ++k) {
      if (i == k) continue;
      for (Op op : {Op::divide, Op::multiply}) {
        if (op == Op::multiply && k < i) continue;
        if (two_fit(r, inputs[k], inputs[i], op)) return true;
      }
    }
  }
  return false;
}

bool Prose::two_fit(const Result& r, std::size_t left, std::size_t right_fact, Op op) {
  const Leaf& a = facts_[left].leaf;
  const Leaf& b = facts_[right_fact].leaf;
  bool counts = facts_[left].counted || facts_[right_fact].counted;
  if (op == Op::divide && ratio(r, a, b)) return true;
  if (!r.stated.unit || (!a.unit && !b.unit)) return false;
  if ((!a.unit || !b.unit) && !counts) return false;
  Expression e;
  std::int16_t l = e.add_leaf(a);
  std::int16_t m = e.add_leaf(b);
  e.root = e.add_node(op, l, m);
  Value v = evaluate(e, Scaling::si);
  if (v.state != State::ok || v.dimension != r.stated.unit->dimension || r.stated.unit->dimension.none()) return false;
  std::uint32_t begin = std::min(a.source.begin, b.source.begin);
  if (is_rounded(v.number / scale(r.stated), v.rough, r.stated.decimal)) {
    report(r, begin, right(e, r));
    return true;
  }
  bool strong = op == Op::divide && r.lead == Lead::strong && !(r.defined && !r.worded);
  std::vector<std::size_t> two = nearest(r, 2);
  bool of_nearest = two.size() == 2 && ((left == two[0] && right_fact == two[1]) || (left == two[1] && right_fact == two[0]));
  Value bare = evaluate(e, Scaling::as_written);
  bool turned = strong && of_nearest && bare.number != 0 && 1 / bare.number == r.stated.decimal.value;  // "35 cm³ in 70 s so 2 cm³/s"
  bool cut = strong && of_nearest && r.stated.decimal.figures > 1 && is_badly_rounded(v.number / scale(r.stated), v.rough, r.stated.decimal);
  if (turned || cut) {
    report(r, begin, wrong(e, r.stated, {turned ? Slip::upside_down : Slip::rounding}));
    return true;
  }
  if (!strong || r.stated.decimal.figures < 2) return false;
  std::vector<Slip> slips = find_slips(e, scale(r.stated), Scaling::si, r.stated.decimal);
  bool likely = !slips.empty() && (slips[0] == Slip::power_of_ten || (slips[0] == Slip::upside_down && slips.size() == 1));
  Value written = evaluate(e, Scaling::as_written);
  if (!likely && written.number != 0 && is_rounded(1 / written.number, false, r.stated.decimal)) {
    slips = {Slip::upside_down};
    likely = true;
  }
  if (!likely) return false;
  report(r, begin, wrong(e, r.stated, slips));
  return true;
}

// "36 cm³ in 45 s, rate 0.8 cm³/s", "it moved 42 mm in 8 min. Rates are 5.25 mm/min and ...": a number in a unit of the form a/b
// that is the quotient of two values before it, one in each. It is only said if it fits.
bool Prose::quotient_in_unit(const Result& r) {
  if (!r.stated.unit || r.stated.unit->symbol.find('/') == std::string::npos) return false;
  std::vector<std::size_t> inputs = nearest(r, 6);
  for (std::size_t below : inputs) {
    for (std::size_t above : inputs) {
      const Leaf& a = facts_[above].leaf;
      const Leaf& b = facts_[below].leaf;
      if (above == below || !a.unit || !b.unit || b.value == 0 || b.value == 1) continue;
      if (a.unit->dimension.none() || b.unit->dimension.none() || a.unit->dimension / b.unit->dimension != r.stated.unit->dimension) continue;
      Expression e;
      std::int16_t l = e.add_leaf(a);
      std::int16_t m = e.add_leaf(b);
      e.root = e.add_node(Op::divide, l, m);
      Value v = evaluate(e, Scaling::si);
      if (v.state != State::ok || v.clash || !is_rounded(v.number / scale(r.stated), v.rough, r.stated.decimal)) continue;
      bool exactly = v.number / scale(r.stated) == r.stated.decimal.value;
      if (!exactly && r.stated.decimal.figures < 2) continue;
      report(r, std::min(a.source.begin, b.source.begin), right(e, r));
      return true;
    }
  }
  return false;
}

// "9.6 Ω for 80 cm, which works out as 0.12 Ω for each cm": two numbers, if their quotient or product is it.
bool Prose::each(const Result& r) {
  if (r.lead != Lead::strong || r.stated.decimal.figures < 2) return false;
  bool said = false;
  for (std::size_t i = r.token > 12 ? r.token - 12 : 0; i < r.token + 8; ++i) {
    std::string_view word = tokens_.word(i);
    said = said || word == "each" || word == "per" || word == "every";
  }
  if (!said) return false;
  std::vector<std::size_t> inputs = nearest(r, 3);
  for (std::size_t i : inputs) {
    for (std::size_t k : inputs) {
      if (i == k) continue;
      for (Op op : {Op::divide, Op::multiply}) {
        Expression e;
        std::int16_t a = e.add_leaf(facts_[i].leaf);
        std::int16_t b = e.add_leaf(facts_[k].leaf);
        e.root = e.add_node(op, a, b);
        Value v = evaluate(e, Scaling::as_written);
        if (v.state != State::ok || facts_[k].leaf.value == 1 || !is_rounded(v.number, v.rough, r.stated.decimal)) continue;
        report(r, std::min(facts_[i].leaf.source.begin, facts_[k].leaf.source.begin), right(e, r));
        return true;
      }
    }
  }
  return false;
}

// "2.1 J of the 6.0 J was useful, so the efficiency was 35 %"
bool Prose::ratio(const Result& r, const Leaf& a, const Leaf& b) {
  bool percent = r.stated.unit && r.stated.unit->symbol == "%";
  bool so_many_times = r.token > 1 && tokens_.is(r.token - 1, TokenKind::times) && !tokens_.is(r.token - 2, TokenKind::number);  // "so x400"
  bool wanted =
      percent || so_many_times || says(r, "efficiency") || says(r, "magnification") || says(r, "retention factor") || says(r, "refractive index");
  if (!wanted || (r.stated.unit && !percent) || !a.unit || !b.unit || a.unit->dimension != b.unit->dimension || b.value == 0) return false;
  Expression e;
  std::int16_t l = e.add_leaf(a);
  std::int16_t m = e.add_leaf(b);
  e.root = e.add_node(Op::divide, l, m);
  Value v = evaluate(e, Scaling::si);
  Exact value = percent ? Exact(v.number * 100) : v.number;
  std::uint32_t begin = std::min(a.source.begin, b.source.begin);
  if (is_rounded(value, false, r.stated.decimal)) {
    report(r, begin, right(e, r));
    return true;
  }
  if (r.stated.decimal.figures < 3 || !is_badly_rounded(value, false, r.stated.decimal)) return false;
  Judgement cut = wrong(e, r.stated, {Slip::rounding});
  cut.correct = sensible(value, e, &r.stated.decimal, percent ? "%" : "");
  report(r, begin, std::move(cut));
  return true;
}

}  // namespace retort::calc
