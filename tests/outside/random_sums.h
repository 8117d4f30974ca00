// Random sums as pupils write them, each also in the language of qalc. The same seed gives the same sums.
#pragma once
#include <cctype>
#include <cmath>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

namespace retort::test {

struct Sum {
  std::string ours;
  std::string theirs;      // every operation in brackets, so that precedence is ours to get right
  double value = 0.0;      // roughly, to keep to sums that have one
  std::string unit;        // of the result, as pupils write it; empty for plain numbers
  std::string their_unit;
  bool bare = false;       // a number and nothing else
};

class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}
  std::uint64_t below(std::uint64_t n) { return engine_() % n; }
  bool chance(std::uint64_t percent) { return below(100) < percent; }
  template <typename T, std::size_t N>
  const T& pick(const T (&list)[N]) { return list[below(N)]; }
  std::string pick_word(const std::string& words) {  // "m|cm|mm"
    std::vector<std::string> list(1);
    for (char c : words) {
      if (c == '|') list.emplace_back();
      else list.back() += c;
    }
    return list[below(list.size())];
  }

 private:
  std::mt19937_64 engine_;
};

// A number as a reading: one to four figures, never "10", which begins powers of ten.
inline Sum reading(Random& random) {
  static constexpr int kTens[] = {1, 10, 100, 1000};
  std::uint64_t digits = 1 + random.below(static_cast<std::uint64_t>(9 * random.pick(kTens)));
  int places = static_cast<int>(random.below(4));
  std::string text = std::to_string(digits);
  if (places > 0) {
    while (static_cast<int>(text.size()) <= places) text.insert(0, "0");
    text.insert(text.size() - static_cast<std::size_t>(places), ".");
  }
  if (text == "10") text = "11";
  Sum out{text, text, std::stod(text), {}, {}, true};
  if (random.chance(6)) {
    int exponent = static_cast<int>(random.below(9)) - 4;
    if (exponent == 0) exponent = 5;
    static const char* const kWays[] = {" \u00D7 10^", " x 10^", "\u00D710^", "e"};
    out = {text + random.pick(kWays) + std::to_string(exponent), text + "E" + std::to_string(exponent), out.value * std::pow(10.0, exponent), {}, {}, true};
  }
  return out;
}

// How tightly a sum holds together: what is looser than its place needs brackets.
enum class Binding : std::uint8_t { sum, product, power, atom };

class PlainSums {
 public:
  explicit PlainSums(Random& random) : random_(random) {}

  Sum sum(int depth) {
    Bound out;
    do {
      out = any(depth);
    } while (out.sum.bare || !(std::abs(out.sum.value) > 1e-9 && std::abs(out.sum.value) < 1e12));
    return out.sum;
  }

 private:
  struct Bound {
    Sum sum;
    Binding binding = Binding::atom;
    bool standard_form = false;
    bool exact = true;  // no sine in it: may be added to something
  };

  Bound number() {
    Bound out{reading(random_), Binding::atom, false, true};
    out.standard_form = out.sum.ours.find_first_of("xe\xC3") != std::string::npos;
    return out;
  }
  std::string bracketed(const Bound& b, Binding least) const { return b.binding < least || (b.standard_form && least == Binding::atom) ? "(" + b.sum.ours + ")" : b.sum.ours; }

  Bound any(int depth) {
    if (depth == 0) return number();
    std::uint64_t kind = random_.below(100);
    if (kind < 32) return added(depth);
    if (kind < 72) return multiplied(depth);
    if (kind < 82) return raised(depth);
    if (kind < 89) return rooted(depth);
    if (kind < 97) return trigonometric();
    return negative();
  }

