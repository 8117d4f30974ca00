#include "calc/chains.h"

#include <algorithm>

#include "calc/links.h"
#include "calc/naming.h"
#include "calc/readings.h"
#include "calc/spoken_formula.h"

namespace retort::calc {
namespace {

constexpr std::size_t kReach = 12;      // words between an expression and its result
constexpr std::size_t kMostParts = 12;

bool starts_operand(TokenKind kind) {
  return kind == TokenKind::number || kind == TokenKind::pi || kind == TokenKind::open || kind == TokenKind::minus || (kind >= TokenKind::root && kind <= TokenKind::arctangent);
}

class Finder {
 public:
  Finder(const Tokens& tokens, const FormulaBook& book, const std::vector<Fact>& facts) : tokens_(tokens), book_(book), facts_(facts) {}

  std::vector<Chain> run() {
    while (at_ < tokens_.size()) {
      std::size_t begin = at_;
      if (!chain_at(begin)) at_ = std::max(at_, begin + 1);
    }
    return std::move(chains_);
  }

 private:
  bool chain_at(std::size_t begin) {
    TokenKind kind = tokens_.kind(begin);
    if (kind == TokenKind::word && tokens_.word(begin).size() < 4) return false;
    if (kind == TokenKind::number && stands_alone(begin)) return false;
    std::optional<Parsed> parsed;
    if (stacked(begin) || taken_from(begin)) return true;
    if (starts_operand(kind)) {
      // the end of an expression in symbols: "useful ÷ total × 100"
      TokenKind before = begin > 0 ? tokens_.kind(begin - 1) : TokenKind::stop;
      if (before == TokenKind::times || before == TokenKind::divide) return false;
      if (kind == TokenKind::minus && begin > 0 && !starts_sign(begin)) return false;
      parsed = parse(tokens_, begin);
    } else if (kind == TokenKind::divide || kind == TokenKind::times) {
      return operator_first(begin);
    }
    if (!parsed) return false;
    std::size_t end = parsed->end;
    Chain chain;
    if (build(begin, std::move(*parsed), chain)) {
      at_ = chain.end_token;
      chains_.push_back(chain);
      undo(chain);
      return true;
    }
    if (!chain.unknown.empty() && !chain.parts[0].single() && at_ <= begin) {  // "v² = 2 × 0.9 × 1.25", "v = 2.25"
      std::size_t before = chains_.size();
      undo(chain);
      if (chains_.size() > before) return true;
    }
    at_ = std::max(at_ + 1, end);
    return true;
  }
  bool build(std::size_t begin, Parsed parsed, Chain& chain) {
    chain.first_token = begin;
    chain.parts.push_back(std::move(parsed.expression));
    chain.stated.push_back(stated_at(begin, parsed.end));
    chain.end_token = parsed.end;
    if (begin > 1 && tokens_.is(begin - 1, TokenKind::equals)) transform(chain, first_sign_from(tokens_, begin - 1));
    follow(chain);
    bool whole = finish(chain);
    if (whole || !chain.parts[0].single()) complete_name(chain);
    return whole;
  }
  // By its own words, but a name that stands right before the result comes first.
  void complete_name(Chain& chain) const {
    Named between = std::move(chain.named);
    chain.named = {};
    name(chain);
    if (chain.backwards || !between.quantities.empty()) {
      chain.named.quantities = std::move(between.quantities);
      chain.named.tight = between.tight;
      chain.named.symbol = between.symbol;
    }
    name_behind(chain);
  }

