// Least squares for any linear model y = b0·c0(x) + b1·c1(x) + …: the columns hold what each parameter is multiplied with,
// so that a straight line has the columns 1 and x, a parabola 1, x and x².
//
// By Householder QR (G. H. Golub, "Numerical methods for solving linear least squares problems", Numerische Mathematik 7
// (1965) 206-216) in Twofold arithmetic. Standard errors and covariance from s²(RᵀR)⁻¹, s² the residual sum of squares
// over the degrees of freedom. Time grows as points × parameters².
#pragma once
#include <optional>
#include <vector>

#include "results/twofold.h"

namespace retort::results {

struct Fit {
  std::vector<Twofold> parameters;
  std::vector<Twofold> standard_errors;           // zero without degrees of freedom
  std::vector<Twofold> unit_errors;               // standard errors there would be with a residual sd of 1
  std::vector<std::vector<Twofold>> covariance;   // zero without degrees of freedom
  std::vector<Twofold> residuals;                 // y - fitted, in the order of the points
  Twofold residual_sum;                           // of squares
  Twofold residual_sd;                            // zero without degrees of freedom
  std::optional<Twofold> r_squared;               // none if y does not vary
  std::size_t freedom = 0;                        // degrees of freedom: points - parameters
};

using Column = std::vector<Twofold>;

// `constant`: whether the model has a constant term, which R² is taken about; without one it is taken about zero.
// Nothing if there are fewer points than parameters or the columns do not fix the parameters.
// Requires every column to be as long as `y`.
std::optional<Fit> least_squares(const std::vector<Column>& columns, const Column& y, bool constant);

// y = b0 + b1·x + … + b_degree·x^degree.
std::optional<Fit> fit_polynomial(const Column& x, const Column& y, std::size_t degree);

}  // namespace retort::results
