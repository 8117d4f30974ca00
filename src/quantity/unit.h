// The closed table of units that pupils write, and what each means in SI base units.
// Closed on purpose: a permissive reader takes "in", "as" and "at" for units.
#pragma once
#include <span>
#include <string_view>

#include "quantity/dimension.h"

namespace retort {

struct Unit {
  std::string_view symbol;     // as it should be written: "cm", "°C"
  std::string_view spellings;  // folded forms that pupils write, parted by spaces
  Dimension dimension;
  double factor = 1.0;         // value in SI base units = value × factor + offset
  double offset = 0.0;
};

// All units, in no order that means anything. Static data.
std::span<const Unit> units();

// The unit for a folded word such as "cm", "newtons" or "mins"; null if there is none.
const Unit* find_unit(std::string_view folded);

// "force" → its dimension; null for a name that is not in the table of quantities.
const Dimension* find_quantity_name(std::string_view name);
// The name of a dimension ("force"), empty if it has none.
std::string_view quantity_name(const Dimension& dimension);

}  // namespace retort
