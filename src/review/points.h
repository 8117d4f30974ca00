// What only short answers have: points that need their reason, are contradicted, or count once.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "review/review.h"

namespace retort {

// What is said of a step that the words at `against` contradict; empty if nothing does.
std::string contradiction_note(const std::vector<Span>& against, std::string_view answer);

// Of present steps that count once, all but the first become vague, and that is said.
void count_once(const Rubric& rubric, std::vector<StepReview>& steps);

// The indicative range of a short answer: the points that are there, and one more where some are near; never more than the marks.
Level indicate_points(const Rubric& rubric, const std::vector<StepReview>& steps);

}  // namespace retort
