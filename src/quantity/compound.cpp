#include "quantity/compound.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <vector>

#include "quantity/unit_table.h"

namespace retort {
namespace {

constexpr std::size_t kLongest = 64;   // bytes of one unit
constexpr std::size_t kMostParts = 6;  // simple units of one unit
constexpr int kHighestPower = 9;

struct Part {
  PrefixedUnit unit;
  int power = 1;
};

bool letter(unsigned char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool digit(unsigned char c) {
  return c >= '0' && c <= '9';
}

// Marks of several bytes that stand for one letter of a unit.
struct Mark {
  std::string_view bytes;
  std::string_view stands_for;
};
constexpr Mark kMarks[] = {
    {"\u00B0", "\u00B0"}, {"\u00BA", "\u00B0"}, {"\u02DA", "\u00B0"}, {"\u2103", "\u00B0C"}, {"\u03A9", "\u03A9"},
    {"\u2126", "\u03A9"}, {"\u03C9", "\u03A9"}, {"\u00B5", "\u00B5"}, {"\u03BC", "\u00B5"},  {"%", "%"},
};
constexpr std::string_view kSuperscripts[] = {"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074", "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
constexpr std::string_view kMinusSigns[] = {"-", "\u2212", "\u2013", "\u207B"};
constexpr std::string_view kDots[] = {"\u00B7", "\u22C5", "*", "."};
constexpr std::string_view kSpaces[] = {" ", "\u00A0", "\u2009", "\u202F"};

// Where the text stands after each byte of a run of letters.
class Ends {
 public:
  void clear(std::size_t at) {
    at_[0] = at;
    size_ = 1;
  }
  void push_back(std::size_t at) { at_[size_ < at_.size() ? size_++ : size_ - 1] = at; }
  [[nodiscard]] std::size_t back() const { return at_[size_ - 1]; }

 private:
  std::array<std::size_t, 2 * kLongest + 1> at_{};
  std::size_t size_ = 1;
};

class UnitParser {
 public:
  explicit UnitParser(std::string_view text) : text_(text.substr(0, kLongest)) {}

  std::optional<UnitReading> run() {
    if (!factor(false)) return std::nullopt;
    std::size_t end = at_;
    while (parts_.size() < kMostParts && more()) end = at_;
    at_ = end;
    return finish();
  }

 private:
  std::string_view rest(std::size_t at) const { return at < text_.size() ? text_.substr(at) : std::string_view{}; }
  template <std::size_t N>
  std::size_t one_of(const std::string_view (&list)[N], std::size_t at) const {
    for (std::string_view item : list) {
      if (rest(at).starts_with(item)) return item.size();
    }
    return 0;
  }
  std::size_t space(std::size_t at) const { return one_of(kSpaces, at); }
  bool word(std::string_view word, std::size_t& at) const {
    if (!rest(at).starts_with(word)) return false;
    if (at + word.size() < text_.size() && letter(static_cast<unsigned char>(text_[at + word.size()]))) return false;
    at += word.size();
    return true;
  }

  // Letters and marks from `at`, with marks in their usual form; `ends[i]` is where the text stands after i bytes of it.
  std::string run_of_letters(std::size_t at, Ends& ends) const {
    std::string out;
    ends.clear(at);
    while (at < text_.size()) {
      if (letter(static_cast<unsigned char>(text_[at]))) {
        out += text_[at++];
        ends.push_back(at);
        continue;
      }
      std::size_t length = 0;
      for (const Mark& mark : kMarks) {
        if (!rest(at).starts_with(mark.bytes)) continue;
        length = mark.bytes.size();
        out += mark.stands_for;
        for (std::size_t i = 0; i < mark.stands_for.size(); ++i) ends.push_back(at + length);
        break;
      }
      if (length == 0) break;
      at += length;
    }
    return out;
  }

  // A power at `at`, moved behind it: "²", "^2", "-1", "⁻¹", "2", " squared"; 1 if there is none.
  int power(std::size_t& at) const {
    std::size_t i = at;
    bool raised = i < text_.size() && text_[i] == '^';
    if (raised) ++i;
    bool bracket = raised && rest(i).starts_with("(");
    if (bracket) ++i;
    bool negative = false;
    if (std::size_t n = one_of(kMinusSigns, i)) {
      negative = true;
      i += n;
    }
    int value = 0;
    std::size_t digits = 0;
    for (; digits < 2; ++digits) {
      if (i < text_.size() && digit(static_cast<unsigned char>(text_[i]))) {
        value = value * 10 + (text_[i++] - '0');
        continue;
      }
      std::size_t n = 0;
      for (std::size_t d = 0; d < 10 && n == 0; ++d) {
        if (rest(i).starts_with(kSuperscripts[d])) {
          n = kSuperscripts[d].size();
          value = value * 10 + static_cast<int>(d);
        }
      }
      if (n == 0) break;
      i += n;
    }
    bool goes_on = i < text_.size() && (digit(static_cast<unsigned char>(text_[i])) ||
                                        (text_[i] == '.' && i + 1 < text_.size() && digit(static_cast<unsigned char>(text_[i + 1]))));
    if (bracket && rest(i).starts_with(")")) ++i;
    if (digits == 1 && value >= 1 && value <= kHighestPower && !goes_on) {
      at = i;
      return negative ? -value : value;
    }
    std::size_t after = at + space(at);
    if (after > at && (word("squared", after) || word("sqaured", after))) return at = after, 2;
    if (after > at && word("cubed", after)) return at = after, 3;
    return 1;
  }

  bool ends_here(std::size_t at) const { return at >= text_.size() || !letter(static_cast<unsigned char>(text_[at])); }

  // One simple unit with its power, or two written as one ("ms-1", "Nm", "kg°C").
  bool factor(bool below) {
    std::size_t at = at_;
    int area = 1;
    if (word("square", at) || word("sq", at)) area = 2;
    if (area == 1 && word("cubic", at)) area = 3;
    if (area > 1) {
      std::size_t n = space(at);
      if (n == 0) return false;
      at += n;
    }
    Ends ends;
    std::string run = run_of_letters(at, ends);
    if (run.empty()) return false;
    if (is_c(run) && of_a_mass() && (below || per_power(ends.back()))) run = "\u00B0C";  // "J/kg C": a temperature; "J/C" is per charge
    if (whole(run, ends.back(), area, below)) return true;
    return area == 1 && (split(run, ends, below) || degree_word(run, ends.back(), below));
  }

  static bool is_c(std::string_view run) { return run == "C" || run == "c"; }
  // Whether a negative power follows: "C-1".
  bool per_power(std::size_t at) const { return power(at) < 0; }

  bool of_a_mass() const {
    return std::any_of(parts_.begin(), parts_.end(), [](const Part& part) { return part.unit.unit->dimension == dimension::kMass; });
  }

  bool whole(const std::string& run, std::size_t end, int area, bool below) {
    std::optional<PrefixedUnit> unit = look_up_unit(run);
    if (!unit || !ends_here(end)) return false;
    std::size_t at = end;
    int n = power(at);
    // "ms-1" and "cms-1" are metres per second
    if (n < 0 && run.size() > 1 && run.back() == 's') return false;
    if (unit->unit->symbol == "\u00B0") return degree(*unit, at, below);
    add(*unit, n * area * unit->power, below);
    at_ = at;
    return true;
  }

  // "° C", "degrees Celsius", "deg C"
  bool degree(const PrefixedUnit& angle, std::size_t at, bool below) {
    std::size_t after = at;
    after += space(after);
    Ends ends;
    std::string next = run_of_letters(after, ends);
    bool celsius = next == "C" || next == "c";
    if (!celsius && next.size() > 3) {
      auto unit = look_up_unit(next);
      celsius = unit && unit->unit->celsius;
    }
    add(celsius ? *look_up_symbol("\u00B0C") : angle, 1, below);
    at_ = celsius ? ends.back() : at;
    return true;
  }
  bool degree_word(const std::string& run, std::size_t end, bool below) {
    return (run == "deg" || run == "degs") && ends_here(end) && degree(*look_up_symbol("\u00B0"), end, below);
  }

  bool split(const std::string& run, const Ends& ends, bool below) {
    if (run.size() > 8 || !ends_here(ends.back())) return false;
    for (std::size_t cut = run.size() - 1; cut > 0; --cut) {
      auto first = look_up_symbol(run.substr(0, cut));
      auto second = look_up_symbol(run.substr(cut));
      // "J/kgC", "j/KGc": pupils' capitals are those of the keyboard, and a C after a mass is a temperature
      if (below && is_c(run.substr(cut))) {
        if (!first) first = look_up_unit(run.substr(0, cut));
        if (first && first->unit->dimension == dimension::kMass) second = look_up_symbol("\u00B0C");
      }
      if (!first || !second) continue;
      std::size_t at = ends.back();
      int n = power(at);
      bool momentum = run.substr(0, cut) == "kg" && run.substr(cut) == "m" && rest(at).starts_with("/");
      bool moment = run.substr(0, cut) == "N" && second->unit->symbol == "m";
      bool joined = n < 0 || below || momentum || moment || (run.substr(0, cut) == "kW" && run.substr(cut) == "h");
      if (!joined) continue;
      add(*first, 1, below);
      add(*second, n, below);
      at_ = at;
      return true;
    }
    return false;
  }

  // Another factor: "/ s", " per second", " s⁻¹", "·m".
  bool more() {
    std::size_t at = at_;
    std::size_t gap = space(at);
    if (rest(at + gap).starts_with("/")) {
      at += gap + 1;
      at += space(at);
      bool bracket = rest(at).starts_with("(");
      at_ = bracket ? at + 1 : at;
      if (!factor(true)) return false;
      while (parts_.size() < kMostParts && product(true)) {
      }
      if (bracket && rest(at_).starts_with(")")) ++at_;
      return true;
    }
    std::size_t after = at + gap;
    if (gap > 0 && (word("per", after) || word("a", after) || word("p", after)) && space(after) > 0) {
      bool per = rest(at + gap).starts_with("per");
      at_ = after + space(after);
      if (!per && !rest(at_).starts_with("sec")) return false;
      return factor(true);
    }
    return product(false);
  }

  // "kg m-3", "N·m", "kg°C" after a slash
  bool product(bool below) {
    std::size_t at = at_;
    std::size_t saved = parts_.size();
    std::size_t gap = one_of(kDots, at);
    bool dot = gap > 0;
    if (!dot) gap = space(at);
    at_ = at + gap;
    bool glued = gap == 0 && rest(at_).starts_with("\u00B0");
    if ((gap > 0 || glued) && factor(below)) {
      bool raised = parts_.back().power < 0;
      std::string before = parts_[saved - 1].unit.symbol();
      bool length = parts_.back().unit.unit->symbol == "m";
      bool known =
          (before == "N" && length) || (before == "kW" && parts_.back().unit.symbol() == "h") || (before == "kg" && length && per_second_behind());
      bool celsius = parts_.back().unit.unit->dimension == dimension::kTemperature && below;
      if (raised || known || celsius || dot || glued) {
        if (!below || parts_.back().power < 0 || celsius || dot || glued) return true;
      }
    }
    parts_.resize(saved);
    at_ = at;
    return false;
  }

  // The rest of a momentum: "/s", " s-1"
  bool per_second_behind() const {
    if (rest(at_).starts_with("/")) return true;
    std::size_t at = at_ + space(at_);
    if (at == at_ || !rest(at).starts_with("s")) return false;
    return rest(at + 1).starts_with("^-") || one_of(kMinusSigns, at + 1) > 0;
  }

  void add(const PrefixedUnit& unit, int power, bool below) {
    parts_.push_back({unit, below ? -power : power});
    if (unit.per != nullptr) parts_.push_back({PrefixedUnit{unit.per}, below ? 1 : -1});
  }

  std::optional<UnitReading> finish() const;

  std::string_view text_;
  std::size_t at_ = 0;
  std::vector<Part> parts_;
};

std::string raised(int power) {
  if (power == 1) return {};
  return std::string(kSuperscripts[static_cast<std::size_t>(power % 10)]);
}

// "N/m", "J/(kg °C)", "1/s"
std::string written(const std::vector<std::pair<std::string, int>>& parts) {
  std::string above;
  std::string below;
  std::size_t divisors = 0;
  for (const auto& [symbol, power] : parts) {
    if (power == 0) continue;
    std::string& side = power > 0 ? above : below;
    if (!side.empty()) side += ' ';
    side += symbol + raised(power > 0 ? power : -power);
    divisors += power < 0 ? 1U : 0U;
  }
  if (below.empty()) return above;
  if (above.empty()) above = "1";
  return divisors > 1 ? above + "/(" + below + ")" : above + "/" + below;
}

void join(std::vector<std::pair<std::string, int>>& parts, const std::string& symbol, int power) {
  for (auto& [known, n] : parts) {
    if (known == symbol) {
      n += power;
      return;
    }
  }
  parts.emplace_back(symbol, power);
}

std::optional<UnitReading> UnitParser::finish() const {
  UnitReading out;
  out.length = at_;
  std::vector<std::pair<std::string, int>> names;
  for (const Part& part : parts_) {
    if (part.power > kHighestPower || part.power < -kHighestPower) return std::nullopt;
    out.unit.dimension = out.unit.dimension * part.unit.unit->dimension.power(part.power);
    auto scale = times_power(out.unit.scale, part.unit.scale(), part.power);
    if (!scale) return std::nullopt;
    out.unit.scale = *scale;
    out.unit.as_written = out.unit.as_written && part.unit.as_written;
    join(names, part.unit.symbol(), part.power);
  }
  out.unit.symbol = written(names);
  out.unit.celsius = parts_.size() == 1 && parts_[0].unit.unit->celsius && parts_[0].power == 1;
  return out;
}

// The simple units of a symbol that this file has written.
std::vector<std::pair<std::string, int>> parts_of(const std::string& symbol) {
  std::vector<std::pair<std::string, int>> out;
  int sign = 1;
  std::string name;
  int power = 1;
  auto flush = [&] {
    if (!name.empty() && name != "1") join(out, name, sign * power);
    name.clear();
    power = 1;
  };
  for (std::size_t i = 0; i < symbol.size();) {
    std::size_t n = 0;
    for (std::size_t d = 2; d < 10 && n == 0; ++d) {
      if (symbol.compare(i, kSuperscripts[d].size(), kSuperscripts[d]) == 0) {
        power = static_cast<int>(d);
        n = kSuperscripts[d].size();
      }
    }
    if (n > 0) {
      i += n;
      continue;
    }
    char c = symbol[i++];
    if (c == '/') {
      flush();
      sign = -1;
    } else if (c == ' ' || c == '(' || c == ')') {
      flush();
    } else {
      name += c;
    }
  }
  flush();
  return out;
}

CompoundUnit combined(const CompoundUnit& a, const CompoundUnit& b, int power) {
  CompoundUnit out;
  out.dimension = a.dimension * b.dimension.power(power);
  if (auto scale = times_power(a.scale, b.scale, power)) out.scale = *scale;
  auto parts = parts_of(a.symbol);
  for (const auto& [symbol, n] : parts_of(b.symbol)) join(parts, symbol, power * n);
  out.symbol = written(parts);
  out.as_written = a.as_written && b.as_written;
  return out;
}

bool multiply(std::int64_t& a, std::int64_t b) {
  return !__builtin_mul_overflow(a, b, &a);
}

// Tens go to the exponent, so that equal scales are equal field by field.
void reduce(Scale& scale) {
  std::int64_t common = std::gcd(scale.numerator, scale.denominator);
  scale.numerator /= common;
  scale.denominator /= common;
  for (; scale.numerator % 10 == 0; scale.numerator /= 10) ++scale.exponent;
  for (; scale.denominator % 10 == 0; scale.denominator /= 10) --scale.exponent;
}

}  // namespace

double Scale::value() const {
  return static_cast<double>(numerator) / static_cast<double>(denominator) * std::pow(10.0, exponent);
}

std::optional<Scale> times_power(const Scale& a, const Scale& b, int power) {
  Scale out = a;
  int n = power < 0 ? -power : power;
  if (n > kHighestPower) return std::nullopt;
  for (int i = 0; i < n; ++i) {
    bool fits =
        multiply(out.numerator, power > 0 ? b.numerator : b.denominator) && multiply(out.denominator, power > 0 ? b.denominator : b.numerator);
    if (!fits) return std::nullopt;
    out.exponent += power > 0 ? b.exponent : -b.exponent;
    reduce(out);
  }
  reduce(out);
  return out;
}

std::optional<UnitReading> read_unit_prefix(std::string_view text) {
  if (text.empty()) return std::nullopt;
  return UnitParser(text).run();
}

std::optional<CompoundUnit> read_unit(std::string_view text) {
  std::optional<UnitReading> reading = read_unit_prefix(text);
  if (!reading || reading->length != text.size()) return std::nullopt;
  return reading->unit;
}

CompoundUnit unit_quotient(const CompoundUnit& a, const CompoundUnit& b) {
  return combined(a, b, -1);
}
CompoundUnit unit_product(const CompoundUnit& a, const CompoundUnit& b) {
  return combined(a, b, 1);
}

}  // namespace retort
