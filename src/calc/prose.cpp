#include "calc/prose.h"

#include "calc/prose_finder.h"

namespace retort::calc {
void Prose::run() {
  std::sort(taken_.begin(), taken_.end(), [](Span a, Span b) { return a.begin < b.begin; });
  std::sort(results_.begin(), results_.end());
  for (std::size_t f = 0; f < facts_.size(); ++f) {
    bool bare_word = tokens_.is(facts_[f].token, TokenKind::number) && tokens_.all[facts_[f].token].in_words && !facts_[f].leaf.unit;
    bool used = facts_[f].leaf.source.begin > used_.begin && facts_[f].leaf.source.end <= used_.end;
    if (used || bare_word || !tokens_.is(facts_[f].token, TokenKind::number) || is_taken(facts_[f].leaf.source)) continue;
    result(f);
  }
}

bool Prose::is_taken(Span span) const {
  auto after = std::partition_point(taken_.begin(), taken_.end(), [&](Span t) { return t.begin <= span.begin; });
  for (std::size_t n = 0; n < 4 && after != taken_.begin(); ++n) {
    --after;
    if (span.begin >= after->begin && span.end <= after->end) return true;
  }
  return false;
}

// A number of a calculation that is not its result.
bool Prose::is_inside_calculation(Span span) const {
  if (!is_taken(span)) return false;
  return !std::binary_search(results_.begin(), results_.end(), span.begin);
}

void Prose::result(std::size_t f) {
  Result r;
  r.fact = f;
  r.token = facts_[f].token;
  const Number& number = tokens_.number(r.token);
  if (!can_be_result(r.token)) return;
  r.stated = {number.decimal, number.unit, tokens_.all[r.token].source, number.digits, r.token};
  bool negative = r.token > 1 && tokens_.is(r.token - 1, TokenKind::minus) && tokens_.all[r.token].glued && !tokens_.all[r.token - 1].glued &&
                  !tokens_.is(r.token - 2, TokenKind::number);
  if (negative) r.stated.digits.begin = tokens_.all[r.token - 1].source.begin;
  if (conversion(r) || is_number_of_things(r.token)) return;
  Result behind = r;
  bool repeated = said_already(r);
  find_lead(r);
  if (r.lead != Lead::none && mean(r)) return;
  if (repeated) return;
  if (reason_behind(behind) && (by_formula(behind) || difference(behind) || any_two(behind))) return;
  if (things_per_time(r)) return;
  if (r.lead == Lead::none && named_right_before(r)) {
    if (!out_of(r) && !quotient_in_unit(r)) by_formula(r);
    return;
  }
  if (r.lead == Lead::none) {
    if (!quotient_in_unit(r)) next_step(r);
    return;
  }
  name(r);
  if (percent_of(r) || out_of(r) || difference_said(r) || bare_rate(r)) return;
  if (plus_minus(r) || sum_or_range(r) || rate(r) || half_range(r) || by_formula(r) || each(r) || difference(r) || proportion(r) || any_two(r) ||
      in_proportion(r) || quotient_in_unit(r) || next_step(r))
    return;
  missing_value(r);
}

// "divided by 4", "the mean for 10 is ...": a number that is worked with.
bool Prose::is_number_of_things(std::size_t i) const {
  std::string_view before = i > 0 ? tokens_.word(i - 1) : std::string_view{};
  std::string_view earlier = i > 1 ? tokens_.word(i - 2) : std::string_view{};
  if (before == "by" && (earlier.starts_with("divid") || earlier.starts_with("multipl") || earlier.starts_with("shar"))) return true;
  std::string_view verb = tokens_.word(i + 1);
  bool named = before == "for" || before == "of" || before == "all";
  return named && (verb == "is" || verb == "was" || verb == "are" || verb == "were");
}

// Not the beginning of an expression, of a range or of a row of numbers.
bool Prose::can_be_result(std::size_t i) const {
  TokenKind next = tokens_.kind(i + 1);
  if (next >= TokenKind::plus && next <= TokenKind::cubed) return false;
  if (next == TokenKind::pi || (next == TokenKind::word && tokens_.all[i + 1].glued)) return false;
  bool range = tokens_.word(i + 1) == "to" && tokens_.is(i + 2, TokenKind::number);
  bool row = i >= 2 && tokens_.is(i - 1, TokenKind::equals) && tokens_.is(i - 2, TokenKind::number) &&
             same_kind(tokens_.number(i - 2).unit, tokens_.number(i).unit) && !is_last_of_several(i - 2);
  return !range && !row;
}

// "of 4.1, 4.3, 4.2 = 4.2", "21 to 34 = 13": the number before the sign ends a list.
bool Prose::is_last_of_several(std::size_t i) const {
  if (i < 2) return false;
  std::string_view word = tokens_.word(i - 1);
  bool joined = tokens_.is(i - 1, TokenKind::comma) || word == "to" || word == "and" || word == "of";
  return joined && (tokens_.is(i - 2, TokenKind::number) || tokens_.is(i - 3, TokenKind::number));
}

// A result that is only named again.
bool Prose::said_already(const Result& r) const {
  if (r.token > 0 && tokens_.word(r.token - 1) == "\u00B1") return false;
  for (std::size_t i = r.fact; i > 0 && r.fact - i < 24; --i) {
    const Fact& fact = facts_[i - 1];
    if (fact.leaf.value != r.stated.decimal.value) continue;
    if (std::binary_search(results_.begin(), results_.end(), fact.leaf.source.begin) || fact.leaf.source.begin == last_result_) return true;
  }
  return false;
}

bool Prose::says(const Result& r, std::string_view quantity) const {
  return std::any_of(r.named.quantities.begin(), r.named.quantities.end(), [&](QuantityId id) { return book_.quantity(id).name == quantity; });
}

void Prose::report(const Result& r, std::uint32_t begin, Judgement judgement) {
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

// Whether `e` gives the stated number, in its unit or, where units are not written, as the numbers stand.
bool Prose::fits(const Expression& e, const Stated& stated) const {
  Value si = evaluate(e, Scaling::si);
  if (si.state != State::ok || si.clash) return false;
  if (stated.unit && si.unknown == 0 && si.dimension != stated.unit->dimension && !stated.unit->dimension.none()) return false;
  if (is_rounded(si.number / scale(stated), si.rough, stated.decimal)) return true;
  bool bare = !stated.unit || si.unknown > 0;
  Value written = evaluate(e, Scaling::as_written);
  return bare && is_rounded(written.number, written.rough, stated.decimal);
}

Judgement Prose::right(const Expression& e, const Result& r) const {
  Judgement out;
  out.verdict = Verdict::right;
  Value si = evaluate(e, Scaling::si);
  if (!r.stated.unit && si.unknown == 0 && !si.dimension.none()) out.remarks.push_back(Remark::unit_missing);
  return out;
}

Judgement Prose::wrong(const Expression& e, const Stated& stated, std::vector<Slip> slips) const {
  Judgement out;
  out.verdict = Verdict::wrong;
  out.slips = slips.empty() ? std::vector<Slip>{Slip::arithmetic} : std::move(slips);
  Value v = evaluate(e, stated.unit ? Scaling::si : Scaling::as_written);
  out.correct = sensible(v.number / scale(stated), e, &stated.decimal, stated.unit ? stated.unit->symbol : "");
  return out;
}

Leaf Prose::with_unit(Leaf leaf, const std::optional<CompoundUnit>& unit) {
  if (!leaf.unit) leaf.unit = unit;
  return leaf;
}

bool Prose::word_before(const Result& r, std::string_view a, std::string_view b, std::size_t reach) const {
  for (std::size_t i = r.token; i > 0 && r.token - i < reach + 30; --i) {
    if (tokens_.is(i - 1, TokenKind::stop) && r.token - i >= reach) return false;
    std::string_view word = tokens_.word(i - 1);
    if ((word == a || word == b) && r.token - i < reach + 20) return true;
  }
  return false;
}

// The numbers before the result that it may be worked out from, nearest first.
std::vector<std::size_t> Prose::nearest(const Result& r, std::size_t most, bool inside) const {
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

void find_in_prose(const Tokens& tokens, const FormulaBook& book, const std::vector<Fact>& facts, const Judge& judge, const std::vector<Span>& taken,
                   std::vector<Calculation>& out) {
  Prose(tokens, book, facts, judge, taken, out).run();
}

}  // namespace retort::calc
