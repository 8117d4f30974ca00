// A Review for a terminal, at any width from 40 columns; no colour is needed to read it.
#pragma once
#include <string>

#include "intake/answer.h"
#include "review/review.h"

namespace retort {

// Appends the report on one answer.
void append_review_text(const Rubric& rubric, const Answer& answer, const Review& review, std::size_t width, std::string& out);

// The words that stand once above and below all reports.
std::string review_text_heading(const Rubric& rubric, std::size_t width);
std::string review_text_closing(const Rubric& rubric, std::size_t width);

}  // namespace retort
