#include "calc/prose.h"

#include <algorithm>
#include <string_view>

#include "calc/naming.h"
#include "calc/readings.h"
#include "calc/slips.h"

namespace retort::calc {
namespace {

constexpr std::size_t kLeadReach = 12;    // tokens between "so" and the result
constexpr std::size_t kInputReach = 70;   // tokens back to the values a result is worked out from
constexpr std::size_t kMostInputs = 8;

// How surely the words before a number say that it was worked out.
enum class Lead : std::uint8_t { none, weak, strong };

bool strong_word(std::string_view word) {
  static constexpr std::string_view kWords[] = {"so", "therefore", "thus", "gives", "gave", "giving", "makes", "made", "comes", "came", "works", "worked", "got", "get", "answer", "thats", "means", "hence", "calculated", "meaning", "making", "equals", "found", "determined", "which", "should", "doing"};
  return std::find(std::begin(kWords), std::end(kWords), word) != std::end(kWords);
}
bool weak_word(std::string_view word) {
  static constexpr std::string_view kWords[] = {"is", "was", "are", "were", "mean", "average", "change", "difference", "be", "which", "lost", "gained", "its", "total", "\u00B1", "rose", "fell", "rise", "drop", "fall", "increase", "decrease", "used"};
  return std::find(std::begin(kWords), std::end(kWords), word) != std::end(kWords);
}

class Prose {
 public:
  Prose(const Tokens& tokens, const FormulaBook& book, const std::vector<Fact>& facts, const Judge& judge, const std::vector<Span>& taken, std::vector<Calculation>& out)
      : tokens_(tokens), book_(book), facts_(facts), judge_(judge), taken_(taken), out_(out) {
    for (const Calculation& c : out) results_.push_back(c.result.begin);
  }

  void run() {
    std::sort(taken_.begin(), taken_.end(), [](Span a, Span b) { return a.begin < b.begin; });
    std::sort(results_.begin(), results_.end());
    for (std::size_t f = 0; f < facts_.size(); ++f) {
      bool bare_word = tokens_.is(facts_[f].token, TokenKind::number) && tokens_.all[facts_[f].token].in_words && !facts_[f].leaf.unit;
      bool used = facts_[f].leaf.source.begin > used_.begin && facts_[f].leaf.source.end <= used_.end;
      if (used || bare_word || !tokens_.is(facts_[f].token, TokenKind::number) || is_taken(facts_[f].leaf.source)) continue;
      result(f);
    }
  }

 private:
  struct Result {
    std::size_t fact = 0;
    std::size_t token = 0;
    Stated stated;
    Named named;
    Lead lead = Lead::none;
    std::size_t lead_token = 0;
    bool defined = false;  // "k = 40 N/m": may be no more than a value that is given
    bool worded = false;   // "so", "gives"
    bool close_name = false;  // the name stands right before
    bool formula = false;     // "v = fλ = 20"
    bool forward = false;     // the values stand behind
  };

  bool is_taken(Span span) const {
    auto after = std::partition_point(taken_.begin(), taken_.end(), [&](Span t) { return t.begin <= span.begin; });
    for (std::size_t n = 0; n < 4 && after != taken_.begin(); ++n) {
      --after;
      if (span.begin >= after->begin && span.end <= after->end) return true;
    }
    return false;
  }

  // A number of a calculation that is not its result.
  bool is_inside_calculation(Span span) const {
    if (!is_taken(span)) return false;
    return !std::binary_search(results_.begin(), results_.end(), span.begin);
  }

  void result(std::size_t f) {
    Result r;
    r.fact = f;
    r.token = facts_[f].token;
    const Number& number = tokens_.number(r.token);
    if (!can_be_result(r.token)) return;
    r.stated = {number.decimal, number.unit, tokens_.all[r.token].source, number.digits, r.token};
    bool negative = r.token > 1 && tokens_.is(r.token - 1, TokenKind::minus) && tokens_.all[r.token].glued && !tokens_.all[r.token - 1].glued && !tokens_.is(r.token - 2, TokenKind::number);
    if (negative) r.stated.digits.begin = tokens_.all[r.token - 1].source.begin;
    if (conversion(r) || is_number_of_things(r.token)) return;
    Result behind = r;
    bool repeated = said_already(r);
    find_lead(r);
    if (r.lead != Lead::none && mean(r)) return;
    if (repeated) return;
    if (reason_behind(behind) && (by_formula(behind) || difference(behind) || any_two(behind))) return;
    if (r.lead == Lead::none) return;
    name(r);
    if (plus_minus(r) || sum_or_range(r) || rate(r) || half_range(r) || by_formula(r) || difference(r) || proportion(r) || any_two(r) || each(r) || in_proportion(r)) return;
    missing_value(r);
  }

