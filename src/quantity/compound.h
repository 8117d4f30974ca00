// Units as they stand in calculations: with prefixes, powers and quotients, in the case they are written.
// "m/s", "m s⁻¹", "ms-1", "m/s/s", "N per cm", "J/kg°C", "kΩ", "newtons per metre".
//
// A Scale is exact, so that a conversion adds no error of its own. The plane angle counts as a base
// quantity with the degree as its unit, since pupils' angles are in degrees.
// Factors and prefixes: SI Brochure, 9th edition, tables 2, 4, 7 and 8.
#pragma once
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "quantity/dimension.h"

namespace retort {

// numerator / denominator × 10^exponent
struct Scale {
  std::int64_t numerator = 1;
  std::int64_t denominator = 1;
  std::int32_t exponent = 0;

  [[nodiscard]] double value() const;
  friend bool operator==(const Scale&, const Scale&) = default;
};

// a × b^power in lowest terms; nothing if it no longer fits. |power| ≤ 9.
std::optional<Scale> times_power(const Scale& a, const Scale& b, int power);

struct CompoundUnit {
  Dimension dimension;
  Scale scale;             // value in SI base units (degrees for angles) = value × scale
  std::string symbol;      // as it should be written: "N/m", "J/(kg °C)", "m/s²"
  bool celsius = false;    // a temperature on the Celsius scale, alone: 0 °C is 273.15 K
  bool as_written = true;  // letters in the right case and spelled as in the SI

  friend bool operator==(const CompoundUnit&, const CompoundUnit&) = default;
};

struct UnitReading {
  CompoundUnit unit;
  std::size_t length = 0;  // bytes read
};

// Reads the longest unit at the start of `text` (UTF-8, no space in front); nothing if there is none there.
// Never takes "in", "as", "at" or a word that goes on ("mass", "so") for a unit. Linear in what it reads,
// and it reads at most 64 bytes.
std::optional<UnitReading> read_unit_prefix(std::string_view text);

// The whole of `text` as one unit, such as the heading of a table's column.
std::optional<CompoundUnit> read_unit(std::string_view text);

// a / b and a × b, with the symbol a teacher would write: N and cm → "N/cm"; m/s and s → "m/s²".
CompoundUnit unit_quotient(const CompoundUnit& a, const CompoundUnit& b);
CompoundUnit unit_product(const CompoundUnit& a, const CompoundUnit& b);

// One simple unit of the table: its symbol, what it is, and the prefixes that go with it.
struct SimpleUnit {
  std::string_view symbol;
  std::string_view names;  // folded: "metre metres meter meters"
  Dimension dimension;
  Scale scale;
  std::string_view prefixes;  // symbols of those that schools use with it
  bool celsius = false;
};
std::span<const SimpleUnit> simple_units();

struct Prefix {
  std::string_view symbol;
  std::string_view name;
  std::int32_t exponent = 0;
};
std::span<const Prefix> prefixes();

}  // namespace retort
