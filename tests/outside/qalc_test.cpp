// Sums against qalc 4.5 (Debian's package qalc, GPL-2.0+), a calculator of arbitrary precision that knows units:
// thousands of random sums with numbers, brackets, powers, roots, sines in degrees, and units.
#include <iostream>
#include <sstream>

#include "../support.h"
#include "calc/calculations.h"
#include "decimals.h"
#include "program.h"
#include "random_sums.h"

namespace retort {
namespace {

constexpr std::uint64_t kSeed = 20250607;
constexpr std::size_t kPlain = 2200;
constexpr std::size_t kWithUnits = 1400;
constexpr const char* kQalc = "qalc -defaults -nocurrencies -t -s 'unicode 0' -s 'angle 2' -s 'precision 30' -s 'fractions 0' -s 'approximation 2' -s 'interval 0' -f";

struct Row {
  test::Sum sum;
  Exact value;       // in the unit of the result, from qalc
  std::string text;  // as qalc prints it
};

// Many sums on one line as a vector, since qalc waits between lines: "[0.4  12  ...]".
std::vector<std::string> ask_qalc(const std::vector<std::string>& sums) {
  constexpr std::size_t kTogether = 60;
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < sums.size(); ++i) {
    bool first = i % kTogether == 0;
    if (first) lines.emplace_back("[");
    lines.back() += (first ? "" : ", ") + sums[i];
    if (i + 1 == sums.size() || (i + 1) % kTogether == 0) lines.back() += "]";
  }
  std::vector<std::string> out;
  for (const std::string& line : test::lines_of(kQalc, lines)) {
    std::istringstream in(line.substr(std::min<std::size_t>(1, line.size()), line.size() - std::min<std::size_t>(2, line.size())));
    for (std::string item; in >> item;) out.push_back(item);
  }
  return out;
}

// All sums with qalc's values; the values are pure numbers, since each sum is divided by the unit wanted.
const std::vector<Row>& rows() {
  static const std::vector<Row> all = [] {
    std::cout << "seed " << kSeed << "\n";
    test::Random random(kSeed);
    std::vector<Row> out;
    std::vector<std::string> input;
    test::PlainSums plain(random);
    for (std::size_t i = 0; i < kPlain + kWithUnits; ++i) {
      test::Sum sum = i < kPlain ? plain.sum(1 + static_cast<int>(random.below(4))) : test::shaped(random);
      input.push_back(sum.their_unit.empty() ? sum.theirs : "(" + sum.theirs + ")/(" + sum.their_unit + ")");
      out.push_back({std::move(sum), {}, {}});
    }
    std::vector<std::string> answers = ask_qalc(input);
    EXPECT_EQ(answers.size(), input.size()) << "install Debian's package qalc";
    if (answers.size() != input.size()) return std::vector<Row>{};
    for (std::size_t i = 0; i < out.size(); ++i) {
      std::optional<Exact> value = test::printed_number(answers[i]);
      EXPECT_TRUE(value.has_value()) << input[i] << " gives " << answers[i];
      if (value) out[i].value = *value;
      out[i].text = answers[i];
    }
    return out;
  }();
  return all;
}

// Names the first rows that fail, so that a fault shows without thousands of lines.
class Failures {
 public:
  void add(const std::string& what) {
    if (++count_ <= 40) list_ += "  " + what + "\n";
  }
  void report(std::size_t tried, std::size_t least) const {
    EXPECT_EQ(count_, 0U) << "of " << tried << ":\n" << list_;
    EXPECT_GE(tried, least);
  }