  // "divided by 4", "the mean for 10 is ...": a number that is worked with.
  bool is_number_of_things(std::size_t i) const {
    std::string_view before = i > 0 ? tokens_.word(i - 1) : std::string_view{};
    std::string_view earlier = i > 1 ? tokens_.word(i - 2) : std::string_view{};
    if (before == "by" && (earlier.starts_with("divid") || earlier.starts_with("multipl") || earlier.starts_with("shar"))) return true;
    std::string_view verb = tokens_.word(i + 1);
    bool named = before == "for" || before == "of" || before == "all";
    return named && (verb == "is" || verb == "was" || verb == "are" || verb == "were");
  }

  // Not the beginning of an expression, of a range or of a row of numbers.
  bool can_be_result(std::size_t i) const {
    TokenKind next = tokens_.kind(i + 1);
    if (next >= TokenKind::plus && next <= TokenKind::cubed) return false;
    if (next == TokenKind::pi || (next == TokenKind::word && tokens_.all[i + 1].glued)) return false;
    bool range = tokens_.word(i + 1) == "to" && tokens_.is(i + 2, TokenKind::number);
    bool row = i >= 2 && tokens_.is(i - 1, TokenKind::equals) && tokens_.is(i - 2, TokenKind::number) && same_kind(tokens_.number(i - 2).unit, tokens_.number(i).unit);
    return !range && !row;
  }
  static bool same_kind(const std::optional<CompoundUnit>& a, const std::optional<CompoundUnit>& b) { return a.has_value() == b.has_value() && (!a || a->dimension == b->dimension); }
  // A result that is only named again.
  bool said_already(const Result& r) const {
    if (r.token > 0 && tokens_.word(r.token - 1) == "\u00B1") return false;
    for (std::size_t i = r.fact; i > 0 && r.fact - i < 24; --i) {
      const Fact& fact = facts_[i - 1];
      if (fact.leaf.value != r.stated.decimal.value) continue;
      if (std::binary_search(results_.begin(), results_.end(), fact.leaf.source.begin) || fact.leaf.source.begin == last_result_) return true;
    }
    return false;
  }

  // By the name before the statement's first sign of equality, or before the number.
  void name(Result& r) const {
    std::size_t at = r.token;
    if (tokens_.is(at - 1, TokenKind::equals)) at = first_sign_from(tokens_, at - 1);
    NameFound found = find_name(tokens_, book_, at, 14);
    r.named.quantities = found.quantities;
    r.named.symbol = found.symbol;
    r.close_name = found.end + 5 >= at;
    r.formula = at + 1 < r.token;
  }

  // "0.2 Hz is the frequency, because 10 waves went past in 2 s": the values stand behind.
  bool reason_behind(Result& r) const {
    bool reason = false;
    for (std::size_t i = r.token + 1; i < tokens_.size() && i < r.token + 9 && !reason; ++i) {
      if (tokens_.is(i, TokenKind::number) || tokens_.is(i, TokenKind::stop) || tokens_.is(i, TokenKind::line)) return false;
      std::string_view word = tokens_.word(i);
      reason = word == "because" || word == "since" || word == "cos" || word == "becuase" || word == "as";
    }
    if (!reason) return false;
    name(r);
    for (std::size_t i = r.token + 1; i < r.token + 7 && r.named.quantities.empty(); ++i) {
      std::vector<QuantityId> ids;
      if (book_.phrase_at(tokens_, i, ids) > 0) r.named.quantities = ids;
    }
    r.forward = true;
    r.worded = true;
    r.lead = Lead::strong;
    r.lead_token = r.token;
    r.close_name = true;
    return true;
  }

  void find_lead(Result& r) const {
    for (std::size_t i = r.token; i > 0 && r.token - i < kLeadReach; --i) {
      TokenKind kind = tokens_.kind(i - 1);
      if (kind == TokenKind::number && !tokens_.all[i - 1].in_words) return;
      if (kind == TokenKind::stop || kind == TokenKind::line) return;
      bool sign = kind == TokenKind::equals;
      if (kind >= TokenKind::root && kind <= TokenKind::arctangent) {
        r.lead = Lead::none;  // "tan r = 0.40"
        return;
      }
      std::string_view word = tokens_.word(i - 1);
      if (sign || strong_word(word)) {
        r.lead_token = r.lead == Lead::strong ? r.lead_token : i - 1;
        r.lead = Lead::strong;
        r.defined = r.defined || sign;
        if (!sign) r.worded = true;
        if (!sign) return;
      }
      if (r.lead == Lead::none && weak_word(word) && !((word == "mean" || word == "average") && tokens_.word(i) == "of")) {
        r.lead = Lead::weak;
        r.lead_token = i - 1;
      }
    }
  }

