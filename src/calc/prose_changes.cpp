// Conversions, rates, changes and proportion.
#include "calc/prose_finder.h"

namespace retort::calc {

// "... 462 000 J. That is 462 kJ", "In kilojoules this is 36 kJ"
bool Prose::conversion(const Result& r) {
  if (r.fact == 0 || !r.stated.unit || r.stated.unit->dimension.none()) return false;
  const Fact& before = facts_[r.fact - 1];
  if (!before.leaf.unit || before.leaf.unit->dimension != r.stated.unit->dimension || before.leaf.unit->scale == r.stated.unit->scale ||
      r.token - before.token > 9)
    return false;
  bool points = false;
  for (std::size_t i = before.token + 1; i < r.token; ++i) {
    std::string_view word = tokens_.word(i);
    bool is = (word == "is" || word == "was") && i == before.token + 1 && r.token == i + 1;  // "45 mins is 0.75 hours"
    bool so = word == "so" && r.token - before.token <= 4;
    points = points || is || so || word == "into" || tokens_.is(i, TokenKind::open) || word == "that" || word == "thats" || word == "this" ||
             word == "which" || word == "or" || word == "rounded" || word == "converts" || tokens_.is(i, TokenKind::equals);
  }
  if (!points) return false;
  Expression e;
  e.root = e.add_leaf(before.leaf);
  if (fits(e, r.stated)) {
    report(r, before.leaf.source.begin, right(e, r));
    return true;
  }
  Value v = evaluate(e, Scaling::si);
  bool digits_kept = power_apart(before.leaf.value, false, r.stated.decimal) != 0;  // "45 mins is 0.45 hours"
  if (power_apart(v.number / scale(r.stated), false, r.stated.decimal) == 0 && !digits_kept) return false;
  report(r, before.leaf.source.begin, wrong(e, r.stated, {Slip::power_of_ten}));
  return true;
}

// "fell from 82 °C to 64 °C in 9 minutes. That's a rate of 2.0 °C per min": reported if it fits.
bool Prose::rate(const Result& r) {
  if (!r.stated.unit) return false;
  const Leaf* time = nullptr;
  std::vector<const Leaf*> two;
  for (std::size_t i : nearest(r, 5)) {
    const Leaf& leaf = facts_[i].leaf;
    if (!leaf.unit) continue;
    if (time == nullptr && leaf.unit->dimension == dimension::kTime)
      time = &leaf;
    else if (two.size() < 2 && leaf.unit->dimension / dimension::kTime == r.stated.unit->dimension)
      two.push_back(&leaf);
  }
  if (time == nullptr || two.size() < 2) return false;
  Expression e;
  std::int16_t a = e.add_leaf(*two[0]);
  std::int16_t b = e.add_leaf(*two[1]);
  std::int16_t change = e.add_node(Op::subtract, a, b);
  std::int16_t t = e.add_leaf(*time);
  e.root = e.add_node(Op::divide, change, t);
  if (!fits(e, r.stated)) return false;
  report(r, std::min(two[1]->source.begin, time->source.begin), right(e, r));
  return true;
}

// "from 21.5 to 37.0 so that's a rise of 15.5": the two numbers before differ by it.
bool Prose::difference(const Result& r) {
  bool named =
      says(r, "change") || says(r, "temperature change") || says(r, "percentage change") || says(r, "extension") || says(r, "change in speed");
  std::vector<std::size_t> two;
  for (std::size_t i : nearest(r, 5)) {
    const auto& unit = facts_[i].leaf.unit;
    if (!r.stated.unit && unit) continue;
    bool same = !r.stated.unit || r.stated.unit->dimension.none() || !unit || unit->dimension == r.stated.unit->dimension ||
                r.stated.unit->dimension == dimension::kAngle;
    if (same && two.size() < 2) two.push_back(i);
  }
  if (two.size() < 2 || facts_[two[0]].counted || facts_[two[1]].counted) return false;
  Leaf later = facts_[two[0]].leaf;
  Leaf earlier = facts_[two[1]].leaf;
  if (later.unit && !earlier.unit) earlier.unit = later.unit;
  if (earlier.unit && !later.unit) later.unit = earlier.unit;
  if (later.unit && later.unit->dimension != earlier.unit->dimension) return false;
  Expression e;
  std::int16_t a = e.add_leaf(later);
  std::int16_t b = e.add_leaf(earlier);
  e.root = e.add_node(Op::subtract, a, b);
  bool percent = r.stated.unit && r.stated.unit->symbol == "%";
  if (percent) {
    std::int16_t below = e.add_leaf(earlier);
    e.root = e.add_node(Op::divide, e.root, below);
  } else if (later.unit && r.stated.unit && later.unit->dimension != r.stated.unit->dimension &&
             !(r.stated.unit->dimension == dimension::kAngle && later.unit->dimension == dimension::kTemperature)) {
    return false;
  }
  Value v = evaluate(e, r.stated.unit && later.unit ? Scaling::si : Scaling::as_written);
  if (v.state != State::ok || v.number == 0) return false;
  bool fits_it = is_rounded(v.number / (later.unit || percent ? scale(r.stated) : Exact(1)), false, r.stated.decimal);
  bool joined = joined_by_to(two[1], two[0]);
  bool close_by = facts_[two[0]].token - facts_[two[1]].token <= 10 && r.token - facts_[two[0]].token <= 14;
  bool two_only = named && r.worded && r.close_name && facts_[two[0]].leaf.unit && facts_[two[1]].leaf.unit;
  bool enough = named || (r.lead == Lead::strong && r.stated.decimal.figures >= 2 && close_by && (joined || later.unit));
  std::uint32_t begin = facts_[two[1]].leaf.source.begin;
  if (fits_it && enough) {
    report(r, begin, right(e, r));
    return true;
  }
  if (r.stated.decimal.value == later.value || r.stated.decimal.value == earlier.value) {  // nothing was taken away
    if (!two_only) return false;
    report(r, begin, wrong(e, r.stated, {Slip::operation}));
    return true;
  }
  if (percent && earlier.value != 0 && later.value != 0 &&
      (is_rounded(later.value / earlier.value * 100, false, r.stated.decimal) ||
       is_rounded(earlier.value / later.value * 100, false, r.stated.decimal)))
    return false;  // "2.4 g expected and 1.8 g got, so the yield is 75 %"
  if (fits_it || !named || r.lead != Lead::strong || (r.defined && !r.worded) || !(joined || two_only)) return false;
  std::vector<Slip> slips = find_slips(e, scale(r.stated), later.unit ? Scaling::si : Scaling::as_written, r.stated.decimal);
  if (slips.empty() && tokens_.word(r.lead_token) != "so" && !tokens_.is(r.lead_token, TokenKind::equals)) return false;
  report(r, begin, wrong(e, r.stated, slips));
  return true;
}

// "from 80 to 58", "20.5 → 29.0"
bool Prose::joined_by_to(std::size_t a, std::size_t b) const {
  for (std::size_t i = facts_[a].token + 1; i < facts_[b].token; ++i) {
    if (tokens_.word(i) == "to" || tokens_.is(i, TokenKind::equals)) return facts_[b].token - facts_[a].token <= 5;
  }
  return false;
}

long Prose::times_word(std::string_view word) {
  if (word == "double" || word == "doubled" || word == "doubles" || word == "twice") return 2;
  if (word == "triple" || word == "tripled" || word == "trebled" || word == "treble") return 3;
  if (word == "quadruple" || word == "quadrupled") return 4;
  return 0;
}

// "three times the force so three times the acceleration, 0.45": the factor, 0 if none is stated.
Exact Prose::factor_before(const Result& r) const {
  for (std::size_t i = r.token; i > 0 && r.token - i < 24; --i) {
    std::string_view word = tokens_.word(i - 1);
    if (long n = times_word(word)) return n;
    if (Exact part = part_said(i - 1); part != 0) return part;
    if ((word == "half" || word == "halved" || word == "halves" || word == "halve") && !tokens_.is(i, TokenKind::number)) return Exact(1, 2);
    if (word == "back" && i > 2 && tokens_.word(i - 2) == "and" && tokens_.word(i - 3) == "there") return 2;
    if (word == "times" && i > 1) {
      if (tokens_.is(i - 2, TokenKind::number)) return tokens_.number(i - 2).decimal.value;
      static constexpr std::string_view kWords[] = {"two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"};
      for (std::size_t n = 0; n < std::size(kWords); ++n) {
        if (tokens_.word(i - 2) == kWords[n]) return Exact(static_cast<long>(n + 2));
      }
    }
  }
  return 0;
}

// "half a loop is 40 cm": the factor is of the value that follows it.
bool Prose::factor_stands_before(const Result& r, std::size_t token) const {
  std::size_t from = r.token > 24 ? r.token - 24 : 0;
  for (std::size_t i = token + 1; i < r.token; ++i) {
    std::string_view word = tokens_.word(i);
    if (word.starts_with("hal") || times_word(word) != 0) return false;
  }
  for (std::size_t i = from; i < token; ++i) {
    if (tokens_.word(i) == "half") return true;
  }
  return false;
}

bool Prose::there_and_back(const Result& r) const {
  for (std::size_t i = r.token; i > 2 && r.token - i < 24; --i) {
    if (tokens_.word(i - 1) == "back" && tokens_.word(i - 2) == "and" && tokens_.word(i - 3) == "there") return true;
  }
  return false;
}

bool Prose::proportion(const Result& r) {
  Exact factor = factor_before(r);
  if (factor == 0) return false;
  for (std::size_t i : nearest(r, kMostInputs)) {
    const Leaf& from = facts_[i].leaf;
    bool same = (!from.unit && !r.stated.unit) || (from.unit && r.stated.unit && from.unit->dimension == r.stated.unit->dimension);
    if (!same) continue;
    Expression e;
    std::int16_t a = e.add_leaf(from);
    Leaf by;
    by.value = factor;
    std::int16_t b = e.add_leaf(by);
    e.root = e.add_node(Op::multiply, a, b);
    if (fits(e, r.stated)) {
      report(r, from.source.begin, right(e, r));
      return true;
    }
    Expression other = e;  // doubled where it should be halved
    other.node(other.root).op = Op::divide;
    if (there_and_back(r)) {  // the way there, or the way there and back
      if (!fits(other, r.stated)) continue;
      report(r, from.source.begin, right(other, r));
      return true;
    }
    bool of_the_value = factor < 1 && factor_stands_before(r, facts_[i].token);  // "half a wave is 40 cm so a wave is 80 cm"
    if (of_the_value && fits(other, r.stated)) {
      report(r, from.source.begin, right(other, r));
      return true;
    }
    if (r.lead == Lead::strong && r.stated.unit && from.value != r.stated.decimal.value && fits(other, r.stated)) {
      report(r, from.source.begin, wrong(e, r.stated, {Slip::operation}));
      return true;
    }
  }
  return false;
}

// "30 cm of the wire was 2.4 ohms, so 75 cm should be 6.0 ohms": in proportion, if it fits.
bool Prose::in_proportion(const Result& r) {
  if (r.lead != Lead::strong || !r.stated.unit || r.stated.decimal.figures < 2) return false;
  std::vector<std::size_t> inputs = nearest(r, 4);
  auto kind = [&](std::size_t i) { return facts_[i].leaf.unit ? std::optional<Dimension>(facts_[i].leaf.unit->dimension) : std::nullopt; };
  for (std::size_t y : inputs) {
    if (kind(y) != r.stated.unit->dimension) continue;
    for (std::size_t x1 : inputs) {
      for (std::size_t x2 : inputs) {
        if (x1 == x2 || x1 == y || x2 == y || x2 < x1 || x2 < y || !kind(x1) || kind(x1) != kind(x2) || kind(x1) == kind(y)) continue;
        Expression e;
        std::int16_t a = e.add_leaf(facts_[y].leaf);
        std::int16_t b = e.add_leaf(facts_[x2].leaf);
        std::int16_t c = e.add_leaf(facts_[x1].leaf);
        std::int16_t top = e.add_node(Op::multiply, a, b);
        e.root = e.add_node(Op::divide, top, c);
        Value v = evaluate(e, Scaling::si);
        if (v.state != State::ok || !is_rounded(v.number / scale(r.stated), v.rough, r.stated.decimal)) continue;
        report(r, std::min(facts_[x1].leaf.source.begin, facts_[y].leaf.source.begin), right(e, r));
        return true;
      }
    }
  }
  return false;
}

}  // namespace retort::calc
