#include "calc/prose.h"

#include <array>

#include "calc/prose_finder.h"

namespace retort::calc {
namespace {

constexpr std::string_view kStrong[] = {"so",     "therefore", "thus",  "gives",      "gave",   "giving", "makes", "made",    "comes",      "came",
                                        "works",  "worked",    "got",   "get",        "answer", "thats",  "means", "hence",   "calculated", "meaning",
                                        "making", "equals",    "found", "determined", "which",  "should", "doing", "becomes", "became"};
constexpr std::string_view kWeak[] = {"is",   "was",   "are",  "were",   "mean",     "average",  "change", "difference",
                                      "be",   "which", "lost", "gained", "its",      "total",    "\u00B1", "rose",
                                      "fell", "rise",  "drop", "fall",   "increase", "decrease", "used"};

// Which words may be among them, by first letter and length: most are told apart by it.
struct MayLead {
  std::array<std::uint16_t, 256> lengths{};
  constexpr MayLead() {
    for (std::string_view word : kStrong) add(word);
    for (std::string_view word : kWeak) add(word);
  }
  constexpr void add(std::string_view word) {
    auto& of = lengths[static_cast<unsigned char>(word[0])];
    of = static_cast<std::uint16_t>(of | 1U << word.size());
  }
  [[nodiscard]] constexpr bool may(std::string_view word) const {
    return !word.empty() && word.size() < 16 && (lengths[static_cast<unsigned char>(word[0])] >> word.size() & 1U) != 0;
  }
};
constexpr MayLead kMayLead;

bool strong_word(std::string_view word) {
  return kMayLead.may(word) && std::find(std::begin(kStrong), std::end(kStrong), word) != std::end(kStrong);
}
bool weak_word(std::string_view word) {
  return kMayLead.may(word) && std::find(std::begin(kWeak), std::end(kWeak), word) != std::end(kWeak);
}

}  // namespace

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
  if (plus_minus(r) || sum_or_range(r) || rate(r) || half_range(r) || by_formula(r) || difference(r) || proportion(r) || any_two(r) || each(r) ||
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

// By the name before the statement's first sign of equality, or before the number.
void Prose::name(Result& r) const {
  std::size_t at = r.token;
  if (tokens_.is(at - 1, TokenKind::equals)) at = first_sign_from(tokens_, at - 1);
  NameFound found = find_name(tokens_, book_, at, 14);
  r.named.quantities = found.quantities;
  r.named.symbol = found.symbol;
  r.close_name = found.end + 5 >= at;
  r.formula = at + 1 < r.token;
}

// "0.2 Hz is the frequency, because 10 waves went past in 2 s": the values stand behind.
bool Prose::reason_behind(Result& r) const {
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

// "rate 0.8 cm3/s": a name right before a number in a unit made of several.
bool Prose::names_unit(const Result& r) const {
  if (r.stated.unit->symbol.find('/') == std::string::npos) return false;
  NameFound found = find_name(tokens_, book_, r.token, 3);
  return found.end == r.token && std::any_of(found.quantities.begin(), found.quantities.end(),
                                             [&](QuantityId id) { return book_.quantity(id).unit.dimension == r.stated.unit->dimension; });
}

void Prose::find_lead(Result& r) const {
  for (std::size_t i = r.token; i > 0 && r.token - i < kLeadReach; --i) {
    TokenKind kind = tokens_.kind(i - 1);
    if (kind == TokenKind::number && !tokens_.all[i - 1].in_words) return;
    if (kind == TokenKind::stop || kind == TokenKind::line) return;
    bool sign = kind == TokenKind::equals;
    bool of_formula = i > 1 && (tokens_.is(i - 2, TokenKind::divide) || tokens_.is(i - 2, TokenKind::times) || tokens_.is(i - 2, TokenKind::equals));
    if (kind >= TokenKind::root && kind <= TokenKind::arctangent && !of_formula) {
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
    if (i == r.token && r.stated.unit && names_unit(r)) {
      r.lead = Lead::weak;
      r.lead_token = i - 1;
    }
    if (r.lead == Lead::none && weak_word(word) && !((word == "mean" || word == "average") && tokens_.word(i) == "of")) {
      r.lead = Lead::weak;
      r.lead_token = i - 1;
    }
  }
}

// The name stands right before the number, behind a comma or at the beginning of a sentence, and no more than that.
bool Prose::named_right_before(Result& r) const {
  NameFound found = find_name(tokens_, book_, r.token, 4);
  if (found.quantities.empty() || found.end != r.token) return false;
  std::size_t begin = r.token;
  while (begin > 0 && r.token - begin < 4 && tokens_.is(begin - 1, TokenKind::word)) --begin;
  bool apart =
      begin > 0 && (tokens_.is(begin - 1, TokenKind::comma) || tokens_.is(begin - 1, TokenKind::stop) || tokens_.is(begin - 1, TokenKind::line));
  TokenKind next = tokens_.kind(r.token + 1);
  bool last = next == TokenKind::stop || next == TokenKind::line || r.token + 1 >= tokens_.size();
  if (!apart || !last) return false;
  r.named.quantities = found.quantities;
  r.named.symbol = found.symbol;
  r.close_name = true;
  r.lead = Lead::weak;
  r.lead_token = r.token - 1;
  return true;
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
    bool quotient = fact.leaf.unit && fact.leaf.unit->symbol.find('/') != std::string::npos;  // "density 2.4 g/cm³"
    return quotient || (fact.token > 0 && tokens.is(fact.token - 1, TokenKind::open));
  });
}

void find_in_prose(const Tokens& tokens, const FormulaBook& book, const std::vector<Fact>& facts, const Judge& judge, const std::vector<Span>& taken,
                   std::vector<Calculation>& out) {
  Prose(tokens, book, facts, judge, taken, out).run();
}

}  // namespace retort::calc