 private:
  std::size_t count_ = 0;
  std::string list_;
};

TEST(Qalc, ExpressionsHaveItsValueToTwelveFigures) {
  Failures failures;
  std::size_t tried = 0;
  calc::Tokens tokens;
  for (const Row& row : rows()) {
    ++tried;
    calc::read_tokens(row.sum.ours, tokens);
    std::optional<calc::Parsed> parsed = calc::parse(tokens, 0);
    if (!parsed || parsed->end != tokens.size()) {
      failures.add(row.sum.ours + ": not read as one expression");
      continue;
    }
    calc::Value value = calc::evaluate(parsed->expression, calc::Scaling::si);
    if (value.state != calc::State::ok) {
      failures.add(row.sum.ours + ": no value");
      continue;
    }
    Exact ours = value.number;
    if (!row.sum.unit.empty()) {
      std::optional<CompoundUnit> unit = read_unit(row.sum.unit);
      if (!unit || unit->dimension != value.dimension || value.clash) failures.add(row.sum.ours + ": its unit is not " + row.sum.unit);
      if (unit) ours /= exact(unit->scale);
    }
    if (!test::near(ours, row.value, Exact(1000000000000))) failures.add(row.sum.ours + ": " + std::to_string(ours.get_d()) + " and not " + row.text);
  }
  failures.report(tried, 3000);
}

// "0.123456" to three figures: 0.123; the place of the last figure goes to `place`.
Exact to_figures(const Exact& value, int figures, int& place) {
  Exact size = abs(value);
  place = first_place(size) - figures + 1;
  Exact half = power_of_ten(place) / 2;
  mpz_class steps = Exact((size + half) / power_of_ten(place)).get_num() / Exact((size + half) / power_of_ten(place)).get_den();
  return Exact(steps) * power_of_ten(place);
}

// `value` ≥ 0 in plain digits with the last at 10^place.
std::string plain(const Exact& value, int place) {
  mpz_class digits = Exact(value / power_of_ten(std::min(place, 0))).get_num();
  std::string text = digits.get_str();
  if (place >= 0) return text;
  auto behind = static_cast<std::size_t>(-place);
  if (text.size() <= behind) text.insert(0, behind + 1 - text.size(), '0');
  return text.insert(text.size() - behind, ".");
}

struct Statement {
  std::string right;
  std::string wrong;
};

// The sum with its value rounded to three to five figures, and with another value that no rounding explains.
Statement statement(const Row& row, test::Random& random) {
  int place = 0;
  Exact value = to_figures(row.value, 3 + static_cast<int>(random.below(3)), place);
  Exact step = power_of_ten(place) * static_cast<int>(2 + random.below(3));
  Exact other = random.chance(50) ? Exact(value + step) : Exact(value - step);
  if (random.chance(15)) other = value * 2;
  else if (random.chance(15)) other = value * 10;
  else if (ends_by(other, place + 1)) other += other > value ? power_of_ten(place) : Exact(-power_of_ten(place));  // no zero at the end that might be no figure
  std::string sign = row.value < 0 ? "-" : "";
  std::string unit = row.sum.unit.empty() ? "" : (random.chance(80) ? " " : "") + row.sum.unit;
  std::string before = row.sum.ours + " = " + sign;
  int shown = other == value * 10 ? place + 1 : place;
  return {before + plain(value, place) + unit, before + plain(other, shown) + unit};
}

// Whether a root or sine leaves the value just on the half between two roundings. There our value, which is
// rounded, may lie a hair below it: see kNeedsCare.
bool on_the_half(const Row& row) {
  bool rough = row.sum.theirs.find_first_of("sct") != std::string::npos && row.sum.unit.empty();
  int first = first_place(abs(row.value));
  return rough && ends_by(row.value, first - 5);
}

bool usual_size(const Exact& value) { return abs(value) >= Exact(1, 1000) && abs(value) < 1000000; }

std::string verdicts(calc::Calculator& calculator, const std::string& text) {
  std::string out;
  for (const calc::Calculation& found : calculator.check(text)) out += (out.empty() ? "" : ", ") + std::string(calc::name(found.verdict)) + (found.verdict == calc::Verdict::wrong ? " (" + found.correct + ")" : "");
  return out.empty() ? "nothing found" : out;
}

void judge(bool with_units, std::size_t least) {
  Findings findings;
  std::shared_ptr<const calc::FormulaBook> book = open_formulas(test::shipped().files, findings);
  calc::Calculator calculator(*book);
  test::Random random(kSeed + 1);
  Failures failures;
  std::size_t tried = 0;
  for (const Row& row : rows()) {
    if (row.sum.unit.empty() == with_units || !usual_size(row.value) || on_the_half(row)) continue;
    ++tried;
    Statement both = statement(row, random);
    if (std::string got = verdicts(calculator, both.right); got != "right") failures.add(both.right + ": right by qalc, ours: " + got);
    if (std::string got = verdicts(calculator, both.wrong); !got.starts_with("wrong") || got.find(", ") != std::string::npos) failures.add(both.wrong + ": wrong by qalc, ours: " + got);
  }
  failures.report(tried, least);
}

TEST(Qalc, StatementsOfItsValuesAreRightAndOthersWrong) { judge(false, 1500); }
TEST(Qalc, StatementsWithUnitsAreRightAndOthersWrong) { judge(true, 700); }

// Sums that qalc reckons so and that we do not judge so yet, each with the reason.
struct NeedsCare {
  const char* statement;
  const char* verdict;
  const char* reason;
};
constexpr NeedsCare kNeedsCare[] = {
    {"4.25 \u00D7 sin 30 = 2.13", "right", "2.125 lies on the half, and the sine of 30 degrees is reckoned a hair too small"},
    {"(\u221A91.475)\u00B2 = 91.48", "right", "the same with a root"},
    {"magnification = 50 mm / 2.0 cm = 25", "wrong (2.5)", "a ratio of two lengths whose units were not made the same"},
    {"50.8 mm / 16.55 cm = 3.069", "wrong (0.3069)", "the same without a name"},
    {"9.0 plus square root of 16.0 = 13.0", "right", "a sign in words before a root in words"},
    {"20 divided by square root of 16 = 5", "right", "the same"},
    {"3 squared x square root of 16 = 36", "right", "x between two words"},
    {"1.5xsin30 = 0.75", "right", "x grown together with a word"},
    {"2.0e3x4 = 8000", "right", "x grown together with an exponent"},
    {"5.0e-3m x 2.0 m = 0.010 m2", "right", "a unit grown together with an exponent"},
};

TEST(Qalc, StatementsThatNeedCare) {
  Findings findings;
  std::shared_ptr<const calc::FormulaBook> book = open_formulas(test::shipped().files, findings);
  calc::Calculator calculator(*book);
  for (const NeedsCare& row : kNeedsCare) EXPECT_EQ(verdicts(calculator, row.statement), row.verdict) << row.statement << ": " << row.reason;
}

}  // namespace
}  // namespace retort