  // "it took 25.2 s. I divided by 10", "186 and then ÷ 3": what the operator acts on stands before. Of the
  // numbers there, the one is meant that gives the result; the nearest with a unit, if none does.
  bool operator_first(std::size_t begin) {
    bool worded = tokens_.all[begin].in_words;
    bool in_formula = begin >= 2 && tokens_.kind(begin - 2) >= TokenKind::plus && tokens_.kind(begin - 2) <= TokenKind::power;
    if (begin == 0 || in_formula || (!worded && !tokens_.is(begin - 1, TokenKind::comma) && (!tokens_.is(begin - 1, TokenKind::word) || !is_filler_word(tokens_.word(begin - 1))))) return false;
    std::vector<Leaf> operands;
    if (const Fact* usual = quantity_before(begin)) operands.push_back(usual->leaf);
    for (std::size_t i = facts_before(begin); i-- > 0 && operands.size() < 5 && begin - facts_[i].token <= 16;) operands.push_back(facts_[i].leaf);
    std::optional<Chain> chosen;
    if (std::optional<Parsed> summed = sum_of_list(begin)) {
      Chain chain;
      if (build(begin, std::move(*summed), chain)) chosen = std::move(chain);
    }
    for (const Leaf& operand : operands) {
      if (chosen && gives_result(*chosen)) break;
      std::optional<Parsed> parsed = parse_rest(tokens_, operand, begin);
      if (!parsed || parsed->end == begin) return false;
      Chain chain;
      if (!build(begin, std::move(*parsed), chain)) continue;
      if (!chosen || gives_result(chain)) chosen = std::move(chain);
    }
    if (!chosen) return false;
    at_ = chosen->end_token;
    chains_.push_back(std::move(*chosen));
    return true;
  }
  static bool gives_result(const Chain& chain) {
    Value v = evaluate(chain.parts[0], Scaling::as_written);
    return v.state == State::ok && is_rounded(v.number, v.rough, chain.stated.back().decimal);
  }
  // "4, 7, 0, 9 and 5. I added them up and divided by 5"
  std::optional<Parsed> sum_of_list(std::size_t begin) const {
    bool added = false;
    for (std::size_t n = 1; n <= 7 && n <= begin; ++n) added = added || tokens_.word(begin - n).starts_with("add") || tokens_.word(begin - n) == "total";
    if (!added) return std::nullopt;
    std::size_t next = facts_before(begin);
    if (next == facts_.size()) return std::nullopt;
    std::vector<std::size_t> list = readings_before(tokens_, facts_, next);
    if (list.size() < 2 || begin - facts_[list.back()].token > 14) return std::nullopt;
    std::optional<Parsed> parsed = parse_rest(tokens_, facts_[list[0]].leaf, begin);
    if (!parsed || parsed->end == begin) return std::nullopt;
    // the sum takes the place of its first reading
    Expression& e = parsed->expression;
    std::int16_t sum = e.add_node(Op::leaf, -1, -1, 0);
    for (std::size_t i = 1; i < list.size(); ++i) {
      std::int16_t leaf = e.add_leaf(facts_[list[i]].leaf);
      sum = e.add_node(Op::add, sum, leaf);
    }
    for (Node& node : e.nodes) {
      if (node.op != Op::add && node.left >= 0 && e.node(node.left).op == Op::leaf && e.node(node.left).index == 0) node.left = sum;
    }
    return parsed;
  }
  // A number that nothing is done with: most numbers in prose.
  bool stands_alone(std::size_t i) const {
    TokenKind next = tokens_.kind(i + 1);
    if (next == TokenKind::word && !tokens_.is(i + 2, TokenKind::equals)) {
      if (!tokens_.number(i).unit) return true;
      for (std::size_t k = i + 2; k < i + 9; ++k) {  // the same in another unit may follow
        if (tokens_.is(k, TokenKind::number)) return !tokens_.number(k).unit || tokens_.number(k).unit->dimension != tokens_.number(i).unit->dimension;
      }
      return true;
    }
    return next == TokenKind::stop || (next == TokenKind::comma && !tokens_.number(i).unit);
  }

  // "took away 18 from 54 and got 36"
  bool taken_from(std::size_t begin) {
    std::string_view verb = tokens_.word(begin);
    if (verb != "took" && verb != "take" && verb != "taking" && verb != "subtracted" && verb != "subtract" && verb != "takeaway" && verb != "minused") return false;
    std::size_t i = begin + 1;
    if (tokens_.word(i) == "away" || tokens_.word(i) == "off") ++i;
    if (!tokens_.is(i, TokenKind::number) || tokens_.word(i + 1) != "from" || !tokens_.is(i + 2, TokenKind::number)) return false;
    std::optional<Parsed> less = parse(tokens_, i);
    std::optional<Parsed> from = parse(tokens_, i + 2);
    if (!less || !from || !less->expression.single() || !from->expression.single()) return false;
    Parsed difference = *from;
    std::int16_t right = difference.expression.add_leaf(less->expression.leaves[0]);
    difference.expression.root = difference.expression.add_node(Op::subtract, from->expression.root, right);
    Chain chain;
    if (!build(begin, std::move(difference), chain)) return false;
    at_ = chain.end_token;
    chains_.push_back(std::move(chain));
    return true;
  }