  static bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }
  // "x" grows together with a word; a sign in words before another in words is left to a list of its own.
  static bool may_stand_before(const std::string& sign, const std::string& right) { return !is_letter(right[0]) || (sign != "x" && !(sign.size() > 4 && right.starts_with("square root"))); }

  static bool may_stand_behind(const std::string& sign, const std::string& left, const std::string& right) {
    if (sign == " x " && is_letter(left.back())) return !is_letter(right[0]);  // "3 squared x square root of 4"
    if (sign != "x") return true;
    std::size_t i = left.find_last_not_of("0123456789-");  // "2e3x4"
    return !is_letter(left.back()) && (i == std::string::npos || left[i] != 'e');
  }

  Bound exact_part(int depth) {
    Bound out = any(depth);
    while (!out.exact) out = any(depth);
    return out;
  }

  // Differences that all but vanish are left out, since qalc rounds too.
  Bound added(int depth) {
    while (true) {
      Bound a = exact_part(depth - 1);
      Bound b = exact_part(depth - 1);
      bool plus = random_.chance(55);
      double value = plus ? a.sum.value + b.sum.value : a.sum.value - b.sum.value;
      if (std::abs(value) < 1e-4 * std::max(std::abs(a.sum.value), std::abs(b.sum.value))) continue;
      static const char* const kPlus[] = {" + ", " + ", "+", " plus "};
      static const char* const kMinus[] = {" - ", " - ", " \u2212 ", " minus ", " take away "};
      std::string right = bracketed(b, plus ? Binding::sum : Binding::product);
      if (right[0] == '-') right = "(" + right + ")";
      std::string sign = plus ? random_.pick(kPlus) : random_.pick(kMinus);
      while (!may_stand_before(sign, right)) sign = plus ? random_.pick(kPlus) : random_.pick(kMinus);
      return {{a.sum.ours + sign + right, "(" + a.sum.theirs + (plus ? "+" : "-") + b.sum.theirs + ")", value, {}, {}}, Binding::sum, false, true};
    }
  }

  Bound multiplied(int depth) {
    Bound a = any(depth - 1);
    Bound b = any(depth - 1);
    bool times = random_.chance(50) || std::abs(b.sum.value) < 1e-9;
    static const char* const kTimes[] = {" \u00D7 ", " x ", " * ", "*", "\u00D7", " times ", " multiplied by ", "x"};
    static const char* const kDivide[] = {" / ", "/", " \u00F7 ", "\u00F7", " divided by "};
    std::string right = bracketed(b, times ? Binding::product : Binding::power);
    if (right[0] == '-') right = "(" + right + ")";
    double value = times ? a.sum.value * b.sum.value : a.sum.value / b.sum.value;
    std::string left = bracketed(a, Binding::product);
    std::string sign = times ? random_.pick(kTimes) : random_.pick(kDivide);
    while (!may_stand_before(sign, right) || !may_stand_behind(sign, left, right)) sign = times ? random_.pick(kTimes) : random_.pick(kDivide);
    return {{left + sign + right,
             "(" + a.sum.theirs + (times ? "*" : "/") + b.sum.theirs + ")", value, {}, {}}, Binding::product, false, a.exact && b.exact};
  }

  Bound raised(int depth) {
    Bound a = any(depth - 1);
    int power = random_.chance(60) ? 2 : 3 + static_cast<int>(random_.below(2));
    if (std::abs(a.sum.value) > 1e4) power = 2;
    std::string mark = "^" + std::to_string(power);
    if (power == 2 && random_.chance(60)) mark = random_.chance(70) ? "\u00B2" : " squared";
    if (power == 3 && random_.chance(50)) mark = "\u00B3";
    std::string base = bracketed(a, Binding::atom);
    if (base[0] == '-') base = "(" + base + ")";
    return {{base + mark, "(" + a.sum.theirs + "^" + std::to_string(power) + ")", std::pow(a.sum.value, power), {}, {}}, Binding::power, false, a.exact};
  }

  Bound rooted(int depth) {
    Bound a = any(depth - 1);
    while (a.sum.value < 1e-6) a = any(depth - 1);
    bool bare = a.binding == Binding::atom && !a.standard_form && random_.chance(50);
    std::string inside = bare ? a.sum.ours : "(" + a.sum.ours + ")";
    return {{(random_.chance(80) ? "\u221A" : "square root of ") + inside, "sqrt(" + a.sum.theirs + ")", std::sqrt(a.sum.value), {}, {}}, Binding::power, false, a.exact};
  }

  Bound trigonometric() {
    static const char* const kNames[] = {"sin", "cos", "tan"};
    static const char* const kBetween[] = {" ", "", "("};
    std::size_t which = random_.below(3);
    bool inverse = random_.chance(30);
    double x = inverse ? static_cast<double>(5 + random_.below(90)) / 100.0 : static_cast<double>(2 + random_.below(850)) / 10.0;
    char text[32];
    std::snprintf(text, sizeof text, inverse ? "%.2f" : "%.1f", x);
    static const char* const kInverse[] = {"\u207B\u00B9", "-1", "^-1"};
    std::string between = random_.pick(kBetween);
    std::string behind = between == "(" ? ")" : "";
    if (inverse && between.empty()) between = " ";
    std::string name = std::string(kNames[which]) + (inverse ? random_.pick(kInverse) : "");
    constexpr double kTurn = 3.14159265358979323846 / 180.0;
    double value = 0.0;
    if (which == 0) value = inverse ? std::asin(x) / kTurn : std::sin(x * kTurn);
    if (which == 1) value = inverse ? std::acos(x) / kTurn : std::cos(x * kTurn);
    if (which == 2) value = inverse ? std::atan(x) / kTurn : std::tan(x * kTurn);
    return {{name + between + text + behind, (inverse ? "a" : "") + std::string(kNames[which]) + "(" + text + ")", value, {}, {}}, Binding::power, false, false};
  }

  Bound negative() {
    Bound a = number();
    return {{"-" + (a.standard_form ? "(" + a.sum.ours + ")" : a.sum.ours), "(-" + a.sum.theirs + ")", -a.sum.value, {}, {}, true}, Binding::sum, false, true};
  }

  Random& random_;
};

