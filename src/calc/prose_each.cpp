// Results that share out or go on in equal steps: so many a minute, so much for the next weight.
#include "calc/prose_finder.h"

namespace retort::calc {
namespace {

long seconds_of(std::string_view word) {
  if (word == "s" || word == "sec" || word == "secs" || word == "second" || word == "seconds") return 1;
  if (word == "min" || word == "mins" || word == "minute" || word == "minutes" || word == "minuit" || word == "minit") return 60;
  if (word == "h" || word == "hr" || word == "hour" || word == "hours") return 3600;
  return 0;
}

bool is_then(std::string_view word) {
  return word == "so" || word == "then" || word == "therefore" || word == "meaning";
}

}  // namespace

Exact Prose::seconds_after(std::size_t token) const {
  if (tokens_.word(token + 1) == "bpm") return 60;
  for (std::size_t i = token + 1; i < token + 4; ++i) {
    bool per = tokens_.is(i, TokenKind::divide) || tokens_.word(i) == "per" || tokens_.word(i) == "a" || tokens_.word(i) == "each" ||
               tokens_.word(i) == "every" || tokens_.word(i) == "in";
    if (!per) {
      if (!tokens_.is(i, TokenKind::word)) return 0;
      continue;
    }
    std::size_t unit = tokens_.word(i) == "in" && tokens_.word(i + 1) == "one" ? i + 2 : i + 1;
    return seconds_of(tokens_.word(unit));
  }
  return 0;
}

bool Prose::things_per_time(const Result& r) {
  if (r.fact < 2) return false;
  bool hertz = r.stated.unit && r.stated.unit->symbol == "Hz";
  Exact seconds = hertz ? Exact(1) : seconds_after(r.token);
  if (seconds == 0) return false;
  const Fact& time = facts_[r.fact - 1];
  const Fact& things = facts_[r.fact - 2];
  bool is_time = time.leaf.unit && time.leaf.unit->dimension == dimension::kTime && time.leaf.value != 0;
  bool degrees = r.stated.unit && (r.stated.unit->dimension == dimension::kAngle || r.stated.unit->dimension == dimension::kTemperature);
  bool same = !things.leaf.unit || (r.stated.unit && (degrees || things.leaf.unit->dimension == r.stated.unit->dimension));
  if (r.stated.unit && !hertz && !degrees && !r.stated.unit->dimension.none() && !things.leaf.unit) return false;
  if (!is_time || !same || time.token - things.token > 6 || r.token - time.token > 8) return false;
  std::string_view in = tokens_.word(time.token - 1);
  if (in != "in" && in != "over" && in != "for" && in != "every") return false;
  Expression e;
  std::int16_t a = e.add_leaf(things.leaf);
  Leaf units = time.leaf;
  units.value = time.leaf.value * exact(time.leaf.unit->scale) / seconds;
  units.unit.reset();
  std::int16_t b = e.add_leaf(units);
  e.root = e.add_node(Op::divide, a, b);
  Value v = evaluate(e, Scaling::as_written);
  if (v.state != State::ok) return false;
  if (is_rounded(v.number, v.rough, r.stated.decimal)) {
    report(r, things.leaf.source.begin, right(e, r));
    return true;
  }
  if (r.lead != Lead::strong) return false;
  Judgement judgement = wrong(e, r.stated, find_slips(e, Exact(1), Scaling::as_written, r.stated.decimal));
  judgement.correct = sensible(v.number, e, &r.stated.decimal, "");
  report(r, things.leaf.source.begin, std::move(judgement));
  return true;
}

// "24 cm3 in 30 secs so the rate is 0.8": what is named has no unit, so the numbers are taken as they stand.
bool Prose::bare_rate(const Result& r) {
  if (r.fact < 2 || r.stated.unit || !says(r, "rate") || !r.close_name) return false;
  const Fact& time = facts_[r.fact - 1];
  const Fact& amount = facts_[r.fact - 2];
  bool is_time = time.leaf.unit && time.leaf.unit->dimension == dimension::kTime && time.leaf.value != 0;
  if (!is_time || !amount.leaf.unit || amount.leaf.unit->dimension == dimension::kTime || r.token - amount.token > 24) return false;
  Expression e;
  std::int16_t a = e.add_leaf(amount.leaf);
  std::int16_t b = e.add_leaf(time.leaf);
  e.root = e.add_node(Op::divide, a, b);
  Value v = evaluate(e, Scaling::as_written);
  if (v.state != State::ok) return false;
  if (is_rounded(v.number, v.rough, r.stated.decimal)) {
    report(r, amount.leaf.source.begin, right(e, r));
    return true;
  }
  std::vector<Slip> slips = find_slips(e, Exact(1), Scaling::as_written, r.stated.decimal);
  if (r.lead != Lead::strong || slips.empty()) return false;
  report(r, amount.leaf.source.begin, wrong(e, r.stated, std::move(slips)));
  return true;
}

bool Prose::next_step(const Result& r) {
  if (r.fact < 3 || !r.stated.unit) return false;
  const Fact& x2 = facts_[r.fact - 1];
  auto kind = [](const Fact& fact) { return fact.leaf.unit ? std::optional<Dimension>(fact.leaf.unit->dimension) : std::nullopt; };
  bool things = !kind(x2) && x2.leaf.value.get_den() == 1;  // "3 cells give 4.5 V so then 1 gives 1.5 V"
  if ((!kind(x2) && !things) || (!things && *kind(x2) == r.stated.unit->dimension) || r.token - x2.token > 6) return false;
  bool then = false;
  for (std::size_t i = x2.token > 4 ? x2.token - 4 : 0; i < x2.token; ++i) then = then || is_then(tokens_.word(i));
  if (!then) return false;
  const Fact* x1 = &facts_[r.fact - 2];
  const Fact* y1 = &facts_[r.fact - 3];
  if (kind(*x1) != kind(x2)) std::swap(x1, y1);
  if (kind(*x1) != kind(x2) || kind(*y1) != r.stated.unit->dimension || x1->leaf.value == 0 || x2.token - std::min(x1->token, y1->token) > 16)
    return false;
  if (things && x1->leaf.value.get_den() != 1) return false;
  Expression e;
  std::int16_t a = e.add_leaf(y1->leaf);
  std::int16_t b = e.add_leaf(x2.leaf);
  std::int16_t c = e.add_leaf(x1->leaf);
  std::int16_t top = e.add_node(Op::multiply, a, b);
  e.root = e.add_node(Op::divide, top, c);
  Value v = evaluate(e, Scaling::si);
  if (v.state != State::ok) return false;
  std::uint32_t begin = std::min(x1->leaf.source.begin, y1->leaf.source.begin);
  if (is_rounded(v.number / scale(r.stated), v.rough, r.stated.decimal)) {
    report(r, begin, right(e, r));
    return true;
  }
  // "3 N stretches it 6 cm so 9 N stretches it 12 cm": as much more of the one as of the other
  Exact added = y1->leaf.value + x2.leaf.value - x1->leaf.value;
  bool as_much_more = added == r.stated.decimal.value || y1->leaf.value * 2 == r.stated.decimal.value;
  if (things || !as_much_more || x2.leaf.value == x1->leaf.value) return false;
  report(r, begin, wrong(e, r.stated, {Slip::operation}));
  return true;
}

}  // namespace retort::calc
