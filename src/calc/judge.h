// Judges one calculation: an expression, the result stated for it, and what the text says about both.
#pragma once
#include <optional>
#include <vector>

#include "calc/calculation.h"
#include "calc/compare.h"
#include "calc/facts.h"

namespace retort::calc {

// What a result is said to be ("speed = ...").
struct Named {
  std::vector<QuantityId> quantities;
  bool tight = false;                             // named directly before the sign of equality
  bool symbol = false;                            // by a letter, which may stand for several things
  std::vector<std::vector<QuantityId>> operands;  // what a formula in names before the numbers says they are
  std::optional<Expression> symbols;              // "(v - u)/t" before "= (1.1 - 0.3)/0.5"
  bool formula = false;                           // "W = mg = ..."
  std::vector<QuantityId> nearby;                 // named in the sentences before, for want of a name
};

struct Judgement {
  Verdict verdict = Verdict::unclear;
  std::vector<Slip> slips;
  std::vector<Remark> remarks;
  Doubt doubt = Doubt::none;
  std::string correct;
  std::string formula;
  // Whether the stated number is accounted for: right, or wrong by a slip that reproduces it.
  [[nodiscard]] bool explained() const { return verdict == Verdict::right || (!slips.empty() && slips[0] != Slip::arithmetic); }
};

class Judge {
 public:
  // All must outlive the Judge.
  // The first `own_facts` of `facts` stand in the text, in its order; the others are given besides.
  Judge(const Tokens& tokens, const FormulaBook& book, const std::vector<Fact>& facts, std::size_t own_facts)
      : tokens_(tokens), book_(book), facts_(facts), own_facts_(own_facts) {}

  // `own`: the bytes of the calculation itself, whose numbers give it no units.
  [[nodiscard]] Judgement judge(const Expression& expression, const Stated& stated, const Named& named, Span own) const;

  // A formula of the book with values from the text: `formula`'s variables get the facts at `chosen`.
  [[nodiscard]] Expression filled(const Formula& formula, const std::vector<const Leaf*>& chosen) const;

 private:
  struct Bound {
    Expression expression;
    std::vector<std::vector<QuantityId>> names;  // by leaf
    bool any = false;
  };
  struct Match {
    bool right = false;
    bool dimensions_fit = true;
    bool known = false;  // every operand's unit is known
    bool left_unconverted = false;
  };

  [[nodiscard]] Bound bind(const Expression& expression, const Named& named, Span own) const;
  static void name_operands(Bound& bound, const Named& named);
  [[nodiscard]] bool stands_near(const Leaf& leaf) const;
  [[nodiscard]] bool squared_in_head(const Expression& formula, const Expression& e) const;
  bool half_of_loops(const Expression& e) const;
  static bool sign_left_out(const Expression& e, const CompoundUnit& stated);
  static bool converted_by_hand(const Expression& expression, const Stated& stated);
  [[nodiscard]] Match match(const Expression& expression, const Stated& stated) const;
  [[nodiscard]] std::optional<Bound> with_constant(const Bound& bound, const Stated& stated) const;
  [[nodiscard]] std::optional<Bound> one_is_a_count(const Bound& bound, const Stated& stated, Span own) const;
  [[nodiscard]] bool plausible_rest(const Dimension& written, const CompoundUnit& unit, const Expression& expression) const;
  bool wrong_structure(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const;
  [[nodiscard]] bool takes_unit_of(const QuantityEntry& quantity, const Expression& e) const;
  bool wrong_unit(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const;
  bool wrong_count(const Bound& bound, const Stated& stated, const Named& named, Span own, Judgement& out) const;
  [[nodiscard]] std::vector<QuantityId> only_fitting(const std::vector<QuantityId>& nearby, const Expression& expression) const;
  [[nodiscard]] static std::optional<Expression> brackets_meant(const Expression& plain, const Stated& stated);
  bool added_for_taken_away(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const;
  bool out_of_range(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const;
  bool half_left_out(const Bound& bound, const Stated& stated, const Named& named, Span own, Judgement& out) const;
  [[nodiscard]] bool doubled(const Expression& expression) const;
  bool against_symbols(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const;
  bool wrong_base(const Bound& bound, const Stated& stated, const Named& named, Span own, Judgement& out) const;
  bool wrong_formula(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const;
  void wrong_value(const Expression& plain, const Bound& bound, const Stated& stated, Judgement& out) const;
  void remark(const Bound& bound, const Stated& stated, const Named& named, Judgement& out) const;
  [[nodiscard]] long counted_things(long not_this, bool named_one, Span own) const;
  [[nodiscard]] bool counted_exactly(long n) const;
  [[nodiscard]] bool is(const Named& named, std::string_view quantity) const;

  const Tokens& tokens_;
  const FormulaBook& book_;
  const std::vector<Fact>& facts_;
  std::size_t own_facts_;
  // The neighbourhood of the calculation that is being judged.
  void look_around(Span own) const;
  [[nodiscard]] std::size_t first_token_from(std::uint32_t byte) const;
  mutable std::vector<Fact> near_;
  mutable std::size_t near_from_ = 0;
  mutable std::size_t near_to_ = 0;
};

}  // namespace retort::calc