  // "100 × 30 = p × 20 so p = 150": what is left of the equation is divided by the number beside the unknown.
  bool balanced(Chain& chain) {
    std::size_t i = sign_at(chain.end_token);
    if (i == 0 || chain.parts.size() != 1 || chain.parts[0].single()) return false;
    bool unknown_first = tokens_.is(i, TokenKind::word) && tokens_.is(i + 1, TokenKind::times) && tokens_.is(i + 2, TokenKind::number);
    bool number_first = tokens_.is(i, TokenKind::number) && tokens_.is(i + 1, TokenKind::times) && tokens_.is(i + 2, TokenKind::word);
    if (!unknown_first && !number_first) return false;
    std::string_view unknown = tokens_.word(unknown_first ? i : i + 2);
    std::optional<Parsed> beside = parse(tokens_, unknown_first ? i + 2 : i);
    if (!beside || !beside->expression.single() || unknown.size() > 3) return false;
    for (std::size_t k = i + 3; k < i + 10; ++k) {
      if (tokens_.word(k) != unknown || !tokens_.is(k + 1, TokenKind::equals) || !tokens_.is(k + 2, TokenKind::number)) continue;
      std::optional<Parsed> result = parse(tokens_, k + 2);
      if (!result || !result->expression.single()) return false;
      Expression& e = chain.parts[0];
      std::int16_t by = e.add_leaf(beside->expression.leaves[0]);
      e.root = e.add_node(Op::divide, e.root, by);
      chain.parts.push_back(std::move(result->expression));
      chain.stated.push_back(stated_at(k + 2, result->end));
      chain.end_token = result->end;
      return true;
    }
    return false;
  }

  // A fraction over three lines: "1.1", "---- = 2.62", "0.42".
  bool stacked(std::size_t begin) {
    bool bar = tokens_.is(begin, TokenKind::number) && tokens_.is(begin + 1, TokenKind::line) && tokens_.is(begin + 2, TokenKind::word) && tokens_.word(begin + 2).starts_with("---");
    if (!bar || !tokens_.is(begin + 3, TokenKind::equals)) return false;
    std::size_t i = begin + 4;
    if (!tokens_.is(i, TokenKind::number) || !tokens_.is(i + 1, TokenKind::line) || !tokens_.is(i + 2, TokenKind::number)) return false;
    std::optional<Parsed> top = parse(tokens_, begin);
    std::optional<Parsed> bottom = parse(tokens_, i + 2);
    std::optional<Parsed> result = parse(tokens_, i);
    if (!top || !bottom || !result || !top->expression.single() || !bottom->expression.single()) return false;
    Chain chain;
    chain.first_token = begin;
    Expression fraction = top->expression;
    std::int16_t below = fraction.add_leaf(bottom->expression.leaves[0]);
    fraction.root = fraction.add_node(Op::divide, top->expression.root, below);
    chain.parts = {std::move(fraction), std::move(result->expression)};
    chain.stated = {Stated{}, stated_at(i, i + 1)};
    chain.end_token = bottom->end;
    name(chain);
    chain.span = {tokens_.all[begin].source.begin, tokens_.all[i + 2].source.end};
    at_ = chain.end_token;
    chains_.push_back(std::move(chain));
    return true;
  }
  bool starts_sign(std::size_t i) const {
    TokenKind before = tokens_.kind(i - 1);
    return before == TokenKind::equals || before == TokenKind::open || before == TokenKind::line || before == TokenKind::word || before == TokenKind::comma;
  }

  // "it took 25.2 s. I divided by 10": what the operator acts on.
  const Fact* quantity_before(std::size_t at) const {
    const Fact* found = nullptr;
    for (std::size_t i = facts_before(at) > 20 ? facts_before(at) - 20 : 0; i < facts_before(at); ++i) {
      const Fact& fact = facts_[i];
      if (at - fact.token <= 16 && (fact.leaf.unit || found == nullptr || !found->leaf.unit || at - fact.token <= 3)) found = &fact;
    }
    return found;
  }

