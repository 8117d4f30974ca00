// The sentences of a class report, for text and HTML alike. Titles and hints are the rubric's.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "report/class_report.h"

namespace retort {

inline constexpr std::size_t kOmissionsSaid = 5;

// The mark of a status in a table, with its meaning in kMarksMeaning.
std::string_view status_mark(StepStatus status);
inline constexpr std::string_view kMarksMeaning = "+ there, ? not clear enough, . left out";

// "3 drafts" or "1 draft".
std::string counted(std::size_t count, std::string_view one, std::string_view many);

// "9 of 12 leave this out: Name what measures the length. For 2 more it is not clear."
std::string omission_sentence(const ClassReport& report, std::size_t step);
// "Left out by 9 of 12, not clear for 2 more."
std::string lack_sentence(const ClassReport& report, std::size_t step);
// "12 drafts; 1 has no words and is not counted."
std::string drafts_sentence(const ClassReport& report);
std::string sums_sentence(const classroom::Sums& sums);
// What went wrong, how often and by how many.
std::string slip_sentence(const classroom::SlipTally& slip);
std::string concern_sentence(const classroom::Concern& concern);
// "Amira, Ben and Cem"
std::string names(const std::vector<classroom::Draft>& drafts, const std::vector<std::size_t>& who);
// The titles of steps, as a list in words.
std::string titles(const Rubric& rubric, const std::vector<std::size_t>& steps);
// "10 compared with their first drafts: 14 steps gained, 2 lost."
std::string change_sentence(const classroom::Change& change);
// A title within a sentence, without capital ambiguity: in quotes.
std::string in_quotes(std::string_view title);

inline constexpr std::string_view kRiskAssessment = "The school's own risk assessment and local rules come first.";
inline constexpr std::string_view kReteachRule =
    "Chosen are the steps the method cannot do without that most of the class lack; \"not clear\" counts half. The quotes are anonymous.";
inline constexpr std::string_view kGroupRule =
    "Each group lacks the same step (left out or not clear), first those that fewer than half of the class lack. Nobody is in two groups; a group "
    "has two to five.";

}  // namespace retort
