// Student's t for whole numbers of degrees of freedom, and how likely few runs of signs are.
#pragma once
#include <cstddef>

namespace retort::results {

// The chance that |T| is greater than |t|. Formulas 26.7.3 and 26.7.4 of M. Abramowitz and I. A. Stegun, "Handbook of
// Mathematical Functions" (1964); beyond 1000 degrees of freedom as for 1000. Requires freedom >= 1.
double student_tail(double t, std::size_t freedom);

// The t whose student_tail is `chance`. Requires 0 < chance < 1, freedom >= 1.
double student_quantile(double chance, std::size_t freedom);

// The chance of `runs` runs or fewer when `above` points above a line and `below` points below it come in any order.
// A. Wald and J. Wolfowitz, Annals of Mathematical Statistics 11 (1940) 147-162. One if either is 0.
double runs_tail(std::size_t runs, std::size_t above, std::size_t below);

}  // namespace retort::results
