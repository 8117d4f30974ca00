// Means, sums and ranges of listed readings.
#include "calc/prose_finder.h"

namespace retort::calc {

bool Prose::mean(const Result& r) {
  std::vector<std::size_t> list = readings_before(tokens_, facts_, r.fact);
  bool plus_minus_behind = tokens_.word(r.token + 1) == "\u00B1";
  if (list.size() < 2 || is_inside_calculation(facts_[list.front()].leaf.source)) return false;
  if (plus_minus_behind && fits(mean_of(list, r), r.stated)) {
    report(r, facts_[list.front()].leaf.source.begin, right(mean_of(list, r), r));
    return true;
  }
  if (!says_mean(r, list.back())) return false;
  const auto& unit = facts_[list.back()].leaf.unit;
  if (unit && r.stated.unit && unit->dimension != r.stated.unit->dimension) return false;  // "average speed"
  std::uint32_t begin = facts_[list.front()].leaf.source.begin;
  if (long said = readings_said(r); said > static_cast<long>(list.size())) {  // the others do not stand here
    Judgement unclear;
    unclear.doubt = Doubt::value_missing;
    report(r, begin, std::move(unclear));
    return true;
  }
  Expression all = mean_of(list, r);
  if (fits(all, r.stated)) {
    report(r, begin, right(all, r));
    return true;
  }
  for (std::size_t out = 0; list.size() > 2 && out < list.size() && leaves_out(r); ++out) {
    std::vector<std::size_t> rest = list;
    rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(out));
    Expression e = mean_of(rest, r);
    if (!fits(e, r.stated)) continue;
    report(r, begin, right(e, r));
    return true;
  }
  if (miscounted(list, r)) {
    report(r, begin, wrong(all, r.stated, {Slip::count}));
    return true;
  }
  report(r, begin, wrong(all, r.stated, find_slips(all, scale(r.stated), r.stated.unit ? Scaling::si : Scaling::as_written, r.stated.decimal)));
  return true;
}

// The sum divided by one or two more or fewer than there are readings.
bool Prose::miscounted(const std::vector<std::size_t>& list, const Result& r) const {
  Value mean = evaluate(mean_of(list, r), r.stated.unit ? Scaling::si : Scaling::as_written);
  auto n = static_cast<long>(list.size());
  for (long other : {n - 1, n + 1, n - 2, n + 2}) {
    if (other > 1 && is_rounded(mean.number / scale(r.stated) * n / other, false, r.stated.decimal)) return true;
  }
  return false;
}

// "12.1, 12.4 and 12.3 have a mean of 12.3": the readings stand before.
bool Prose::gives_mean(std::size_t mean) const {
  for (std::size_t i = mean; i > 0 && mean - i < 3; --i) {
    std::string_view word = tokens_.word(i - 1);
    if (word == "have" || word == "has" || word == "had" || word == "make" || word == "makes" || word == "made" || word == "give" ||
        word == "gives" || word == "gave" || word == "giving" || word == "with" || word == "making")
      return true;
  }
  return false;
}

// "the mean of ... is", "..., so the average was": no other number stands between the word and the result.
bool Prose::says_mean(const Result& r, std::size_t last_reading) const {
  std::size_t last = facts_[last_reading].token;
  for (std::size_t i = r.token; i > 0 && r.token - i < 60; --i) {
    std::string_view word = tokens_.word(i - 1);
    if (word == "mean" || word == "average" || word == "avarage" || word == "averaging" || word == "averages" || word == "averge" || word == "avg" ||
        word == "meen") {
      bool number_of_readings = tokens_.word(i) == "of" && i + 1 == r.token && !(last + 1 < i && gives_mean(i - 1));
      return !number_of_readings;
    }
    bool between = i - 1 > last;
    if (between && (tokens_.is(i - 1, TokenKind::stop) || (tokens_.is(i - 1, TokenKind::line) && !tokens_.is(i, TokenKind::equals)))) return false;
    if (between && tokens_.is(i - 1, TokenKind::number) && tokens_.word(i - 2) != "of" && tokens_.word(i - 2) != "all") return false;
    if (!between && tokens_.is(i - 1, TokenKind::stop) && i - 1 < last) return false;
  }
  return false;
}

// "the mean of all 6 was"
long Prose::readings_said(const Result& r) const {
  for (std::size_t i = r.token; i > 1 && r.token - i < 5; --i) {
    if (!tokens_.is(i - 1, TokenKind::number)) continue;
    bool of = tokens_.word(i - 2) == "of" || tokens_.word(i - 2) == "all";
    const Exact& value = tokens_.number(i - 1).decimal.value;
    return of && value.get_den() == 1 && value < 100 ? value.get_num().get_si() : 0;
  }
  return 0;
}

