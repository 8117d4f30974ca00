// What says that a number was worked out, and what its name is.
#include <array>

#include "calc/prose.h"
#include "calc/prose_finder.h"

namespace retort::calc {
namespace {

constexpr std::string_view kStrong[] = {"so",     "therefore", "thus",  "gives",      "gave",   "giving", "makes", "made",    "comes",      "came",
                                        "works",  "worked",    "got",   "get",        "answer", "thats",  "means", "hence",   "calculated", "meaning",
                                        "making", "equals",    "found", "determined", "which",  "should", "doing", "becomes", "became"};
constexpr std::string_view kWeak[] = {"is",    "was",  "are",      "were",     "mean",  "average",   "change",  "difference", "be",
                                      "which", "lost", "gained",   "its",      "total", "\u00B1",    "rose",    "fell",       "rise",
                                      "drop",  "fall", "increase", "decrease", "used",  "averaging", "averages"};

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

// By the name before the statement's first sign of equality, or before the number.
void Prose::name(Result& r) const {
  std::size_t at = r.token;
  if (tokens_.is(at - 1, TokenKind::equals)) at = first_sign_from(tokens_, at - 1);
  if (std::size_t verb = verb_before_brackets(r)) at = verb;
  NameFound found = find_name(tokens_, book_, at, 14);
  r.named.quantities = found.quantities;
  r.named.symbol = found.symbol;
  r.close_name = found.end + 5 >= at;
  r.formula = at + 1 < r.token;
}

// "average speed is total distance (4 m) / total time (1.9 s) = ...": the verb of it; 0 if it is not so.
std::size_t Prose::verb_before_brackets(const Result& r) const {
  if (r.token < 4 || !tokens_.is(r.token - 1, TokenKind::equals) || !tokens_.is(r.token - 2, TokenKind::close)) return 0;
  bool operation = false;
  for (std::size_t i = r.token - 2; i > 1 && r.token - i < 22; --i) {
    bool sign = tokens_.is(i - 1, TokenKind::divide) || tokens_.is(i - 1, TokenKind::times);
    operation = operation || (sign && tokens_.is(i - 2, TokenKind::close) && tokens_.is(i, TokenKind::word));
    bool verb = tokens_.word(i - 1) == "is" || tokens_.is(i - 1, TokenKind::equals);
    if (verb && operation) return i - 1;
    if (tokens_.is(i - 1, TokenKind::stop)) return 0;
  }
  return 0;
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
    if (r.lead == Lead::none && weak_word(word) && !((word == "mean" || word == "average") && tokens_.word(i) == "of" && !gives_mean(i - 1))) {
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

}  // namespace retort::calc
