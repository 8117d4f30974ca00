// What to teach again: the core steps that most of the class lack, with the class's own words.
#pragma once
#include <string>
#include <vector>

#include "classroom/anonymity.h"
#include "classroom/draft.h"
#include "classroom/tally.h"
#include "rubric/rubric.h"

namespace retort::classroom {

inline constexpr std::size_t kMostReteach = 3;
inline constexpr std::size_t kMostQuotes = 3;
// A step counts for as many pupils as leave it out, and half of those for whom it is vague: they are nearer to it.
inline constexpr double kVagueWeight = 0.5;

struct Reteach {
  std::size_t step = 0;
  std::vector<std::string> vague;   // up to three quotes of this class, of different pupils; none names a pupil
  std::vector<std::string> better;  // up to three, of pupils who have the step
  std::vector<std::string> models;  // the rubric's own wordings, if the class has none
};

// Up to three core steps (all steps, if the rubric has no core), the one that counts most first; ties as in the rubric. Steps
// that nobody lacks are not among them.
std::vector<Reteach> choose_reteach(const Rubric& rubric, const std::vector<Draft>& drafts, const std::vector<Tally>& tallies, Anonymity& anonymity);

// The steps that are looked at: the core ones, or all if there are none.
std::vector<std::size_t> core_steps(const Rubric& rubric);

}  // namespace retort::classroom
