// Looks for results in prose: the class behind find_in_prose(), for the files prose*.cpp alone.
#pragma once
#include <algorithm>
#include <string_view>

#include "calc/naming.h"
#include "calc/prose.h"
#include "calc/readings.h"
#include "calc/slips.h"

namespace retort::calc {

constexpr std::size_t kLeadReach = 12;   // tokens between "so" and the result
constexpr std::size_t kInputReach = 70;  // tokens back to the values a result is worked out from
constexpr std::size_t kMostInputs = 8;

// How surely the words before a number say that it was worked out.
enum class Lead : std::uint8_t { none, weak, strong };

class Prose {
 public:
  Prose(const Tokens& tokens, const FormulaBook& book, const std::vector<Fact>& facts, const Judge& judge, const std::vector<Span>& taken,
        std::vector<Calculation>& out)
      : tokens_(tokens), book_(book), facts_(facts), judge_(judge), taken_(taken), out_(out) {
    for (const Calculation& c : out) results_.push_back(c.result.begin);
  }
  void run();

 private:
  struct Result {
    std::size_t fact = 0;
    std::size_t token = 0;
    Stated stated;
    Named named;
    Lead lead = Lead::none;
    std::size_t lead_token = 0;
    bool defined = false;     // "k = 40 N/m": may be no more than a value that is given
    bool worded = false;      // "so", "gives"
    bool close_name = false;  // the name stands right before
    bool formula = false;     // "v = fλ = 20"
    bool forward = false;     // the values stand behind
  };
  bool is_taken(Span span) const;

  // A number of a calculation that is not its result.
  bool is_inside_calculation(Span span) const;
  void result(std::size_t f);

  // "divided by 4", "the mean for 10 is ...": a number that is worked with.
  bool is_number_of_things(std::size_t i) const;

  // Not the beginning of an expression, of a range or of a row of numbers.
  bool can_be_result(std::size_t i) const;
  static bool same_kind(const std::optional<CompoundUnit>& a, const std::optional<CompoundUnit>& b) {
    return a.has_value() == b.has_value() && (!a || a->dimension == b->dimension);
  }
  bool is_last_of_several(std::size_t i) const;
  // A result that is only named again.
  bool said_already(const Result& r) const;

  // By the name before the statement's first sign of equality, or before the number.
  void name(Result& r) const;
  [[nodiscard]] std::size_t verb_before_brackets(const Result& r) const;

  // "0.2 Hz is the frequency, because 10 waves went past in 2 s": the values stand behind.
  bool reason_behind(Result& r) const;
  [[nodiscard]] bool names_unit(const Result& r) const;
  void find_lead(Result& r) const;
  bool says(const Result& r, std::string_view quantity) const;

  // --- what can be reported
  void report(const Result& r, std::uint32_t begin, Judgement judgement);
  static Exact scale(const Stated& stated) { return stated.unit ? exact(stated.unit->scale) : Exact(1); }
  // Whether `e` gives the stated number, in its unit or, where units are not written, as the numbers stand.
  bool fits(const Expression& e, const Stated& stated) const;
  Judgement right(const Expression& e, const Result& r) const;
  Judgement wrong(const Expression& e, const Stated& stated, std::vector<Slip> slips) const;

  // --- means and ranges of listed readings
  bool mean(const Result& r);

  // The sum divided by one or two more or fewer than there are readings.
  bool miscounted(const std::vector<std::size_t>& list, const Result& r) const;

  // "the mean of ... is", "..., so the average was": no other number stands between the word and the result.
  [[nodiscard]] bool gives_mean(std::size_t mean) const;
  bool says_mean(const Result& r, std::size_t last_reading) const;

  // "the mean of all 6 was"
  long readings_said(const Result& r) const;

  // An anomaly is said to be left out.
  bool leaves_out(const Result& r) const;
  Expression mean_of(const std::vector<std::size_t>& list, const Result& r) const;
  static Leaf with_unit(Leaf leaf, const std::optional<CompoundUnit>& unit);

  // "Added up it's 4.05", "so the range is 0.6"
  bool sum_or_range(const Result& r);

  // "thinking 14 m plus braking 38 m, total 52 m": reported if it fits.
  bool total_of_two(const Result& r);
  bool range_of_two(const Result& r);
  bool one_left_out(const std::vector<std::size_t>& list, const Result& r) const;
  Expression range_of(const std::vector<std::size_t>& list, const Result& r) const;

  // "mean 5.4 cm ± 0.2 cm": reported if it is half the range of the readings.
  bool plus_minus(const Result& r);

  // "the range is 1.9 − 1.5 = 0.4 s so the uncertainty is ± 0.4 s as it is half the range"
  bool half_of_range(const Result& r);
  bool half_range(const Result& r);
  bool word_before(const Result& r, std::string_view a, std::string_view b, std::size_t reach) const;