  // How many facts stand before token `at`.
  std::size_t facts_before(std::size_t at) const {
    auto found = std::partition_point(facts_.begin(), facts_.end(), [&](const Fact& fact) { return fact.token < at; });
    return static_cast<std::size_t>(found - facts_.begin());
  }

  Stated stated_at(std::size_t begin, std::size_t end) const {
    Stated out;
    std::size_t i = begin;
    if (tokens_.is(i, TokenKind::minus)) ++i;
    if (i + 1 != end || !tokens_.is(i, TokenKind::number)) return out;
    const Number& number = tokens_.number(i);
    out.decimal = number.decimal;
    if (out.decimal.figures == kMostDigits) out.decimal.figures = 0;
    out.unit = number.unit;
    out.source = tokens_.all[i].source;
    out.digits = number.digits;
    if (i > begin && tokens_.all[i].glued) out.digits.begin = tokens_.all[begin].source.begin;
    out.token = i;
    return out;
  }

  // Signs of equality, over a line's end; 0 if there is none.
  std::size_t sign_at(std::size_t i) const {
    std::size_t k = i;
    while (tokens_.is(k, TokenKind::line) && k < i + 3) ++k;
    return tokens_.is(k, TokenKind::equals) ? k + 1 : 0;
  }

  void follow(Chain& chain) {
    if (balanced(chain)) return;
    while (chain.parts.size() < kMostParts) {
      std::size_t i = chain.end_token;
      if (is_unit_words(i)) ++i;
      std::size_t behind = sign_at(i);
      if (behind == 0) behind = same_name_again(chain, i);
      if (behind != 0) {
        if (!take_part(chain, behind)) break;
        continue;
      }
      if (converted_in_brackets(chain)) continue;
      if (!worded_result(chain)) break;
    }
  }
  // "v = 20 × 1.7" and on the next line "v = 34": behind the second sign; 0 if it is not so.
  std::size_t same_name_again(const Chain& chain, std::size_t i) const {
    if (!tokens_.is(i, TokenKind::line) || chain.parts.back().single()) return 0;
    while (tokens_.is(i, TokenKind::line)) ++i;
    std::size_t sign = chain.first_token;
    if (sign < 2 || !tokens_.is(sign - 1, TokenKind::equals) || !tokens_.is(i + 1, TokenKind::equals)) return 0;
    std::string_view before = tokens_.word(sign - 2);
    return !before.empty() && before == tokens_.word(i) ? i + 2 : 0;
  }
  // A unit that is not in the table ("bpm"), between a number and a sign.
  bool is_unit_words(std::size_t i) const {
    return tokens_.is(i, TokenKind::word) && tokens_.all[i].length > 0 && tokens_.all[i].source.size() <= 12 && sign_at(i + 1) != 0 && tokens_.is(i - 1, TokenKind::number) && !tokens_.number(i - 1).unit &&
           book_.by_symbol(tokens_.all[i].source.of(tokens_.source)).empty();
  }

  bool take_part(Chain& chain, std::size_t i) {
    while (tokens_.is(i, TokenKind::line)) ++i;
    for (std::size_t n = 0; n < 3 && tokens_.is(i, TokenKind::word) && is_filler_word(tokens_.word(i)); ++n) ++i;
    if (tokens_.is(i, TokenKind::equals)) ++i;
    if (tokens_.is(i, TokenKind::plus) || tokens_.word(i) == "\u00B1") ++i;  // "= +5", "= ±0.2"
    if (tokens_.is(i, TokenKind::times) && tokens_.is(i + 1, TokenKind::number)) ++i;  // "= x40"
    if (!starts_operand(tokens_.kind(i))) return false;
    std::optional<Parsed> parsed = parse(tokens_, i);
    if (!parsed) return false;
    if (chain.parts.size() == 1) chain.second_token = i;
    chain.parts.push_back(std::move(parsed->expression));
    chain.stated.push_back(stated_at(i, parsed->end));
    chain.end_token = parsed->end;
    return true;
  }