// An anomaly is said to be left out.
bool Prose::leaves_out(const Result& r) const {
  static constexpr std::string_view kWords[] = {"anomaly", "anomalous", "anomolous", "outlier", "ignore",  "ignored", "ignoring",
                                                "without", "off",       "odd",       "chuck",   "leave",   "left",    "leaving",
                                                "rough",   "exclude",   "excluded",  "wrong",   "discard", "anomoly", "except"};
  for (std::size_t i = r.token > 80 ? r.token - 80 : 0; i < tokens_.size() && i < r.token + 30; ++i) {
    if (std::find(std::begin(kWords), std::end(kWords), tokens_.word(i)) != std::end(kWords)) return true;
  }
  return false;
}

Expression Prose::mean_of(const std::vector<std::size_t>& list, const Result& r) const {
  Expression e;
  std::int16_t sum = -1;
  for (std::size_t i : list) {
    std::int16_t leaf = e.add_leaf(with_unit(facts_[i].leaf, r.stated.unit));
    sum = sum < 0 ? leaf : e.add_node(Op::add, sum, leaf);
  }
  Leaf count;
  count.value = Exact(static_cast<long>(list.size()));
  std::int16_t n = e.add_leaf(count);
  e.root = e.add_node(Op::divide, sum, n);
  spread_units(e);
  return e;
}

// "Added up it's 4.05", "so the range is 0.6"
bool Prose::sum_or_range(const Result& r) {
  bool sum = false;
  bool range = false;
  for (std::size_t i = r.token; i > 0 && r.token - i < 7; --i) {
    if (tokens_.is(i - 1, TokenKind::number) || tokens_.is(i - 1, TokenKind::stop)) break;
    std::string_view word = tokens_.word(i - 1);
    sum = sum || word == "added" || word == "adding" || word == "adds" || word == "total" || word == "sum" || word == "altogether" ||
          word == "together";
    range = range || word == "range";
    if (word == "half" || word == "should") return false;
  }
  if (!sum && !range) return false;
  std::vector<std::size_t> list = readings_before(tokens_, facts_, r.fact);
  if (list.size() < 2 && sum) return total_of_two(r);
  if (list.size() < 2 && range) return range_of_two(r);
  if (list.size() < 2 || r.token - facts_[list.back()].token > 24) return false;
  Expression e = range ? range_of(list, r) : Expression{};
  for (std::size_t i = 0; sum && !range && i < list.size(); ++i) {
    std::int16_t leaf = e.add_leaf(with_unit(facts_[list[i]].leaf, r.stated.unit));
    e.root = i == 0 ? leaf : e.add_node(Op::add, e.root, leaf);
  }
  std::uint32_t begin = facts_[list.front()].leaf.source.begin;
  if (fits(e, r.stated)) {
    report(r, begin, right(e, r));
    return true;
  }
  if (list.size() > 2 && sum && one_left_out(list, r)) {
    report(r, begin, right(e, r));
    return true;
  }
  if (list.size() > 2 && leaves_out(r)) return false;
  report(r, begin, wrong(e, r.stated, find_slips(e, scale(r.stated), r.stated.unit ? Scaling::si : Scaling::as_written, r.stated.decimal)));
  return true;
}

// "thinking 14 m plus braking 38 m, total 52 m": reported if it fits.
bool Prose::total_of_two(const Result& r) {
  std::vector<std::size_t> two = nearest(r, 2);
  if (two.size() < 2) return false;
  Expression e;
  std::int16_t a = e.add_leaf(facts_[two[1]].leaf);
  std::int16_t b = e.add_leaf(facts_[two[0]].leaf);
  e.root = e.add_node(Op::add, a, b);
  if (!fits(e, r.stated)) return false;
  report(r, facts_[two[1]].leaf.source.begin, right(e, r));
  return true;
}

// "the fastest was 6.2 and the slowest 4.8 so the range is 1.4": reported if it fits.
bool Prose::range_of_two(const Result& r) {
  std::vector<std::size_t> two = nearest(r, 2);
  if (two.size() < 2) return false;
  Expression e = range_of(two, r);
  if (!fits(e, r.stated)) return false;
  report(r, facts_[two[1]].leaf.source.begin, right(e, r));
  return true;
}

bool Prose::one_left_out(const std::vector<std::size_t>& list, const Result& r) const {
  Exact total = 0;
  for (std::size_t i : list) total += facts_[i].leaf.value;
  return std::any_of(list.begin(), list.end(), [&](std::size_t i) { return is_rounded(total - facts_[i].leaf.value, false, r.stated.decimal); });
}

