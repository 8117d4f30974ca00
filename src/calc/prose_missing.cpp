// Results that were worked out from something that does not stand in the text.
#include "calc/prose_finder.h"

namespace retort::calc {

bool Prose::says_worked_out(const Result& r, bool& formula) const {
  bool said = false;
  for (std::size_t i = r.token; i > 0 && r.token - i < 36; --i) {
    if (tokens_.is(i - 1, TokenKind::stop) || tokens_.is(i - 1, TokenKind::line) || is_taken(tokens_.all[i - 1].source)) break;
    std::string_view word = tokens_.word(i - 1);
    said = said || word == "divided" || word == "calculated" || word == "multiplied" || word == "timesed" ||
           (word == "worked" && tokens_.word(i) == "out") || (word == "work" && tokens_.word(i) == "out");
    formula = formula || (tokens_.is(i - 1, TokenKind::equals) && tokens_.is(i, TokenKind::word) && i + 1 < r.token && i > 1 &&
                          tokens_.is(i - 2, TokenKind::word));
    formula = formula || (tokens_.is(i - 1, TokenKind::divide) && (tokens_.is(i, TokenKind::word) || tokens_.is(i - 2, TokenKind::word)));
  }
  return said || formula;
}

// The formula for what is stated was named before, and not all of its values are there.
bool Prose::formula_lacks_value(const Result& r) const {
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
bool Prose::unknown_factor(const Result& r) const {
  if (r.token < 4 || !tokens_.is(r.token - 1, TokenKind::equals)) return false;
  bool number = false;
  bool operation = false;
  bool symbol = false;
  for (std::size_t i = r.token - 1; i > 0; --i) {
    TokenKind kind = tokens_.kind(i - 1);
    if (kind == TokenKind::equals) break;
    if (kind == TokenKind::number)
      number = true;
    else if (kind == TokenKind::times || kind == TokenKind::divide)
      operation = true;
    else if (kind == TokenKind::word && is_name(i - 1))
      symbol = true;
    else if (kind != TokenKind::open && kind != TokenKind::close && kind != TokenKind::plus && kind != TokenKind::minus)
      return false;
  }
  return number && operation && symbol;
}

bool Prose::is_name(std::size_t i) const {
  std::vector<QuantityId> ids;
  return tokens_.all[i].source.size() <= 6 || book_.phrase_at(tokens_, i, ids) > 0;
}

// Two values of the formula for what is stated are there, and one is not.
bool Prose::all_but_one(const Result& r) const {
  if (r.lead != Lead::strong || !r.worded || !r.close_name || tokens_.word(r.lead_token) == "which") return false;
  std::vector<std::size_t> inputs = nearest(r, kMostInputs);
  for (QuantityId id : r.named.quantities) {
    for (const Formula* formula : book_.for_text(id, tokens_)) {
      std::size_t variables = 0;
      std::size_t there = 0;
      for (QuantityId variable : formula->variables) {
        if (variable == kNoQuantity) continue;
        ++variables;
        there += std::any_of(inputs.begin(), inputs.end(), [&](std::size_t i) { return fit(book_, variable, facts_[i].leaf, facts_[i].names) >= 1; })
                     ? 1U
                     : 0U;
      }
      if (variables >= 3 && there + 1 == variables) return true;
    }
  }
  return false;
}

bool Prose::word_near(const Result& r, std::string_view a, std::string_view b) const {
  for (std::size_t i = r.token > 14 ? r.token - 14 : 0; i < r.token + 14; ++i) {
    if (tokens_.word(i) == a || tokens_.word(i) == b) return true;
  }
  return false;
}

// "came out as 2400 Pa using force over area", "determined with P = I²R and found to be 3.2 W"
bool Prose::formula_around(const Result& r) const {
  std::string_view lead = tokens_.word(r.lead_token);
  bool outcome = lead == "came" || lead == "found" || lead == "determined" || lead == "worked" || lead == "calculated" || lead == "comes";
  bool has_formula = std::any_of(r.named.quantities.begin(), r.named.quantities.end(), [&](QuantityId id) { return !book_.giving(id).empty(); });
  for (std::size_t id = 0; r.named.quantities.empty() && r.stated.unit && id < book_.quantities().size(); ++id) {
    has_formula = has_formula || (book_.quantities()[id].unit.dimension == r.stated.unit->dimension && !r.stated.unit->dimension.none() &&
                                  !book_.giving(static_cast<QuantityId>(id)).empty());
  }
  bool using_behind = tokens_.word(r.token + 1) == "using" && !tokens_.is(r.token + 2, TokenKind::number);  // "was 1.5 m/s² using F = ma"
  for (std::size_t i = r.token > 12 ? r.token - 12 : 1; i + 1 < r.token && !tokens_.is(r.token - 1, TokenKind::number); ++i) {
    bool said =
        tokens_.word(i) == "using" && (tokens_.word(i + 2) == "equation" || tokens_.word(i + 2) == "formula" || tokens_.word(i + 1) == "equation");
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

void Prose::missing_value(const Result& r) {
  std::string_view given = r.token > 2 ? tokens_.word(r.token - 3) : std::string_view{};
  if (r.defined && (given == "where" || given == "with" || given == "if" || given == "when")) return;  // "1/T where T = 0.02"
  bool average = says(r, "mean") && r.lead_token > 0 &&
                 (word_near(r, "added", "divided") || word_near(r, "measured", "dividing") || word_before(r, "results", "readings", 12) ||
                  word_before(r, "repeats", "times", 12));
  bool formula = false;
  std::string_view lead = tokens_.word(r.lead_token);
  bool outcome =
      lead == "got" || lead == "gave" || lead == "gives" || lead == "came" || lead == "comes" || lead == "answer" || lead == "get" || lead == "made";
  bool derived = r.stated.unit || !r.named.quantities.empty() || says_worked_out(r, formula);
  bool worked = r.lead == Lead::strong && outcome && derived && says_worked_out(r, formula);
  if (!average && !worked && !unknown_factor(r) && !all_but_one(r) && !formula_lacks_value(r) && !formula_around(r)) return;
  Judgement unclear;
  unclear.doubt = Doubt::value_missing;
  report(r, tokens_.all[r.lead_token].source.begin, std::move(unclear));
}

}  // namespace retort::calc
