// Numbers and quantities found in a Document: "1.5 N", "fifteen minutes", "a quarter of an hour",
// "0,98 N", "30, 40 and 50 degrees".
#pragma once
#include <cstdint>
#include <vector>

#include "quantity/unit.h"
#include "text/document.h"

namespace retort {

struct Quantity {
  std::uint32_t first = 0;     // tokens [first, last] of the Document
  std::uint32_t last = 0;
  double value = 0.0;          // as written, in `unit`
  const Unit* unit = nullptr;  // null for a bare number
  bool in_words = false;       // written in words

  [[nodiscard]] Dimension dimension() const { return unit ? unit->dimension : Dimension{}; }
  // In SI base units; a bare number is itself.
  [[nodiscard]] double si() const { return unit ? value * unit->factor + unit->offset : value; }
};

// Appends the quantities of `document` in order. Linear in its length. One in a quotient of units (40 N/m) has a unit without a
// symbol, whose dimension is that of no other.
void find_quantities(const Document& document, std::vector<Quantity>& out);

// Reads one quantity from a short text such as "1.5 N"; false if it is anything else.
bool read_quantity(std::string_view text, Quantity& out);

// The value of a number in digits ("1.5", "1,5", "1,000"); false if it is not finite.
bool read_digits(std::string_view form, double& out);

}  // namespace retort