Expression Prose::range_of(const std::vector<std::size_t>& list, const Result& r) const {
  auto by_value = [&](std::size_t a, std::size_t b) { return facts_[a].leaf.value < facts_[b].leaf.value; };
  Expression e;
  std::int16_t high = e.add_leaf(with_unit(facts_[*std::max_element(list.begin(), list.end(), by_value)].leaf, r.stated.unit));
  std::int16_t low = e.add_leaf(with_unit(facts_[*std::min_element(list.begin(), list.end(), by_value)].leaf, r.stated.unit));
  e.root = e.add_node(Op::subtract, high, low);
  return e;
}

// "mean 5.4 cm ± 0.2 cm": reported if it is half the range of the readings.
bool Prose::plus_minus(const Result& r) {
  if (tokens_.word(r.token - 1) != "\u00B1") return false;
  std::vector<std::size_t> list = readings_before(tokens_, facts_, r.fact);
  if (list.size() < 3) return half_of_range(r);
  Expression e = range_of(list, r);
  Leaf half;
  half.value = Exact(1, 2);
  std::int16_t h = e.add_leaf(half);
  e.root = e.add_node(Op::multiply, e.root, h);
  bool half_said = false;
  for (std::size_t i = r.token > 8 ? r.token - 8 : 0; i < r.token + 8; ++i) half_said = half_said || tokens_.word(i) == "half";
  bool fits_it = fits(e, r.stated);
  if (!fits_it && !half_said) return false;
  std::uint32_t begin = facts_[list.front()].leaf.source.begin;
  if (fits_it)
    report(r, begin, right(e, r));
  else
    report(r, begin, wrong(e, r.stated, find_slips(e, scale(r.stated), r.stated.unit ? Scaling::si : Scaling::as_written, r.stated.decimal)));
  return true;
}

// "the range is 1.9 − 1.5 = 0.4 s so the uncertainty is ± 0.4 s as it is half the range"
bool Prose::half_of_range(const Result& r) {
  if (out_.empty()) return false;
  const Calculation& last = out_.back();
  bool half = false;
  for (std::size_t i = r.token > 8 ? r.token - 8 : 0; i < r.token + 9; ++i) half = half || tokens_.word(i) == "half";
  if (!half) return false;
  for (const Fact& fact : facts_) {
    bool result_before = fact.leaf.source.begin == last.result.begin && fact.token < r.token && r.token - fact.token < 14;
    if (!result_before) continue;
    Expression e;
    std::int16_t whole = e.add_leaf(with_unit(fact.leaf, r.stated.unit));
    Leaf by;
    by.value = Exact(1, 2);
    std::int16_t h = e.add_leaf(by);
    e.root = e.add_node(Op::multiply, whole, h);
    if (fits(e, r.stated))
      report(r, fact.leaf.source.begin, right(e, r));
    else
      report(r, fact.leaf.source.begin, wrong(e, r.stated, {Slip::square}));
    return true;
  }
  return false;
}

bool Prose::half_range(const Result& r) {
  bool range_said = false;
  bool half_said = false;
  for (std::size_t i = r.token; i > 0 && r.token - i < 12 && !tokens_.is(i - 1, TokenKind::number); --i) {
    range_said = range_said || tokens_.word(i - 1) == "range";
    half_said = half_said || tokens_.word(i - 1) == "half";
  }
  if (!range_said || !half_said) return false;
  std::vector<std::size_t> list = readings_before(tokens_, facts_, r.fact);
  if (list.size() < 2) list = nearest(r, 2);
  if (list.size() < 2) return false;
  auto by_value = [&](std::size_t a, std::size_t b) { return facts_[a].leaf.value < facts_[b].leaf.value; };
  std::size_t least = *std::min_element(list.begin(), list.end(), by_value);
  std::size_t most = *std::max_element(list.begin(), list.end(), by_value);
  Expression e;
  std::int16_t high = e.add_leaf(with_unit(facts_[most].leaf, r.stated.unit));
  std::int16_t low = e.add_leaf(with_unit(facts_[least].leaf, r.stated.unit));
  std::int16_t range = e.add_node(Op::subtract, high, low);
  Leaf half;
  half.value = Exact(1, 2);
  std::int16_t h = e.add_leaf(half);
  e.root = e.add_node(Op::multiply, range, h);
  std::uint32_t begin = facts_[std::min(least, most)].leaf.source.begin;
  if (fits(e, r.stated))
    report(r, begin, right(e, r));
  else
    report(r, begin, wrong(e, r.stated, find_slips(e, scale(r.stated), r.stated.unit ? Scaling::si : Scaling::as_written, r.stated.decimal)));
  return true;
}

}  // namespace retort::calc
