// Looks for chains: the class behind find_chains(), for the files chain*.cpp alone.
#pragma once
#include <algorithm>

#include "calc/chains.h"
#include "calc/links.h"
#include "calc/naming.h"
#include "calc/readings.h"
#include "calc/spoken_formula.h"

namespace retort::calc {

constexpr std::size_t kReach = 12;  // words between an expression and its result
constexpr std::size_t kMostParts = 12;

inline bool starts_operand(TokenKind kind) {
  return kind == TokenKind::number || kind == TokenKind::pi || kind == TokenKind::open || kind == TokenKind::minus ||
         (kind >= TokenKind::root && kind <= TokenKind::arctangent);
}

class ChainFinder {
 public:
  ChainFinder(const Tokens& tokens, const FormulaBook& book, const std::vector<Fact>& facts) : tokens_(tokens), book_(book), facts_(facts) {}
  std::vector<Chain> run();

 private:
  bool chain_at(std::size_t begin);
  bool build(std::size_t begin, Parsed parsed, Chain& chain);

  // By its own words, but a name that stands right before the result comes first.
  void complete_name(Chain& chain) const;

  // "it took 25.2 s. I divided by 10", "186 and then ÷ 3": what the operator acts on stands before. Of the
  // numbers there, the one is meant that gives the result; the nearest with a unit, if none does.
  bool operator_first(std::size_t begin);
  static bool gives_result(const Chain& chain);

  // "4, 7, 0, 9 and 5. I added them up and divided by 5"
  std::optional<Parsed> sum_of_list(std::size_t begin) const;

  // A number that nothing is done with: most numbers in prose.
  bool stands_alone(std::size_t i) const;

  // "took away 18 from 54 and got 36"
  bool taken_from(std::size_t begin);

  // "100 × 30 = p × 20 so p = 150": what is left of the equation is divided by the number beside the unknown.
  bool balanced(Chain& chain);

  // A fraction over three lines: "1.1", "---- = 2.62", "0.42".
  bool stacked(std::size_t begin);
  bool starts_sign(std::size_t i) const;

  // "it took 25.2 s. I divided by 10": what the operator acts on.
  const Fact* quantity_before(std::size_t at) const;

  // How many facts stand before token `at`.
  std::size_t facts_before(std::size_t at) const;
  Stated stated_at(std::size_t begin, std::size_t end) const;

  // Signs of equality, over a line's end; 0 if there is none.
  std::size_t sign_at(std::size_t i) const;
  void follow(Chain& chain);

  // "v = 20 × 1.7" and on the next line "v = 34": behind the second sign; 0 if it is not so.
  std::size_t same_name_again(const Chain& chain, std::size_t i) const;

  // A unit that is not in the table ("bpm"), between a number and a sign.
  bool is_unit_words(std::size_t i) const;
  [[nodiscard]] Expression leaf_alone(std::size_t i) const;
  void counted_in_time(Chain& chain) const;
  [[nodiscard]] bool is_factor_of_symbols(const Chain& chain) const;
  void so_many_of(Chain& chain) const;
  bool take_part(Chain& chain, std::size_t i);

  // "3.2 cm (0.032 m)"
  bool converted_in_brackets(Chain& chain);
  static bool conversion_fits(const Expression& from, const Stated& to);

  // The result in words: "and got 40", "which comes to 0.54 m/s", "so the time for one is 0.71 s".
  bool worded_result(Chain& chain);
  bool continues(std::size_t i) const;

  // "350 g into 0.35 kg", "10 minutes is 600 s", "0.2 m or 20 cm"
  bool worded_conversion(Chain& chain);

  // "= 0.02 so the spring constant is 0.02 N/m": the same number again, now with its unit
  bool with_unit_again(Chain& chain) const;

  // "0.0306 which is 3.1 %", "0.75 or 75 %"
  bool as_percentage(Chain& chain);

  // "59.8 W which is about 60 W"
  static bool is_only_rounded(const Stated& from, const Stated& to);
  bool converts_before(std::size_t at) const;

  // What is worked out: the name before the first sign of equality of the line.
  void name(Chain& chain) const;

  // "v² = ...", "1/R = ...", "sin c = ...": what the statement works out is not yet what is asked for.
  [[nodiscard]] bool formula_before(std::size_t sign) const;
  [[nodiscard]] bool says_result(std::size_t from, std::size_t to) const;
  void transform(Chain& chain, std::size_t sign) const;

  // "... = 35.28 so v = 5.94": the second statement as a chain of its own.
  void undo(const Chain& chain);

  // The inverse of what the statement worked out, of its exact value.
  static Expression undone(const Chain& chain);
  bool led(const std::vector<QuantityId>& names) const;

  // "v² = ..." does not state v
  bool raised_before(std::size_t sign) const;

  // Whatever is named in the sentences before.
  void nearby(Chain& chain, std::size_t begin) const;

  // "... = 0.4 so that's the wavelength"
  void name_behind(Chain& chain) const;

  // "a = (v - u) / t" on a line of its own, before the numbers
  void earlier_formula(Chain& chain, std::size_t begin) const;

  // "I got 40 by doing 6 / 0.15", "25 N/m (3 / 0.12)"
  bool result_before(Chain& chain);
  bool finish(Chain& chain);
  static bool same_value(const Expression& a, const Expression& b);

  // Numbers alone are a calculation only if the unit changes.
  static bool converts(const Chain& chain);

  // The chain's span takes in the symbol or word before its first sign.
  std::size_t named_from(const Chain& chain) const;
  const Tokens& tokens_;
  const FormulaBook& book_;
  const std::vector<Fact>& facts_;
  std::size_t at_ = 0;
  std::vector<Chain> chains_;
};

}  // namespace retort::calc