  bool says(const Result& r, std::string_view quantity) const {
    return std::any_of(r.named.quantities.begin(), r.named.quantities.end(), [&](QuantityId id) { return book_.quantity(id).name == quantity; });
  }

  // --- what can be reported

  void report(const Result& r, std::uint32_t begin, Judgement judgement) {
    Calculation c;
    c.span = {std::min(begin, r.stated.source.begin), r.stated.source.end};
    if (r.forward) {
      for (std::size_t i : nearest(r, 3)) c.span.end = std::max(c.span.end, facts_[i].leaf.source.end);
      c.span.begin = r.stated.digits.begin;
    }
    c.result = r.stated.digits;
    c.verdict = judgement.verdict;
    c.slips = std::move(judgement.slips);
    c.remarks = std::move(judgement.remarks);
    c.doubt = judgement.doubt;
    c.correct = std::move(judgement.correct);
    c.formula = std::move(judgement.formula);
    last_result_ = r.stated.source.begin;
    if (r.forward) used_ = c.span;
    out_.push_back(std::move(c));
  }

  static Exact scale(const Stated& stated) { return stated.unit ? exact(stated.unit->scale) : Exact(1); }

  // Whether `e` gives the stated number, in its unit or, where units are not written, as the numbers stand.
  bool fits(const Expression& e, const Stated& stated) const {
    Value si = evaluate(e, Scaling::si);
    if (si.state != State::ok || si.clash) return false;
    if (stated.unit && si.unknown == 0 && si.dimension != stated.unit->dimension && !stated.unit->dimension.none()) return false;
    if (is_rounded(si.number / scale(stated), si.rough, stated.decimal)) return true;
    bool bare = !stated.unit || si.unknown > 0;
    Value written = evaluate(e, Scaling::as_written);
    return bare && is_rounded(written.number, written.rough, stated.decimal);
  }

  Judgement right(const Expression& e, const Result& r) const {
    Judgement out;
    out.verdict = Verdict::right;
    Value si = evaluate(e, Scaling::si);
    if (!r.stated.unit && si.unknown == 0 && !si.dimension.none()) out.remarks.push_back(Remark::unit_missing);
    return out;
  }
  Judgement wrong(const Expression& e, const Stated& stated, std::vector<Slip> slips) const {
    Judgement out;
    out.verdict = Verdict::wrong;
    out.slips = slips.empty() ? std::vector<Slip>{Slip::arithmetic} : std::move(slips);
    Value v = evaluate(e, stated.unit ? Scaling::si : Scaling::as_written);
    out.correct = sensible(v.number / scale(stated), e, &stated.decimal, stated.unit ? stated.unit->symbol : "");
    return out;
  }

  // --- means and ranges of listed readings

