// The simple units that stand in calculations, looked up by symbol or by name. Static data.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "quantity/compound.h"

namespace retort {

struct PrefixedUnit {
  const SimpleUnit* unit = nullptr;
  const Prefix* prefix = nullptr;   // null for none
  int power = 1;                    // "cc" and "kph" stand for more than one simple unit; see `also`
  const SimpleUnit* per = nullptr;  // the unit it is divided by, if the word says so ("kmh")
  bool as_written = true;           // case and spelling as in the SI

  [[nodiscard]] std::string symbol() const;
  // What it is worth with its prefix, to the power of one.
  [[nodiscard]] Scale scale() const;
};

// "kHz", "cm", "KHZ", "Ω", "newtons", "millilitres"; nothing for any other word. `word` holds letters, ° or %.
std::optional<PrefixedUnit> look_up_unit(std::string_view word);
// By symbol alone and in the right case.
std::optional<PrefixedUnit> look_up_symbol(std::string_view word);

}  // namespace retort
