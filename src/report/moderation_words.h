// What a moderation says, in sentences for a head of department: for the terminal and for HTML.
#pragma once
#include <string>
#include <vector>

#include "cohort/moderation.h"

namespace retort {

// "65 %", "65 % (50 to 77 %)".
std::string percent(double share);
std::string percent_range(const cohort::Share& share);
// With two decimals and its sign: "+0.40", "-0.20", "0.00".
std::string signed_marks(double marks);
std::string decimals(double value, int places);

// "9A"; "(no group)" for "".
std::string group_name(const std::string& group);
// "48 answers in 3 groups: 9A 16, 9B 16, 9C 16"
std::string answers_words(const cohort::RubricPart& part);
// What a bracket means.
std::string interval_words();
// "Say which forces" is missing in 31 of 48 answers, 65 % (50 to 77 %), and vague in 10.
std::string omission_words(const cohort::StepPart& step);
// Each group that differs, and that it may have many reasons; or that none does.
std::vector<std::string> difference_words(const cohort::RubricPart& part);
// Calculations and what went wrong in them, the commonest slip first.
std::vector<std::string> calculation_words(const cohort::CalculationCounts& counts);
// How the two markers agree; nothing if no answer has two marks.
std::vector<std::string> agreement_words(const cohort::RubricPart& part);
// A marker against the indicated range, and drift; nothing if the marker has no marks. `which` from 0.
std::vector<std::string> marker_words(const cohort::RubricPart& part, std::size_t which);
// "first marker"
std::string marker_name(std::size_t which);
// "the markers are 3 marks apart; nothing of the rubric was recognised"
std::string reason_words(const cohort::Again& again);
// "5 and 2", "5", "no mark"
std::string marks_words(const cohort::Script& script);
std::string range_words(const cohort::Script& script);
// How many answers the list of those to look at again stands for.
std::string again_words(const cohort::RubricPart& part);
std::string sample_words(const cohort::Moderation& moderation, const cohort::RubricPart& part);

}  // namespace retort
