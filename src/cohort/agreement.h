// How far two markers agree on the same answers.
#pragma once
#include <optional>

#include "cohort/crosstab.h"
#include "cohort/proportion.h"

namespace retort::cohort {

// J. Cohen, "A coefficient of agreement for nominal scales", Educational and Psychological Measurement 20 (1960) 37-46.
// None if there are no answers, or if all marks of both are the same one.
std::optional<double> kappa(const Crosstab& table);

// Weighted by the square of the difference: J. Cohen, "Weighted kappa", Psychological Bulletin 70 (1968) 213-220.
// None as for kappa.
std::optional<double> weighted_kappa(const Crosstab& table);

struct Estimate {
  double value = 0.0;
  std::optional<Interval> interval;  // none if too many of the redrawn piles have no value
};

struct MarkerAgreement {
  Count answers = 0;  // with both marks
  Share exact;
  Share within_one;         // the exact ones among them
  double first_mean = 0.0;  // in marks
  double second_mean = 0.0;
  std::optional<Estimate> kappa;
  std::optional<Estimate> weighted;
};

inline constexpr int kRedraws = 2000;

// The intervals of the kappas are 95 % percentile intervals of the bootstrap (B. Efron and R. J. Tibshirani, "An Introduction
// to the Bootstrap", 1993, chapter 13) over kRedraws piles drawn anew from the table with `seed`.
MarkerAgreement marker_agreement(const Crosstab& table, std::uint64_t seed);

}  // namespace retort::cohort