// "2.4 N / 6 cm", with the unit that its result is wanted in. Formulas of school physics and chemistry; common
// practice, no source.
struct Shape {
  const char* a;
  char first;  // '*', '/', '+', '-', '2' (times the square of b)
  const char* b;
  char second;  // '*', or ' ' for none
  const char* c;
  const char* result;
};

constexpr Shape kShapes[] = {
    {"m|cm|km|mm", '/', "s|min|h|ms", ' ', "", "m/s|cm/s|km/h|mm/s|ms-1|m s\u207B\u00B9"},
    {"miles|km", '/', "h|min", ' ', "", "mph|km/h|m/s"},
    {"N|kN|mN", '/', "m|cm|mm", ' ', "", "N/m|N/cm|N/mm|N per m"},
    {"g|kg", '/', "cm3|m3|dm3|ml|cm\u00B3", ' ', "", "g/cm3|kg/m3|g/ml|g cm-3"},
    {"N|kN", '/', "m2|cm2|mm\u00B2", ' ', "", "Pa|kPa|N/cm2|N/m2"},
    {"V|mV|kV", '/', "A|mA|\u00B5A", ' ', "", "\u03A9|k\u03A9|ohms"},
    {"V|mV", '/', "\u03A9|k\u03A9", ' ', "", "A|mA|\u00B5A"},
    {"A|mA", '*', "s|min|h", ' ', "", "C|mC"},
    {"A|mA", '*', "\u03A9|k\u03A9", ' ', "", "V|mV"},
    {"V|mV|kV", '*', "A|mA", ' ', "", "W|mW|kW"},
    {"V", '*', "A|mA", '*', "s|min", "J|kJ"},
    {"W|kW|MW", '*', "s|min|h", ' ', "", "J|kJ|kWh|MJ"},
    {"J|kJ|MJ", '/', "s|min|h", ' ', "", "W|kW"},
    {"J|kJ", '/', "C|mC", ' ', "", "V|kV"},
    {"Hz|kHz|MHz", '*', "m|cm|mm", ' ', "", "m/s|cm/s|km/s"},
    {"m/s|cm/s", '/', "Hz|kHz", ' ', "", "m|cm|mm"},
    {"m/s|km/h|cm/s", '*', "s|min|h", ' ', "", "m|km|cm"},
    {"m/s|km/h", '/', "s|min", ' ', "", "m/s2|m/s\u00B2|ms-2"},
    {"kg|g|tonnes", '*', "m/s2|N/kg", ' ', "", "N|kN|mN"},
    {"kg|g", '*', "N/kg", '*', "m|cm|km", "J|kJ|mJ"},
    {"kg|g", '2', "m/s|km/h|cm/s", ' ', "", "J|kJ|mJ"},
    {"N/m|N/cm", '2', "m|cm|mm", ' ', "", "J|mJ"},
    {"N|kN|mN", '*', "m|cm|km", ' ', "", "J|kJ|N m|Nm"},
    {"kg|g", '*', "J/kg\u00B0C|J/(kg \u00B0C)|J/kgK|J/g\u00B0C", '*', "\u00B0C|K", "J|kJ|MJ"},
    {"kg|g", '*', "J/kg|kJ/kg|J/g", ' ', "", "J|kJ"},
    {"mol/dm3|mol dm-3|mol/l", '*', "cm3|dm3|ml|l", ' ', "", "mol|mmol"},
    {"mol|mmol", '/', "dm3|cm3|l", ' ', "", "mol/dm3|mol/cm3"},
    {"g|mg|kg", '/', "dm3|l|cm3", ' ', "", "g/dm3|g/l|kg/m3"},
    {"cm3|dm3|ml", '/', "s|min", ' ', "", "cm3/s|dm3/min|cm3/min"},
    {"\u00B0C", '/', "min|s", ' ', "", "\u00B0C/min|\u00B0C/s"},
    {"m|cm|mm", '*', "m|cm|mm", ' ', "", "m2|cm2|mm2"},
    {"m|cm|mm", '*', "m|cm|mm", '*', "m|cm|mm", "m3|cm3|mm3|dm3"},
    {"cm", '/', "cm", ' ', "", ""},
    {"mm", '/', "mm", ' ', "", ""},
    {"m|cm|mm", '+', "m|cm|mm", ' ', "", "m|cm|mm"},
    {"m|cm|mm", '-', "m|cm|mm", ' ', "", "m|cm|mm"},
    {"kg|g", '+', "kg|g", ' ', "", "kg|g"},
    {"s|min", '+', "s|min", ' ', "", "s|min"},
    {"V|mV", '-', "V|mV", ' ', "", "V|mV"},
    {"J|kJ", '+', "J|kJ", ' ', "", "J|kJ"},
};

