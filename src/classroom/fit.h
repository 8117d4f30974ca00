// Whether a draft belongs to another practical than the one it was handed in for.
//
// How well a draft fits a rubric is the share of its steps that are present, with a vague one as half. Another rubric fits
// clearly better if its share is at least twice as high and at least a fifth of all steps higher. On the 800 labelled answers
// of corpus/labelled.jsonl that calls 3 wrongly, and finds 75 % of those checked against a wrong rubric; the rest are mostly
// those of neighbouring practicals, which share steps.
#pragma once
#include <vector>

#include "review/review.h"

namespace retort::classroom {

inline constexpr double kClearlyTimes = 2.0;
inline constexpr double kClearlyMore = 0.2;
// A draft that fits its own rubric better than this cannot fit another clearly better.
inline constexpr double kSurelyOwn = 0.5;

// From 0 to 1.
double fit(const std::vector<StepReview>& steps);
bool fits_clearly_better(double other, double own);

}  // namespace retort::classroom