  // The numbers before the result that it may be worked out from, nearest first.
  std::vector<std::size_t> nearest(const Result& r, std::size_t most, bool inside = false) const;

  // --- formulas of the book
  struct Filled {
    Expression expression;
    const Formula* formula = nullptr;
    int score = 0;
    std::size_t first = 0;  // fact that stands first
    bool sure = true;       // no other value could have been meant
    bool doubtful = false;  // a value has another name than the variable
  };
  bool by_formula(const Result& r);

  // Whether all formulas that could be meant give the same.
  static bool agree(const std::vector<Filled>& all);

  // A formula for what is stated, in symbols or words, before it: "a = F/m", then on its own line "a = 3.0".
  bool formula_said(const Result& r) const;

  // "weight = 1.96 kg": the number comes out, but in a unit of another quantity.
  bool unit_of_another_kind(const Result& r);

  // A difference of a number with a unit and one without.
  static bool mixed(const Expression& e);

  // The best values before the result for the formula's variables, if all are there.
  void fill(const Result& r, const Formula& formula, std::vector<Filled>& all) const;

  // --- the same in another unit, and rates
  // "... 462 000 J. That is 462 kJ", "In kilojoules this is 36 kJ"
  bool conversion(const Result& r);

  // "fell from 82 °C to 64 °C in 9 minutes. That's a rate of 2.0 °C per min": reported if it fits.
  bool rate(const Result& r);

  // --- changes
  // "from 21.5 to 37.0 so that's a rise of 15.5": the two numbers before differ by it.
  bool difference(const Result& r);

  // "from 80 to 58", "20.5 → 29.0"
  bool joined_by_to(std::size_t a, std::size_t b) const;

  // --- proportion
  static long times_word(std::string_view word);

  // "three times the force so three times the acceleration, 0.45": the factor, 0 if none is stated.
  Exact factor_before(const Result& r) const;
  bool proportion(const Result& r);
  bool there_and_back(const Result& r) const;
  bool factor_stands_before(const Result& r, std::size_t token) const;

  // --- any two values whose units make that of the result
  bool any_two(const Result& r);
  bool quotient_in_unit(const Result& r);
  bool two_fit(const Result& r, std::size_t left, std::size_t right_fact, Op op);

  // "9.6 Ω for 80 cm, which works out as 0.12 Ω for each cm": two numbers, if their quotient or product is it.
  bool each(const Result& r);

  // "15 bubbles in 3 mins is 5 bubbles per min": so many in a time, and how many in one unit of it.
  bool things_per_time(const Result& r);
  bool bare_rate(const Result& r);
  // The unit of time after the result ("per min", "bubbles/min", "a second"), in seconds; 0 if there is none.
  Exact seconds_after(std::size_t token) const;

  // "2 N stretches it 5 cm so 6 N will stretch it 15 cm": in proportion, step by step, if it fits.
  bool next_step(const Result& r);

  // "30 cm of the wire was 2.4 ohms, so 75 cm should be 6.0 ohms": in proportion, if it fits.
  bool in_proportion(const Result& r);

  // "20 % of 40 is 8", "12 out of 40 is 30 %", "the difference between 45 and 18 is 27": said in so many words.
  bool percent_of(const Result& r);
  bool out_of(const Result& r);
  bool difference_said(const Result& r);
  bool joined_by_of(std::size_t a, std::size_t b) const;
  bool right_after(std::size_t fact, const Result& r) const;
  Exact part_said(std::size_t i) const;

  // "efficiency 0.2", "Current 3 A" at the end of a row of values.
  bool named_right_before(Result& r) const;

  // "2.1 J of the 6.0 J was useful, so the efficiency was 35 %"
  bool ratio(const Result& r, const Leaf& a, const Leaf& b);

  // --- a result that was worked out from something that does not stand in the text
  bool says_worked_out(const Result& r, bool& formula) const;

  // The formula for what is stated was named before, and not all of its values are there.
  bool formula_lacks_value(const Result& r) const;

  // "power = 12 x I = 30 W"
  bool unknown_factor(const Result& r) const;
  bool is_name(std::size_t i) const;

  // Two values of the formula for what is stated are there, and one is not.
  bool all_but_one(const Result& r) const;
  bool word_near(const Result& r, std::string_view a, std::string_view b) const;

  // "came out as 2400 Pa using force over area", "determined with P = I²R and found to be 3.2 W"
  bool formula_around(const Result& r) const;
  void missing_value(const Result& r);
  const Tokens& tokens_;
  const FormulaBook& book_;
  const std::vector<Fact>& facts_;
  const Judge& judge_;
  std::vector<Span> taken_;             // by their beginning
  std::vector<std::uint32_t> results_;  // where the results of calculations begin
  std::uint32_t last_result_ = UINT32_MAX;
  Span used_;  // values that stand behind their result
  std::vector<Calculation>& out_;
};

}  // namespace retort::calc