// A unit in the language of qalc.
inline std::string for_qalc(const std::string& unit) {
  struct Pair {
    const char* ours;
    const char* theirs;
  };
  static constexpr Pair kPairs[] = {
      {"ms-1", "m/s"}, {"m s\u207B\u00B9", "m/s"}, {"N per m", "N/m"}, {"cm3", "cm^3"}, {"cm\u00B3", "cm^3"}, {"m3", "m^3"}, {"dm3", "dm^3"}, {"mm3", "mm^3"}, {"m2", "m^2"}, {"cm2", "cm^2"},
      {"mm2", "mm^2"}, {"mm\u00B2", "mm^2"}, {"g/cm3", "g/cm^3"}, {"kg/m3", "kg/m^3"}, {"g cm-3", "g/cm^3"}, {"N/cm2", "N/cm^2"}, {"N/m2", "N/m^2"}, {"\u00B5A", "microampere"}, {"\u03A9", "ohm"},
      {"k\u03A9", "kiloohm"}, {"ohms", "ohm"}, {"kWh", "kW*hour"}, {"m/s2", "m/s^2"}, {"m/s\u00B2", "m/s^2"}, {"ms-2", "m/s^2"}, {"tonnes", "tonne"}, {"N m", "N*m"}, {"Nm", "N*m"}, {"J/kg\u00B0C", "J/(kg*K)"},
      {"J/(kg \u00B0C)", "J/(kg*K)"}, {"J/kgK", "J/(kg*K)"}, {"J/g\u00B0C", "J/(g*K)"}, {"\u00B0C", "K"}, {"mol/dm3", "mol/dm^3"}, {"mol dm-3", "mol/dm^3"}, {"mol/l", "mol/L"}, {"mol/cm3", "mol/cm^3"},
      {"g/dm3", "g/dm^3"}, {"g/l", "g/L"}, {"l", "L"}, {"ml", "mL"}, {"g/ml", "g/mL"}, {"cm3/s", "cm^3/s"}, {"dm3/min", "dm^3/min"}, {"cm3/min", "cm^3/min"}, {"\u00B0C/min", "K/min"}, {"\u00B0C/s", "K/s"},
      {"h", "hour"}, {"km/h", "km/hour"}, {"mph", "mile/hour"}, {"miles", "mile"}, {"", "1"},
  };
  for (const Pair& pair : kPairs) {
    if (unit == pair.ours) return pair.theirs;
  }
  return unit;
}

inline Sum with_unit(Random& random, const char* units) {
  Sum out = reading(random);
  std::string unit = random.pick_word(units);
  std::string gap = random.chance(75) || out.ours.find('e') != std::string::npos ? " " : "";  // nobody writes "4e-2m"
  out.ours += gap + unit;
  out.theirs = "(" + out.theirs + " " + for_qalc(unit) + ")";
  return out;
}

// The value of such a sum is not known here: `value` is 1.
inline Sum shaped(Random& random) {
  const Shape& shape = random.pick(kShapes);
  static const char* const kTimes[] = {" \u00D7 ", " x ", " * ", " times "};
  static const char* const kDivide[] = {" / ", " \u00F7 ", " divided by ", " / "};
  Sum a = with_unit(random, shape.a);
  Sum b = with_unit(random, shape.b);
  Sum out;
  std::string sign = shape.first == '/' ? random.pick(kDivide) : shape.first == '*' || shape.first == '2' ? random.pick(kTimes) : std::string(" ") + shape.first + " ";
  if (shape.first == '2') {
    out.ours = (random.chance(50) ? "0.5" : "\u00BD") + std::string(random.pick(kTimes)) + a.ours + sign + "(" + b.ours + ")" + (random.chance(50) ? "\u00B2" : "^2");
    out.theirs = "0.5*" + a.theirs + "*" + b.theirs + "^2";
  } else {
    out.ours = a.ours + sign + b.ours;
    out.theirs = a.theirs + shape.first + b.theirs;
  }
  if (shape.second == '*') {
    Sum c = with_unit(random, shape.c);
    out.ours += random.pick(kTimes) + c.ours;
    out.theirs += "*" + c.theirs;
  }
  out.unit = random.pick_word(shape.result);
  out.their_unit = for_qalc(out.unit);
  out.value = 1.0;
  return out;
}

}  // namespace retort::test
