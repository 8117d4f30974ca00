// Whether a stated number is a value rounded, and how a correct value is written.
#pragma once
#include "calc/expression.h"

namespace retort::calc {

// A number that the text states as a result.
struct Stated {
  Decimal decimal;
  std::optional<CompoundUnit> unit;
  Span source;  // with its unit
  Span digits;
  std::size_t token = 0;
};

// Whether `stated` is `value` rounded to as many figures as are stated. Zeros at the end of a whole number
// may be figures or not, as long as two figures are left. The sign is not looked at.
bool is_rounded(const Exact& value, bool rough, const Decimal& stated);

// Whether it is `value` rounded the wrong way or cut off at that figure, with something there to round.
bool is_badly_rounded(const Exact& value, bool rough, const Decimal& stated);

// The power n ≠ 0 with stated × 10^n = value, rounded; 0 if there is none up to twelve.
int power_apart(const Exact& value, bool rough, const Decimal& stated);

// `value` with sensible figures: as many as the least precise of its inputs has, two to four, never more
// than it needs.
std::string sensible(const Exact& value, const Expression& from, const Decimal* stated, const std::string& unit);

}  // namespace retort::calc