  bool mean(const Result& r) {
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
  bool miscounted(const std::vector<std::size_t>& list, const Result& r) const {
    Value mean = evaluate(mean_of(list, r), r.stated.unit ? Scaling::si : Scaling::as_written);
    auto n = static_cast<long>(list.size());
    for (long other : {n - 1, n + 1, n - 2, n + 2}) {
      if (other > 1 && is_rounded(mean.number / scale(r.stated) * n / other, false, r.stated.decimal)) return true;
    }
    return false;
  }
  // "the mean of ... is", "..., so the average was": no other number stands between the word and the result.
  bool says_mean(const Result& r, std::size_t last_reading) const {
    std::size_t last = facts_[last_reading].token;
    for (std::size_t i = r.token; i > 0 && r.token - i < 60; --i) {
      std::string_view word = tokens_.word(i - 1);
      if (word == "mean" || word == "average" || word == "avarage" || word == "averge" || word == "avg" || word == "meen") {
        bool number_of_readings = tokens_.word(i) == "of" && i + 1 == r.token;
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
  long readings_said(const Result& r) const {
    for (std::size_t i = r.token; i > 1 && r.token - i < 5; --i) {
      if (!tokens_.is(i - 1, TokenKind::number)) continue;
      bool of = tokens_.word(i - 2) == "of" || tokens_.word(i - 2) == "all";
      const Exact& value = tokens_.number(i - 1).decimal.value;
      return of && value.get_den() == 1 && value < 100 ? value.get_num().get_si() : 0;
    }
    return 0;
  }
  // An anomaly is said to be left out.
  bool leaves_out(const Result& r) const {
    static constexpr std::string_view kWords[] = {"anomaly", "anomalous", "anomolous", "outlier", "ignore", "ignored", "ignoring", "without", "off", "odd", "chuck", "leave", "left", "leaving", "rough", "exclude", "excluded", "wrong", "discard", "anomoly", "except"};
    for (std::size_t i = r.token > 80 ? r.token - 80 : 0; i < tokens_.size() && i < r.token + 30; ++i) {
      if (std::find(std::begin(kWords), std::end(kWords), tokens_.word(i)) != std::end(kWords)) return true;
    }
    return false;
  }
  Expression mean_of(const std::vector<std::size_t>& list, const Result& r) const {
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
  static Leaf with_unit(Leaf leaf, const std::optional<CompoundUnit>& unit) {
    if (!leaf.unit) leaf.unit = unit;
    return leaf;
  }

  // "Added up it's 4.05", "so the range is 0.6"
  bool sum_or_range(const Result& r) {
    bool sum = false;
    bool range = false;
    for (std::size_t i = r.token; i > 0 && r.token - i < 7; --i) {
      if (tokens_.is(i - 1, TokenKind::number) || tokens_.is(i - 1, TokenKind::stop)) break;
      std::string_view word = tokens_.word(i - 1);
      sum = sum || word == "added" || word == "adding" || word == "adds" || word == "total" || word == "sum" || word == "altogether" || word == "together";
      range = range || word == "range";
      if (word == "half" || word == "should") return false;
    }
    if (!sum && !range) return false;
    std::vector<std::size_t> list = readings_before(tokens_, facts_, r.fact);
    if (list.size() < 2 && sum) return total_of_two(r);
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
  bool total_of_two(const Result& r) {
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
  bool one_left_out(const std::vector<std::size_t>& list, const Result& r) const {
    Exact total = 0;
    for (std::size_t i : list) total += facts_[i].leaf.value;
    return std::any_of(list.begin(), list.end(), [&](std::size_t i) { return is_rounded(total - facts_[i].leaf.value, false, r.stated.decimal); });
  }
  Expression range_of(const std::vector<std::size_t>& list, const Result& r) const {
    auto by_value = [&](std::size_t a, std::size_t b) { return facts_[a].leaf.value < facts_[b].leaf.value; };
    Expression e;
    std::int16_t high = e.add_leaf(with_unit(facts_[*std::max_element(list.begin(), list.end(), by_value)].leaf, r.stated.unit));
    std::int16_t low = e.add_leaf(with_unit(facts_[*std::min_element(list.begin(), list.end(), by_value)].leaf, r.stated.unit));
    e.root = e.add_node(Op::subtract, high, low);
    return e;
  }
  // "mean 5.4 cm ± 0.2 cm": reported if it is half the range of the readings.
  bool plus_minus(const Result& r) {
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
    if (fits_it) report(r, begin, right(e, r));
    else report(r, begin, wrong(e, r.stated, find_slips(e, scale(r.stated), r.stated.unit ? Scaling::si : Scaling::as_written, r.stated.decimal)));
    return true;
  }

  // "the range is 1.9 − 1.5 = 0.4 s so the uncertainty is ± 0.4 s as it is half the range"
  bool half_of_range(const Result& r) {
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
      if (fits(e, r.stated)) report(r, fact.leaf.source.begin, right(e, r));
      else report(r, fact.leaf.source.begin, wrong(e, r.stated, {Slip::square}));
      return true;
    }
    return false;
  }

  bool half_range(const Result& r) {
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
    if (fits(e, r.stated)) report(r, begin, right(e, r));
    else report(r, begin, wrong(e, r.stated, find_slips(e, scale(r.stated), r.stated.unit ? Scaling::si : Scaling::as_written, r.stated.decimal)));
    return true;
  }

  bool word_before(const Result& r, std::string_view a, std::string_view b, std::size_t reach) const {
    for (std::size_t i = r.token; i > 0 && r.token - i < reach + 30; --i) {
      if (tokens_.is(i - 1, TokenKind::stop) && r.token - i >= reach) return false;
      std::string_view word = tokens_.word(i - 1);
      if ((word == a || word == b) && r.token - i < reach + 20) return true;
    }
    return false;
  }

  // The numbers before the result that it may be worked out from, nearest first.
  std::vector<std::size_t> nearest(const Result& r, std::size_t most, bool inside = false) const {
    std::vector<std::size_t> out;
    for (std::size_t i = r.fact + 1; r.forward && i < facts_.size() && out.size() < most; ++i) {
      if (facts_[i].token >= tokens_.size() || facts_[i].token - r.token > 30) break;
      out.push_back(i);
    }
    if (r.forward) return out;
    for (std::size_t i = r.fact; i > 0 && out.size() < most; --i) {
      const Fact& fact = facts_[i - 1];
      if (r.token - fact.token > kInputReach) break;
      if (!inside && is_inside_calculation(fact.leaf.source)) continue;
      out.push_back(i - 1);
    }
    return out;
  }

  // --- formulas of the book

  struct Filled {
    Expression expression;
    const Formula* formula = nullptr;
    int score = 0;
    std::size_t first = 0;   // fact that stands first
    bool sure = true;        // no other value could have been meant
    bool doubtful = false;   // a value has another name than the variable
  };

  bool by_formula(const Result& r) {
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
    std::stable_sort(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(by_name), [](const Filled& a, const Filled& b) { return a.score > b.score; });
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
    if (r.lead != Lead::strong || by_unit || (only_defined && !formula_said(r))) return false;
    for (const Filled& one : all) {
      if (!one.sure) continue;
      Exact in = r.stated.unit ? scale(r.stated) : exact(book_.quantity(one.formula->result).unit.scale);
      std::vector<Slip> slips = find_slips(one.expression, in, Scaling::si, r.stated.decimal);
      if (slips.empty() && (!agree(all) || one.doubtful || only_defined)) continue;
      Judgement judgement = wrong(one.expression, r.stated, slips);
      judgement.formula = one.formula->text;
      report(r, facts_[one.first].leaf.source.begin, std::move(judgement));
      return true;
    }
    return false;
  }

  // Whether all formulas that could be meant give the same.
  static bool agree(const std::vector<Filled>& all) {
    Value first = evaluate(all[0].expression, Scaling::si);
    return std::all_of(all.begin(), all.end(), [&](const Filled& one) { return evaluate(one.expression, Scaling::si).number == first.number; });
  }
  // A formula for what is stated, in symbols or words, before it: "a = F/m", then on its own line "a = 3.0".
  bool formula_said(const Result& r) const {
    if (r.token < 2) return false;
    std::string_view symbol = tokens_.word(r.token - 2);
    for (std::size_t i = r.token > 200 ? r.token - 200 : 1; i + 1 < r.token && !symbol.empty(); ++i) {
      if (tokens_.is(i, TokenKind::equals) && tokens_.word(i - 1) == symbol && tokens_.is(i + 1, TokenKind::word)) return true;
    }
    return false;
  }

  // "weight = 1.96 kg": the number comes out, but in a unit of another quantity.
  bool unit_of_another_kind(const Result& r) {
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
  static bool mixed(const Expression& e) {
    return std::any_of(e.nodes.begin(), e.nodes.end(), [&](const Node& n) {
      bool leaves = (n.op == Op::subtract || n.op == Op::add) && e.node(n.left).op == Op::leaf && e.node(n.right).op == Op::leaf;
      return leaves && e.leaf_of(e.node(n.left)).unit.has_value() != e.leaf_of(e.node(n.right)).unit.has_value();
    });
  }

  // The best values before the result for the formula's variables, if all are there.
  void fill(const Result& r, const Formula& formula, std::vector<Filled>& all) const {
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

  // --- the same in another unit, and rates

  // "... 462 000 J. That is 462 kJ", "In kilojoules this is 36 kJ"
  bool conversion(const Result& r) {
    if (r.fact == 0 || !r.stated.unit || r.stated.unit->dimension.none()) return false;
    const Fact& before = facts_[r.fact - 1];
    if (!before.leaf.unit || before.leaf.unit->dimension != r.stated.unit->dimension || before.leaf.unit->scale == r.stated.unit->scale || r.token - before.token > 9) return false;
    bool points = false;
    for (std::size_t i = before.token + 1; i < r.token; ++i) {
      std::string_view word = tokens_.word(i);
      points = points || word == "into" || tokens_.is(i, TokenKind::open) || word == "that" || word == "thats" || word == "this" || word == "which" || word == "or" || word == "rounded" || word == "converts" || tokens_.is(i, TokenKind::equals);
    }
    if (!points) return false;
    Expression e;
    e.root = e.add_leaf(before.leaf);
    if (fits(e, r.stated)) {
      report(r, before.leaf.source.begin, right(e, r));
      return true;
    }
    Value v = evaluate(e, Scaling::si);
    if (power_apart(v.number / scale(r.stated), false, r.stated.decimal) == 0) return false;
    report(r, before.leaf.source.begin, wrong(e, r.stated, {Slip::power_of_ten}));
    return true;
  }

  // "fell from 82 °C to 64 °C in 9 minutes. That's a rate of 2.0 °C per min": reported if it fits.
  bool rate(const Result& r) {
    if (!r.stated.unit) return false;
    const Leaf* time = nullptr;
    std::vector<const Leaf*> two;
    for (std::size_t i : nearest(r, 5)) {
      const Leaf& leaf = facts_[i].leaf;
      if (!leaf.unit) continue;
      if (time == nullptr && leaf.unit->dimension == dimension::kTime) time = &leaf;
      else if (two.size() < 2 && leaf.unit->dimension / dimension::kTime == r.stated.unit->dimension) two.push_back(&leaf);
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

  // --- changes

  // "from 21.5 to 37.0 so that's a rise of 15.5": the two numbers before differ by it.
  bool difference(const Result& r) {
    bool named = says(r, "change") || says(r, "temperature change") || says(r, "percentage change") || says(r, "extension") || says(r, "change in speed");
    std::vector<std::size_t> two;
    for (std::size_t i : nearest(r, 5)) {
      const auto& unit = facts_[i].leaf.unit;
      if (!r.stated.unit && unit) continue;
      bool same = !r.stated.unit || r.stated.unit->dimension.none() || !unit || unit->dimension == r.stated.unit->dimension || r.stated.unit->dimension == dimension::kAngle;
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
    } else if (later.unit && r.stated.unit && later.unit->dimension != r.stated.unit->dimension && !(r.stated.unit->dimension == dimension::kAngle && later.unit->dimension == dimension::kTemperature)) {
      return false;
    }
    Value v = evaluate(e, r.stated.unit && later.unit ? Scaling::si : Scaling::as_written);
    if (v.state != State::ok || v.number == 0) return false;
    bool fits_it = is_rounded(v.number / (later.unit || percent ? scale(r.stated) : Exact(1)), false, r.stated.decimal);
    bool joined = joined_by_to(two[1], two[0]);
    bool close_by = facts_[two[0]].token - facts_[two[1]].token <= 10 && r.token - facts_[two[0]].token <= 14;
    bool two_only = named && r.worded && r.close_name && later.unit && earlier.unit;
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
    if (fits_it || !named || r.lead != Lead::strong || (r.defined && !r.worded) || !(joined || two_only)) return false;
    std::vector<Slip> slips = find_slips(e, scale(r.stated), later.unit ? Scaling::si : Scaling::as_written, r.stated.decimal);
    if (slips.empty() && tokens_.word(r.lead_token) != "so" && !tokens_.is(r.lead_token, TokenKind::equals)) return false;
    report(r, begin, wrong(e, r.stated, slips));
    return true;
  }

  // "from 80 to 58", "20.5 → 29.0"
  bool joined_by_to(std::size_t a, std::size_t b) const {
    for (std::size_t i = facts_[a].token + 1; i < facts_[b].token; ++i) {
      if (tokens_.word(i) == "to" || tokens_.is(i, TokenKind::equals)) return facts_[b].token - facts_[a].token <= 5;
    }
    return false;
  }

  // --- proportion

  static long times_word(std::string_view word) {
    if (word == "double" || word == "doubled" || word == "doubles" || word == "twice") return 2;
    if (word == "triple" || word == "tripled" || word == "trebled" || word == "treble") return 3;
    if (word == "quadruple" || word == "quadrupled") return 4;
    return 0;
  }
  // "three times the force so three times the acceleration, 0.45": the factor, 0 if none is stated.
  Exact factor_before(const Result& r) const {
    for (std::size_t i = r.token; i > 0 && r.token - i < 24; --i) {
      std::string_view word = tokens_.word(i - 1);
      if (long n = times_word(word)) return n;
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
  bool proportion(const Result& r) {
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
      if (r.lead == Lead::strong && r.stated.unit && from.value != r.stated.decimal.value && fits(other, r.stated)) {
        report(r, from.source.begin, wrong(e, r.stated, {Slip::operation}));
        return true;
      }
    }
    return false;
  }

  // --- any two values whose units make that of the result

  bool any_two(const Result& r) {
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
  bool two_fit(const Result& r, std::size_t left, std::size_t right_fact, Op op) {
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
    if (op != Op::divide || r.lead != Lead::strong || (r.defined && !r.worded) || r.stated.decimal.figures < 2) return false;
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

  // "9.6 Ω for 80 cm, which works out as 0.12 Ω for each cm": two numbers, if their quotient or product is it.
  bool each(const Result& r) {
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

  // "30 cm of the wire was 2.4 ohms, so 75 cm should be 6.0 ohms": in proportion, if it fits.
  bool in_proportion(const Result& r) {
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

  // "2.1 J of the 6.0 J was useful, so the efficiency was 35 %"
  bool ratio(const Result& r, const Leaf& a, const Leaf& b) {
    bool percent = r.stated.unit && r.stated.unit->symbol == "%";
    bool wanted = percent || says(r, "efficiency") || says(r, "magnification") || says(r, "retention factor") || says(r, "refractive index");
    if (!wanted || (r.stated.unit && !percent) || !a.unit || !b.unit || a.unit->dimension != b.unit->dimension || b.value == 0) return false;
    Expression e;
    std::int16_t l = e.add_leaf(a);
    std::int16_t m = e.add_leaf(b);
    e.root = e.add_node(Op::divide, l, m);
    Value v = evaluate(e, Scaling::si);
    if (!is_rounded(percent ? Exact(v.number * 100) : v.number, false, r.stated.decimal)) return false;
    report(r, std::min(a.source.begin, b.source.begin), right(e, r));
    return true;
  }

  // --- a result that was worked out from something that does not stand in the text

  bool says_worked_out(const Result& r, bool& formula) const {
    bool said = false;
    for (std::size_t i = r.token; i > 0 && r.token - i < 36; --i) {
      if (tokens_.is(i - 1, TokenKind::stop) || tokens_.is(i - 1, TokenKind::line) || is_taken(tokens_.all[i - 1].source)) break;
      std::string_view word = tokens_.word(i - 1);
      said = said || word == "divided" || word == "calculated" || word == "multiplied" || word == "timesed" || (word == "worked" && tokens_.word(i) == "out") || (word == "work" && tokens_.word(i) == "out");
      formula = formula || (tokens_.is(i - 1, TokenKind::equals) && tokens_.is(i, TokenKind::word) && i + 1 < r.token && i > 1 && tokens_.is(i - 2, TokenKind::word));
      formula = formula || (tokens_.is(i - 1, TokenKind::divide) && (tokens_.is(i, TokenKind::word) || tokens_.is(i - 2, TokenKind::word)));
    }
    return said || formula;
  }
  // The formula for what is stated was named before, and not all of its values are there.
  bool formula_lacks_value(const Result& r) const {
    if (r.lead != Lead::strong || !r.close_name || (r.defined && !r.worded && !r.formula) || !r.stated.unit) return false;
    if (r.formula && r.stated.unit->symbol == "%" && says(r, "efficiency")) return true;
    bool has_formula = std::any_of(r.named.quantities.begin(), r.named.quantities.end(), [&](QuantityId id) {
      return !book_.giving(id).empty() && book_.quantity(id).unit.dimension == r.stated.unit->dimension && !r.stated.unit->dimension.none();
    });
    if (!has_formula) return false;
    for (std::size_t i = r.token; i > 1 && r.token - i < 40; --i) {
      std::string_view word = tokens_.word(i - 1);
      if (is_taken(tokens_.all[i - 1].source)) return false;
      if (word == "formula" || word == "equation") return true;
      TokenKind kind = tokens_.kind(i - 1);
      bool between_words = tokens_.is(i - 2, TokenKind::word) && tokens_.is(i, TokenKind::word);
      if (between_words && (kind == TokenKind::divide || kind == TokenKind::times)) return true;
    }
    return false;
  }
  // "power = 12 x I = 30 W"
  bool unknown_factor(const Result& r) const {
    if (r.token < 4 || !tokens_.is(r.token - 1, TokenKind::equals)) return false;
    bool number = false;
    bool operation = false;
    bool symbol = false;
    for (std::size_t i = r.token - 1; i > 0; --i) {
      TokenKind kind = tokens_.kind(i - 1);
      if (kind == TokenKind::equals) break;
      if (kind == TokenKind::number) number = true;
      else if (kind == TokenKind::times || kind == TokenKind::divide) operation = true;
      else if (kind == TokenKind::word && is_name(i - 1)) symbol = true;
      else if (kind != TokenKind::open && kind != TokenKind::close && kind != TokenKind::plus && kind != TokenKind::minus) return false;
    }
    return number && operation && symbol;
  }
  bool is_name(std::size_t i) const {
    std::vector<QuantityId> ids;
    return tokens_.all[i].source.size() <= 6 || book_.phrase_at(tokens_, i, ids) > 0;
  }
  // Two values of the formula for what is stated are there, and one is not.
  bool all_but_one(const Result& r) const {
    if (r.lead != Lead::strong || !r.worded || !r.close_name || tokens_.word(r.lead_token) == "which") return false;
    std::vector<std::size_t> inputs = nearest(r, kMostInputs);
    for (QuantityId id : r.named.quantities) {
      for (const Formula* formula : book_.for_text(id, tokens_)) {
        std::size_t variables = 0;
        std::size_t there = 0;
        for (QuantityId variable : formula->variables) {
          if (variable == kNoQuantity) continue;
          ++variables;
          there += std::any_of(inputs.begin(), inputs.end(), [&](std::size_t i) { return fit(book_, variable, facts_[i].leaf, facts_[i].names) >= 1; }) ? 1U : 0U;
        }
        if (variables >= 3 && there + 1 == variables) return true;
      }
    }
    return false;
  }
  bool word_near(const Result& r, std::string_view a, std::string_view b) const {
    for (std::size_t i = r.token > 14 ? r.token - 14 : 0; i < r.token + 14; ++i) {
      if (tokens_.word(i) == a || tokens_.word(i) == b) return true;
    }
    return false;
  }
  // "came out as 2400 Pa using force over area", "determined with P = I²R and found to be 3.2 W"
  bool formula_around(const Result& r) const {
    std::string_view lead = tokens_.word(r.lead_token);
    bool outcome = lead == "came" || lead == "found" || lead == "determined" || lead == "worked" || lead == "calculated" || lead == "comes";
    bool has_formula = std::any_of(r.named.quantities.begin(), r.named.quantities.end(), [&](QuantityId id) { return !book_.giving(id).empty(); });
    for (std::size_t id = 0; r.named.quantities.empty() && r.stated.unit && id < book_.quantities().size(); ++id) {
      has_formula = has_formula || (book_.quantities()[id].unit.dimension == r.stated.unit->dimension && !r.stated.unit->dimension.none() && !book_.giving(static_cast<QuantityId>(id)).empty());
    }
    bool using_behind = tokens_.word(r.token + 1) == "using" && !tokens_.is(r.token + 2, TokenKind::number);  // "was 1.5 m/s² using F = ma"
    for (std::size_t i = r.token > 12 ? r.token - 12 : 1; i + 1 < r.token && !tokens_.is(r.token - 1, TokenKind::number); ++i) {
      bool said = tokens_.word(i) == "using" && (tokens_.word(i + 2) == "equation" || tokens_.word(i + 2) == "formula" || tokens_.word(i + 1) == "equation");
      using_behind = using_behind || said;
    }
    if (!(using_behind || (r.lead == Lead::strong && outcome)) || !has_formula || !r.stated.unit) return false;
    bool symbols = false;
    for (std::size_t i = r.token > 16 ? r.token - 16 : 1; i < r.token + 10 && i < tokens_.size(); ++i) {
      if (i > r.token && (tokens_.is(i, TokenKind::stop) || tokens_.is(i, TokenKind::line))) break;
      if (is_taken(tokens_.all[i].source)) return false;
      symbols = symbols || (tokens_.is(i, TokenKind::equals) && tokens_.is(i + 1, TokenKind::word) && tokens_.is(i - 1, TokenKind::word));
      symbols = symbols || tokens_.word(i) == "using" || tokens_.word(i) == "formula" || tokens_.word(i) == "equation";
    }
    return symbols;
  }
  void missing_value(const Result& r) {
    bool average = says(r, "mean") && r.lead_token > 0 && (word_near(r, "added", "divided") || word_near(r, "measured", "dividing") || word_before(r, "results", "readings", 12) || word_before(r, "repeats", "times", 12));
    bool formula = false;
    std::string_view lead = tokens_.word(r.lead_token);
    bool outcome = lead == "got" || lead == "gave" || lead == "gives" || lead == "came" || lead == "comes" || lead == "answer" || lead == "get" || lead == "made";
    bool derived = r.stated.unit || !r.named.quantities.empty() || says_worked_out(r, formula);
    bool worked = r.lead == Lead::strong && outcome && derived && says_worked_out(r, formula);
    if (!average && !worked && !unknown_factor(r) && !all_but_one(r) && !formula_lacks_value(r) && !formula_around(r)) return;
    Judgement unclear;
    unclear.doubt = Doubt::value_missing;
    report(r, tokens_.all[r.lead_token].source.begin, std::move(unclear));
  }

  const Tokens& tokens_;
  const FormulaBook& book_;
  const std::vector<Fact>& facts_;
  const Judge& judge_;
  std::vector<Span> taken_;             // by their beginning
  std::vector<std::uint32_t> results_;  // where the results of calculations begin
  std::uint32_t last_result_ = UINT32_MAX;
  Span used_;                           // values that stand behind their result
  std::vector<Calculation>& out_;
};

}  // namespace

bool may_hold_results(const Tokens& tokens, const std::vector<Fact>& facts) {
  return std::any_of(facts.begin(), facts.end(), [&](const Fact& fact) {
    for (std::size_t i = fact.token; i > 0 && fact.token - i < kLeadReach; --i) {
      TokenKind kind = tokens.kind(i - 1);
      if (kind == TokenKind::stop || kind == TokenKind::line) break;
      if (kind == TokenKind::equals || strong_word(tokens.word(i - 1)) || weak_word(tokens.word(i - 1))) return true;
    }
    for (std::size_t i = fact.token + 1; i < fact.token + 9; ++i) {  // "60 %, since ...", "(0.85 m)"
      std::string_view word = tokens.word(i);
      if (word == "because" || word == "since" || word == "cos" || word == "becuase" || word == "as") return true;
    }
    return fact.token > 0 && tokens.is(fact.token - 1, TokenKind::open);
  });
}

void find_in_prose(const Tokens& tokens, const FormulaBook& book, const std::vector<Fact>& facts, const Judge& judge, const std::vector<Span>& taken, std::vector<Calculation>& out) {
  Prose(tokens, book, facts, judge, taken, out).run();
}

}  // namespace retort::calc
