#include "quantity/unit_table.h"

#include <array>
#include <unordered_map>

#include "quantity/unit.h"

namespace retort {
namespace {

using namespace dimension;

constexpr Dimension kCharge = kCurrent * kTime;
constexpr Dimension kCapacitance = kCharge / kVoltage;
constexpr Dimension kField = kForce / (kCurrent * kLength);

// SI Brochure, 9th edition, table 7.
constexpr std::array kPrefixes = {
    Prefix{"T", "tera", 12},  Prefix{"G", "giga", 9},        Prefix{"M", "mega", 6},  Prefix{"k", "kilo", 3},
    Prefix{"h", "hecto", 2},  Prefix{"da", "deca", 1},       Prefix{"d", "deci", -1}, Prefix{"c", "centi", -2},
    Prefix{"m", "milli", -3}, Prefix{"\u00B5", "micro", -6}, Prefix{"n", "nano", -9}, Prefix{"p", "pico", -12},
};

// SI Brochure, 9th edition, tables 2, 4 and 8; tonne, litre, hour, minute and day: table 8; mile: 1609.344 m
// (NIST SP 811, appendix B). The angle's base unit is the degree (see compound.h).
constexpr std::array kSimple = {
    SimpleUnit{"m", "metre metres meter meters", kLength, {}, "kdcm\u00B5n"},
    SimpleUnit{"g", "gram grams gramme grammes", kMass, {1, 1, -3}, "km\u00B5n"},
    SimpleUnit{"tonne", "tonne tonnes", kMass, {1, 1, 3}, ""},
    SimpleUnit{"s", "second seconds", kTime, {}, "m\u00B5n"},
    SimpleUnit{"min", "minute minutes", kTime, {60, 1, 0}, ""},
    SimpleUnit{"h", "hour hours", kTime, {3600, 1, 0}, ""},
    SimpleUnit{"day", "day days", kTime, {86400, 1, 0}, ""},
    SimpleUnit{"A", "amp amps ampere amperes", kCurrent, {}, "km\u00B5n"},
    SimpleUnit{"K", "kelvin kelvins", kTemperature, {}, "m"},
    SimpleUnit{"\u00B0C", "celsius", kTemperature, {}, "", true},
    SimpleUnit{"mol", "mole moles", kAmount, {}, "km\u00B5n"},
    SimpleUnit{"cd", "candela candelas", {0, 0, 0, 0, 0, 0, 1}, {}, ""},
    SimpleUnit{"\u00B0", "degree degrees", kAngle, {}, ""},
    SimpleUnit{"Hz", "hertz", kFrequency, {}, "kMGT"},
    SimpleUnit{"N", "newton newtons", kForce, {}, "kMm"},
    SimpleUnit{"J", "joule joules", kEnergy, {}, "kMGm\u00B5"},
    SimpleUnit{"eV", "electronvolt electronvolts", kEnergy, {1602176634, 1, -28}, "kMG"},
    SimpleUnit{"W", "watt watts", kPower, {}, "kMGm\u00B5"},
    SimpleUnit{"V", "volt volts", kVoltage, {}, "kMm\u00B5"},
    SimpleUnit{"\u03A9", "ohm ohms", kResistance, {}, "kMm"},
    SimpleUnit{"C", "coulomb coulombs", kCharge, {}, "m\u00B5n"},
    SimpleUnit{"F", "farad farads", kCapacitance, {}, "m\u00B5np"},
    SimpleUnit{"T", "tesla teslas", kField, {}, "m\u00B5"},
    SimpleUnit{"Pa", "pascal pascals", kPressure, {}, "khMG"},
    SimpleUnit{"bar", "bar bars", kPressure, {1, 1, 5}, "m"},
    SimpleUnit{"l", "litre litres liter liters", kVolume, {1, 1, -3}, "kdcm\u00B5"},
    SimpleUnit{"mile", "mile miles", kLength, {1609344, 1, -3}, ""},
    SimpleUnit{"%", "percent", kNumber, {1, 1, -2}, ""},
};

struct Short {
  std::string_view word;
  std::string_view unit;  // symbol with prefix
  int power;
  std::string_view per;  // symbol
};

// Words of the trade that stand for more than one simple unit, or for one by another name.
constexpr std::array kShort = {
    Short{"cc", "cm", 3, {}},   Short{"ccs", "cm", 3, {}},       Short{"mph", "mile", 1, "h"},  Short{"kph", "km", 1, "h"},
    Short{"kmh", "km", 1, "h"}, Short{"degc", "\u00B0C", 1, {}}, Short{"oc", "\u00B0C", 1, {}}, Short{"centigrade", "\u00B0C", 1, {}},
};

// Letters that pupils write large or small without meaning another unit; "a" alone is a word, "M" alone could
// be metres or moles per litre, and "T", "d" and "h" in front are rare.
constexpr std::string_view kNeverFolded[] = {"a", "T", "f", "t", "C", "c", "At", "as", "As", "AT", "Nm"};

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
  return out;
}

class Table {
 public:
  Table() {
    for (const SimpleUnit& unit : kSimple) {
      symbols_.emplace(unit.symbol, PrefixedUnit{&unit});
      for (const Prefix& prefix : kPrefixes) {
        if (unit.prefixes.find(prefix.symbol) == std::string_view::npos) continue;
        symbols_.emplace(std::string(prefix.symbol) + std::string(unit.symbol), PrefixedUnit{&unit, &prefix});
      }
      add_names(unit);
    }
    for (const auto& [symbol, unit] : symbols_) fold(symbol, unit);
    for (const char* symbol : {"m", "g", "s", "mm", "cm", "km", "kg", "mg", "ml", "MHz", "kHz", "mA", "mV", "kW", "kJ", "kN", "mW", "mJ"}) {
      PrefixedUnit unit = symbols_.at(symbol);  // what pupils mean by it, whatever the case
      unit.as_written = false;
      names_[lower(symbol)] = unit;
    }
    for (const Short& entry : kShort) {
      PrefixedUnit unit = symbols_.at(std::string(entry.unit));
      unit.power = entry.power;
      unit.as_written = false;
      if (!entry.per.empty()) unit.per = symbols_.at(std::string(entry.per)).unit;
      names_[std::string(entry.word)] = unit;
    }
    add_spellings();
    for (const char* symbol : {"m", "g", "l", "A", "F", "V"}) {  // a µ that no keyboard has
      PrefixedUnit unit = symbols_.at("\u00B5" + std::string(symbol));
      unit.as_written = false;
      names_.emplace("u" + lower(symbol), unit);
    }
  }

