// A Review as JSON, as the README describes it (format 1).
#pragma once
#include <string>

#include "intake/answer.h"
#include "review/review.h"

namespace retort {

inline constexpr int kReviewFormat = 1;

// Appends one object, without a line end.
void append_review_json(const Rubric& rubric, const Answer& answer, const Review& review, std::string& out);

}  // namespace retort
