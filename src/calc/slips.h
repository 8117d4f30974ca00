// Looks for the slip that turns a correct expression into the number a pupil wrote.
#pragma once
#include <optional>
#include <utility>
#include <vector>

#include "calc/calculation.h"
#include "calc/compare.h"

namespace retort::calc {

struct Altered {
  Slip slip;
  Expression expression;
  bool whole = false;  // a square or root of the whole
};

// All expressions that one slip makes of `expression`: a division upside down, another operation, a square
// or a half left out or put in. Its size bounds their number.
std::vector<Altered> altered(const Expression& expression);

// The likeliest slips by which `stated` comes out of `expression` (in `scale` of the stated unit), empty if
// none does. `angles`: whether sines are in it.
std::vector<Slip> find_slips(const Expression& expression, const Exact& scale, Scaling scaling, const Decimal& stated, bool percent = false);

// How many terms are added under a division by a whole number, as in a mean; 0 if it is none.
// `divisor` is set to that whole number and `sum` to the node of the sum.
std::size_t terms_of_mean(const Expression& expression, long& divisor, int& sum);

}  // namespace retort::calc