  [[nodiscard]] std::optional<PrefixedUnit> symbol(std::string_view word) const {
    auto found = symbols_.find(std::string(word));
    if (found == symbols_.end()) return std::nullopt;
    return found->second;
  }
  [[nodiscard]] std::optional<PrefixedUnit> any(std::string_view word) const {
    if (auto exact = symbol(word)) return exact;
    for (std::string_view never : kNeverFolded) {
      if (word == never) return std::nullopt;
    }
    auto found = names_.find(lower(word));
    if (found == names_.end()) return std::nullopt;
    return found->second;
  }

 private:
  void fold(const std::string& symbol, PrefixedUnit unit) {
    unit.as_written = false;
    names_.emplace(lower(symbol), unit);
  }
  void add_names(const SimpleUnit& unit) {
    std::string_view rest = unit.names;
    while (!rest.empty()) {
      std::size_t end = rest.find(' ');
      std::string name(rest.substr(0, end));
      rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
      names_.emplace(name, PrefixedUnit{&unit});
      for (const Prefix& prefix : kPrefixes) {
        if (unit.prefixes.find(prefix.symbol) != std::string_view::npos)
          names_.emplace(std::string(prefix.name) + name, PrefixedUnit{&unit, &prefix});
      }
    }
  }
  // The spellings that pupils use, from the table of units.
  void add_spellings() {
    for (const Unit& unit : units()) {
      auto known = symbols_.find(std::string(unit.symbol));
      if (known == symbols_.end()) continue;
      PrefixedUnit entry = known->second;
      entry.as_written = false;
      std::string_view rest = unit.spellings;
      while (!rest.empty()) {
        std::size_t end = rest.find(' ');
        names_.emplace(std::string(rest.substr(0, end)), entry);
        rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
      }
    }
  }

  std::unordered_map<std::string, PrefixedUnit> symbols_;
  std::unordered_map<std::string, PrefixedUnit> names_;  // folded
};

const Table& table() {
  static const Table table;
  return table;
}

}  // namespace

std::string PrefixedUnit::symbol() const {
  return (prefix != nullptr ? std::string(prefix->symbol) : std::string()) + std::string(unit->symbol);
}

Scale PrefixedUnit::scale() const {
  Scale out = unit->scale;
  if (prefix != nullptr) out.exponent += prefix->exponent;
  return out;
}

std::optional<PrefixedUnit> look_up_unit(std::string_view word) {
  return table().any(word);
}
std::optional<PrefixedUnit> look_up_symbol(std::string_view word) {
  return table().symbol(word);
}

std::span<const SimpleUnit> simple_units() {
  return kSimple;
}
std::span<const Prefix> prefixes() {
  return kPrefixes;
}

}  // namespace retort