  // "3.2 cm (0.032 m)"
  bool converted_in_brackets(Chain& chain) {
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
  static bool conversion_fits(const Expression& from, const Stated& to) {
    Value v = evaluate(from, Scaling::si);
    return v.state == State::ok && to.unit && is_rounded(v.number / exact(to.unit->scale), v.rough, to.decimal);
  }

  // The result in words: "and got 40", "which comes to 0.54 m/s", "so the time for one is 0.71 s".
  bool worded_result(Chain& chain) {
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
      } else if ((kind == TokenKind::comma || kind == TokenKind::colon) && i == chain.end_token && tokens_.is(i + 1, TokenKind::number) && !e.range_like) {
        linked = true;  // "2293 shared by 6, 382 watts"
        filler = false;
      }
    }
    if (!linked || !tokens_.is(i, TokenKind::number) || e.range_like) return false;
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
  bool continues(std::size_t i) const {
    while (tokens_.is(i, TokenKind::line)) ++i;
    std::string_view word = tokens_.word(i);
    return word == "so" || word == "this" || word == "that" || word == "it" || word == "which" || word == "i" || word == "answer" || word == "the" || word == "thats" || word == "and" || word == "then" || tokens_.is(i, TokenKind::equals);
  }

  // "350 g into 0.35 kg", "10 minutes is 600 s", "0.2 m or 20 cm"
  bool worded_conversion(Chain& chain) {
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
  bool with_unit_again(Chain& chain) const {
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
  bool as_percentage(Chain& chain) {
    if (chain.stated.back().unit || chain.parts.size() < 2) return false;
    std::size_t i = chain.end_token;
    for (std::size_t n = 0; n < 5 && tokens_.is(i, TokenKind::word) && (is_filler_word(tokens_.word(i)) || is_converting_word(tokens_.word(i))); ++n) ++i;
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
  static bool is_only_rounded(const Stated& from, const Stated& to) {
    bool same_unit = to.unit && from.unit && to.unit->scale == from.unit->scale && to.unit->dimension == from.unit->dimension;
    return same_unit && to.decimal.figures < from.decimal.figures && to.decimal.value != from.decimal.value && is_rounded(from.decimal.value, false, to.decimal);
  }
  bool converts_before(std::size_t at) const {
    for (std::size_t n = 1; n <= 4 && n <= at; ++n) {
      std::string_view word = tokens_.word(at - n);
      if (word.starts_with("chang") || word.starts_with("conver") || word.starts_with("turn")) return true;
    }
    return false;
  }

  // What is worked out: the name before the first sign of equality of the line.
  void name(Chain& chain) const {
    std::size_t begin = chain.first_token;
    if (begin == 0) return;
    std::size_t at = begin - 1;
    if (tokens_.is(at, TokenKind::comma) && at > 0) --at;
    while (tokens_.is(at, TokenKind::line) && at > 0 && tokens_.is(at + 1, TokenKind::equals)) --at;
    std::size_t first_sign = tokens_.is(at, TokenKind::equals) ? first_sign_from(tokens_, at) : begin;
    SpokenFormula spoken = spoken_formula(tokens_, book_, begin);
    bool said = spoken.operands.size() > 1 && spoken.begin > 1 && first_sign == begin;
    NameFound found = said ? find_name(tokens_, book_, spoken.begin - 1) : find_name(tokens_, book_, first_sign);
    bool sign = first_sign < begin;
    // without a sign the name must stand right before: "the speed is 8 × 2.5"
    bool verb = tokens_.word(begin - 1) == "is" || tokens_.word(begin - 1) == "was" || tokens_.word(begin - 1) == "be";
    bool close_by = sign || verb || said || found.symbol || found.end + 2 >= begin || led(found.quantities);
    chain.raised = raised_before(first_sign);
    if (close_by && !chain.raised) chain.named.quantities = found.quantities;
    chain.named.symbol = found.symbol;
    chain.named.tight = sign || verb;
    if (chain.named.quantities.empty() && !chain.raised) earlier_formula(chain, begin);
    if (chain.named.quantities.empty() && !chain.raised) nearby(chain, begin);
    chain.named.operands = std::move(spoken.operands);
    if (sign) chain.named.symbols = symbolic_expression(tokens_, book_, begin - 1);
    chain.named.formula = sign && first_sign + 2 < begin;
    transform(chain, first_sign);
    if (!chain.unknown.empty()) chain.named = {};
  }
  // "v² = ...", "1/R = ...", "sin c = ...": what the statement works out is not yet what is asked for.
  void transform(Chain& chain, std::size_t sign) const {
    if (sign < 2 || !tokens_.is(sign, TokenKind::equals)) return;
    TokenKind last = tokens_.kind(sign - 1);
    auto unknown = [&](std::size_t i, Op inverse) {
      chain.unknown = tokens_.word(i);
      chain.inverse = inverse;
    };
    if (last == TokenKind::squared && tokens_.is(sign - 2, TokenKind::word)) return unknown(sign - 2, Op::root);
    bool caret = sign >= 3 && last == TokenKind::number && tokens_.is(sign - 2, TokenKind::power) && tokens_.number(sign - 1).decimal.value == 2;
    if (caret) {
      unknown(sign - 3, Op::root);
      chain.raised = true;
      chain.named.quantities.clear();
      return;
    }
    if (last != TokenKind::word) return;
    TokenKind before = tokens_.kind(sign - 2);
    if (before == TokenKind::sine) return unknown(sign - 1, Op::arcsine);
    if (before == TokenKind::cosine) return unknown(sign - 1, Op::arccosine);
    if (before == TokenKind::tangent) return unknown(sign - 1, Op::arctangent);
    if (before == TokenKind::divide && sign >= 3 && tokens_.is(sign - 3, TokenKind::number) && tokens_.number(sign - 3).decimal.value == 1) return unknown(sign - 1, Op::divide);
    std::string_view word = tokens_.word(sign - 1);
    if (chain.raised && word.size() == 2 && word[1] == '2') {
      chain.unknown = word.substr(0, 1);
      chain.inverse = Op::root;
    }
  }
  // "... = 35.28 so v = 5.94": the second statement as a chain of its own.
  void undo(const Chain& chain) {
    if (chain.unknown.empty()) return;
    std::size_t i = chain.end_token;
    for (std::size_t n = 0; n < 6 && i < tokens_.size(); ++n, ++i) {
      bool statement = tokens_.word(i) == chain.unknown && (tokens_.is(i + 1, TokenKind::equals) || tokens_.word(i + 1) == "is");
      if (statement) break;
      if (tokens_.is(i, TokenKind::number) || tokens_.is(i, TokenKind::equals)) return;
    }
    if (tokens_.word(i) != chain.unknown || tokens_.word(i).empty()) return;
    std::size_t at = i + 2;
    while (at < i + 14 && at < tokens_.size() && !(tokens_.is(at, TokenKind::number) && tokens_.is(at - 1, TokenKind::equals)) && !tokens_.is(at, TokenKind::line) && at != i + 2) ++at;
    if (tokens_.is(i + 2, TokenKind::number)) at = i + 2;
    if (!tokens_.is(at, TokenKind::number)) return;
    Chain next;
    next.parts.push_back(undone(chain));
    next.stated.push_back(Stated{});
    std::optional<Parsed> result = parse(tokens_, at);
    if (!result || !result->expression.single()) return;
    next.parts.push_back(std::move(result->expression));
    next.stated.push_back(stated_at(at, result->end));
    next.first_token = i;
    next.end_token = result->end;
    next.span = {tokens_.all[i].source.begin, next.stated.back().source.end};
    bool symbol = false;
    next.named.quantities = named_before(tokens_, book_, i + 1, symbol, 1);
    next.named.symbol = true;
    at_ = next.end_token;
    chains_.push_back(std::move(next));
  }
  // The inverse of what the statement worked out, of its exact value.
  static Expression undone(const Chain& chain) {
    Expression e;
    for (const Expression& part : chain.parts) {
      if (part.single()) continue;
      e = part;
      break;
    }
    if (e.root < 0) e = chain.parts.back();
    if (chain.inverse == Op::divide) {
      Leaf one;
      one.value = 1;
      std::int16_t top = e.add_leaf(one);
      e.root = e.add_node(Op::divide, top, e.root);
    } else {
      e.root = e.add_node(chain.inverse, e.root);
    }
    return e;
  }
  bool led(const std::vector<QuantityId>& names) const {
    return std::any_of(names.begin(), names.end(), [&](QuantityId id) { return book_.quantity(id).leads; });
  }
  // "v² = ..." does not state v
  bool raised_before(std::size_t sign) const {
    if (sign == 0) return false;
    TokenKind kind = tokens_.kind(sign - 1);
    if (kind == TokenKind::squared || kind == TokenKind::cubed) return true;
    std::string_view word = tokens_.word(sign - 1);
    return word.size() == 2 && word[1] == '2' && book_.by_symbol(tokens_.all[sign - 1].source.of(tokens_.source)).empty();
  }
  // Whatever is named in the sentences before.
  void nearby(Chain& chain, std::size_t begin) const {
    for (std::size_t i = begin > 45 ? begin - 45 : 0; i < begin; ++i) {
      std::vector<QuantityId> ids;
      if (book_.phrase_at(tokens_, i, ids) == 0) continue;
      for (QuantityId id : ids) {
        if (std::find(chain.named.nearby.begin(), chain.named.nearby.end(), id) == chain.named.nearby.end()) chain.named.nearby.push_back(id);
      }
    }
  }
  // "... = 0.4 so that's the wavelength"
  void name_behind(Chain& chain) const {
    if (!chain.named.quantities.empty()) return;
    for (std::size_t i = chain.end_token; i < chain.end_token + 6 && i < tokens_.size(); ++i) {
      if (tokens_.kind(i) != TokenKind::word && tokens_.kind(i) != TokenKind::comma) return;
      std::vector<QuantityId> ids;
      std::string_view before = i > chain.end_token ? tokens_.word(i - 1) : std::string_view{};
      std::string_view further = i > chain.end_token + 1 ? tokens_.word(i - 2) : std::string_view{};
      bool points = before == "for" || before == "is" || before == "thats" || further == "is" || further == "thats" || further == "for";
      if (book_.phrase_at(tokens_, i, ids) > 0) {
        if (points) chain.named = {ids, true, false, {}, {}, false, {}};
        return;
      }
      if (!is_filler_word(tokens_.word(i))) return;
    }
  }
  // "a = (v - u) / t" on a line of its own, before the numbers
  void earlier_formula(Chain& chain, std::size_t begin) const {
    std::size_t stop = begin > 60 ? begin - 60 : 0;
    for (std::size_t i = begin; i > stop; --i) {
      if (!tokens_.is(i - 1, TokenKind::equals) || i >= tokens_.size()) continue;
      TokenKind kind = tokens_.kind(i);
      bool symbols = kind == TokenKind::word || kind == TokenKind::open || (kind >= TokenKind::root && kind <= TokenKind::arctangent && tokens_.is(i + 1, TokenKind::word));
      if (!symbols) continue;
      bool symbol = false;
      std::vector<QuantityId> found = named_before(tokens_, book_, i - 1, symbol);
      if (found.empty() || raised_before(i - 1)) continue;
      chain.named = {found, false, symbol, {}, {}, false, {}};
      return;
    }
  }

  // "I got 40 by doing 6 / 0.15", "25 N/m (3 / 0.12)"
  bool result_before(Chain& chain) {
    bool reason = false;
    std::size_t i = chain.first_token;
    for (std::size_t n = 0; n < 7 && i > 0; ++n) {
      --i;
      TokenKind kind = tokens_.kind(i);
      if (kind == TokenKind::number) break;
      if (kind == TokenKind::word) {
        reason = reason || is_reason_word(tokens_.word(i));
        continue;
      }
      if (kind == TokenKind::open) {
        reason = true;
        continue;
      }
      if (kind != TokenKind::comma && kind != TokenKind::stop) return false;
    }
    bool that_is = chain.first_token >= 2 && tokens_.word(chain.first_token - 1) == "is" && (tokens_.word(chain.first_token - 2) == "that" || tokens_.word(chain.first_token - 2) == "this");
    that_is = that_is || (chain.first_token >= 1 && tokens_.word(chain.first_token - 1) == "thats");
    reason = reason || (that_is && chain.first_token - i <= 4);
    if (!tokens_.is(i, TokenKind::number) || !reason || chain.parts[0].range_like) return false;
    if (!chains_.empty() && chains_.back().end_token > i) return false;
    Leaf leaf{tokens_.number(i).decimal.value, tokens_.number(i).decimal.figures, tokens_.number(i).decimal.last_place, tokens_.number(i).unit, false, tokens_.all[i].source};
    Expression result;
    result.root = result.add_leaf(leaf);
    chain.parts.push_back(std::move(result));
    chain.stated.push_back(stated_at(i, i + 1));
    bool symbol = false;
    chain.named.quantities = named_before(tokens_, book_, i, symbol);
    chain.named.tight = false;
    chain.named.symbol = symbol;
    chain.named.tight = i > 0 && (tokens_.word(i - 1) == "is" || tokens_.word(i - 1) == "was");
    chain.backwards = true;
    chain.loose = !that_is;
    return true;
  }

  bool finish(Chain& chain) {
    // what comes last must be a number; what is behind it is no part of this
    while (chain.parts.size() > 1 && chain.stated.back().decimal.figures == 0) {
      chain.parts.pop_back();
      chain.stated.pop_back();
    }
    // "8 g in 200 cm³ = 8 ÷ 200 = 0.04 g/cm³": the first number is not what follows
    if (chain.parts.size() > 2 && chain.parts[0].single() && !chain.parts[1].single() && !same_value(chain.parts[0], chain.parts[1])) {
      chain.first_token = chain.second_token;
      chain.parts.erase(chain.parts.begin());
      chain.stated.erase(chain.stated.begin());
    }
    // "100 g = 0.1 kg → 1 N": a number of another kind is no longer the same thing
    if (chain.parts[0].single()) {
      for (std::size_t i = 1; i < chain.parts.size(); ++i) {
        const auto& a = chain.stated[i - 1].unit;
        const auto& b = chain.stated[i].unit;
        if (!chain.parts[i].single() || !a || !b || a->dimension == b->dimension) continue;
        chain.parts.resize(i);
        chain.stated.resize(i);
        chain.end_token = chain.stated.back().token + 1;
        break;
      }
    }
    if (chain.parts.size() == 1 && !chain.parts[0].single()) {
      if (!result_before(chain)) return false;
    }
    if (chain.parts.size() < 2) return false;
    if (std::all_of(chain.parts.begin(), chain.parts.end(), [](const Expression& e) { return e.single(); }) && !converts(chain)) return false;
    std::uint32_t begin = chain.backwards ? chain.stated.back().source.begin : tokens_.all[named_from(chain)].source.begin;
    std::uint32_t end = chain.backwards ? tokens_.all[chain.end_token - 1].source.end : chain.stated.back().source.end;
    chain.span = {begin, std::max(begin, end)};
    return true;
  }
  static bool same_value(const Expression& a, const Expression& b) {
    Value x = evaluate(a, Scaling::as_written);
    Value y = evaluate(b, Scaling::as_written);
    return x.state == State::ok && y.state == State::ok && abs(x.number - y.number) * 50 <= abs(x.number);
  }
  // Numbers alone are a calculation only if the unit changes.
  static bool converts(const Chain& chain) {
    for (std::size_t i = 0; i + 1 < chain.stated.size(); ++i) {
      const auto& a = chain.stated[i].unit;
      const auto& b = chain.stated[i + 1].unit;
      if (a && b && a->dimension == b->dimension && (!(a->scale == b->scale) || a->symbol != b->symbol)) return true;
    }
    return false;
  }
  // The chain's span takes in the symbol or word before its first sign.
  std::size_t named_from(const Chain& chain) const {
    std::size_t i = chain.first_token;
    if (i < 2 || !tokens_.is(i - 1, TokenKind::equals)) return i;
    std::size_t sign = first_sign_from(tokens_, i - 1);
    return sign > 0 && tokens_.is(sign - 1, TokenKind::word) ? sign - 1 : i;
  }

  const Tokens& tokens_;
  const FormulaBook& book_;
  const std::vector<Fact>& facts_;
  std::size_t at_ = 0;
  std::vector<Chain> chains_;
};

}  // namespace

std::vector<Chain> find_chains(const Tokens& tokens, const FormulaBook& book, const std::vector<Fact>& facts) { return Finder(tokens, book, facts).run(); }

}  // namespace retort::calc
