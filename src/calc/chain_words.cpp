// Results that words lead to, and the same value in another unit.
#include "calc/chain_finder.h"

namespace retort::calc {

// "3.2 cm (0.032 m)"
bool ChainFinder::converted_in_brackets(Chain& chain) {
  std::size_t i = chain.end_token;
  if (!tokens_.is(i, TokenKind::open)) return false;
  while (tokens_.is(i + 1, TokenKind::equals) || (tokens_.is(i + 1, TokenKind::word) && is_filler_word(tokens_.word(i + 1)))) ++i;
  if (!tokens_.is(i + 1, TokenKind::number) || !tokens_.is(i + 2, TokenKind::close)) return false;
  const Stated& last = chain.stated.back();
  const Number& inside = tokens_.number(i + 1);
  if (!last.unit || !inside.unit || inside.unit->dimension != last.unit->dimension || inside.unit->scale == last.unit->scale) return false;
  Expression e = chain.parts.back();
  if (!conversion_fits(e, stated_at(i + 1, i + 2))) return false;
  std::optional<Parsed> parsed = parse(tokens_, i + 1);
  chain.parts.push_back(std::move(parsed->expression));
  chain.stated.push_back(stated_at(i + 1, i + 2));
  chain.end_token = i + 3;
  return true;
}

bool ChainFinder::conversion_fits(const Expression& from, const Stated& to) {
  Value v = evaluate(from, Scaling::si);
  return v.state == State::ok && to.unit && is_rounded(v.number / exact(to.unit->scale), v.rough, to.decimal);
}

// The result in words: "and got 40", "which comes to 0.54 m/s", "so the time for one is 0.71 s".
bool ChainFinder::worded_result(Chain& chain) {
  const Expression& e = chain.parts.back();
  bool conversion = e.single();
  if (conversion) return as_percentage(chain) || with_unit_again(chain) || worded_conversion(chain);
  bool linked = false;
  bool stated_so = false;  // by more than "so"
  bool filler = true;
  bool stopped = false;
  std::size_t i = chain.end_token;
  for (std::size_t n = 0; n < kReach && i < tokens_.size(); ++n, ++i) {
    TokenKind kind = tokens_.kind(i);
    if (kind == TokenKind::number) {
      if (tokens_.all[i].in_words && tokens_.number(i).decimal.value <= 1) continue;
      break;
    }
    if (kind == TokenKind::word) {
      std::string_view word = tokens_.word(i);
      linked = linked || is_linking_word(word);
      stated_so = stated_so || (is_linking_word(word) && word != "so");
      filler = filler && is_filler_word(word);
      if (is_reason_word(word) && word != "as" && word != "by" && word != "did") return false;
    } else if (kind == TokenKind::stop || kind == TokenKind::line) {
      if (stopped || !continues(i + 1)) return false;
      stopped = true;
    } else if (kind == TokenKind::equals) {
      if (!chain.unknown.empty() && tokens_.word(i - 1) == chain.unknown) return false;  // "sin c = 1/1.49 so c = 42°"
      linked = true;
      stated_so = true;
    } else if (kind == TokenKind::minus || (kind == TokenKind::plus && tokens_.is(i + 1, TokenKind::minus))) {
      if (!tokens_.is(i + 1, TokenKind::number) || !tokens_.all[i + 1].glued) return false;
    } else if (kind != TokenKind::comma && kind != TokenKind::colon && kind != TokenKind::close && kind != TokenKind::unit) {
      return false;
    } else if ((kind == TokenKind::comma || kind == TokenKind::colon) && i == chain.end_token && tokens_.is(i + 1, TokenKind::number) &&
               !e.range_like) {
      linked = true;  // "2293 shared by 6, 382 watts"
      filler = false;
    }
  }
  if (!linked || !tokens_.is(i, TokenKind::number) || e.range_like) return false;
  if (tokens_.is(i - 1, TokenKind::minus) && tokens_.all[i].glued && !tokens_.all[i - 1].glued) --i;  // "and got -0.99"
  std::optional<Parsed> parsed = parse(tokens_, i);
  if (!parsed || !parsed->expression.single()) return false;
  bool symbol = false;
  std::vector<QuantityId> between = named_before(tokens_, book_, i, symbol, i - chain.end_token);
  if (!between.empty()) chain.named = {between, true, symbol, {}, {}, false, {}};
  chain.loose = chain.loose || (!filler && between.empty()) || stopped || !stated_so;
  chain.parts.push_back(std::move(parsed->expression));
  chain.stated.push_back(stated_at(i, parsed->end));
  chain.end_token = parsed->end;
  return true;
}

bool ChainFinder::continues(std::size_t i) const {
  while (tokens_.is(i, TokenKind::line)) ++i;
  std::string_view word = tokens_.word(i);
  return word == "so" || word == "this" || word == "that" || word == "it" || word == "which" || word == "i" || word == "answer" || word == "the" ||
         word == "thats" || word == "and" || word == "then" || tokens_.is(i, TokenKind::equals);
}

// "350 g into 0.35 kg", "10 minutes is 600 s", "0.2 m or 20 cm"
bool ChainFinder::worded_conversion(Chain& chain) {
  const Stated from = chain.stated.back();
  if (!from.unit || from.decimal.figures == 0) return false;
  std::size_t i = chain.end_token;
  bool converting = false;
  bool linked = false;
  for (std::size_t n = 0; n < 6 && i < tokens_.size(); ++n, ++i) {
    TokenKind kind = tokens_.kind(i);
    if (kind == TokenKind::number) break;
    std::string_view word = tokens_.word(i);
    if (kind == TokenKind::word && (is_filler_word(word) || is_converting_word(word) || read_unit(word))) {
      converting = converting || is_converting_word(word);
      linked = linked || is_linking_word(word);
      continue;
    }
    if (kind == TokenKind::comma) continue;
    return false;
  }
  if (!tokens_.is(i, TokenKind::number) || i == chain.end_token) return false;
  Stated to = stated_at(i, i + 1);
  if (linked && is_only_rounded(from, to)) {
    Expression rounded_value;
    rounded_value.root = rounded_value.add_leaf({to.decimal.value, to.decimal.figures, to.decimal.last_place, to.unit, false, to.source});
    chain.parts.push_back(std::move(rounded_value));
    chain.stated.push_back(to);
    chain.end_token = i + 1;
    return true;
  }
  if (!to.unit || to.unit->dimension != from.unit->dimension || to.unit->scale == from.unit->scale || to.unit->dimension.none()) return false;
  std::optional<Parsed> parsed = parse(tokens_, i);
  if (!parsed || !parsed->expression.single()) return false;
  if (chain.parts.size() > 1) return false;  // what was worked out stands by itself, and its conversion too
  bool fits = conversion_fits(chain.parts.back(), to);
  std::string_view verb = i == chain.end_token + 1 ? tokens_.word(chain.end_token) : std::string_view{};
  bool said = converts_before(chain.first_token) || converting || verb == "is";
  if (!fits) {
    Value v = evaluate(chain.parts.back(), Scaling::si);
    bool off = power_apart(v.number / exact(to.unit->scale), v.rough, to.decimal) != 0;
    if (!(said && off)) return false;
  }
  chain.parts.push_back(std::move(parsed->expression));
  chain.stated.push_back(to);
  chain.end_token = parsed->end;
  return true;
}

// "= 0.02 so the spring constant is 0.02 N/m": the same number again, now with its unit
bool ChainFinder::with_unit_again(Chain& chain) const {
  const Stated last = chain.stated.back();
  if (last.unit || chain.parts.size() < 2) return false;
  std::size_t i = chain.end_token;
  for (std::size_t n = 0; n < 9 && tokens_.is(i, TokenKind::word); ++n) ++i;
  if (tokens_.is(i, TokenKind::equals)) ++i;
  if (i == chain.end_token || !tokens_.is(i, TokenKind::number)) return false;
  Stated again = stated_at(i, i + 1);
  if (!again.unit || again.decimal.value != last.decimal.value || again.unit->symbol == "%") return false;
  std::optional<Parsed> parsed = parse(tokens_, i);
  if (!parsed || !parsed->expression.single()) return false;
  NameFound found = find_name(tokens_, book_, i, i - chain.end_token);
  if (!found.quantities.empty()) chain.named = {found.quantities, true, found.symbol, {}, {}, false, {}};
  chain.parts.push_back(std::move(parsed->expression));
  chain.stated.push_back(again);
  chain.end_token = parsed->end;
  return true;
}

// "0.0306 which is 3.1 %", "0.75 or 75 %"
bool ChainFinder::as_percentage(Chain& chain) {
  if (chain.stated.back().unit || chain.parts.size() < 2) return false;
  std::size_t i = chain.end_token;
  for (std::size_t n = 0; n < 5 && tokens_.is(i, TokenKind::word) && (is_filler_word(tokens_.word(i)) || is_converting_word(tokens_.word(i))); ++n)
    ++i;
  if (i == chain.end_token || !tokens_.is(i, TokenKind::number)) return false;
  Stated to = stated_at(i, i + 1);
  if (!to.unit || to.unit->symbol != "%") return false;
  if (!is_rounded(chain.stated.back().decimal.value * 100, false, to.decimal)) return false;
  std::optional<Parsed> parsed = parse(tokens_, i);
  if (!parsed || !parsed->expression.single()) return false;
  chain.parts.push_back(std::move(parsed->expression));
  chain.stated.push_back(to);
  chain.end_token = parsed->end;
  return true;
}

// "59.8 W which is about 60 W"
bool ChainFinder::is_only_rounded(const Stated& from, const Stated& to) {
  bool same_unit = to.unit && from.unit && to.unit->scale == from.unit->scale && to.unit->dimension == from.unit->dimension;
  return same_unit && to.decimal.figures < from.decimal.figures && to.decimal.value != from.decimal.value &&
         is_rounded(from.decimal.value, false, to.decimal);
}

bool ChainFinder::converts_before(std::size_t at) const {
  for (std::size_t n = 1; n <= 4 && n <= at; ++n) {
    std::string_view word = tokens_.word(at - n);
    if (word.starts_with("chang") || word.starts_with("conver") || word.starts_with("turn")) return true;
  }
  return false;
}

}  // namespace retort::calc
