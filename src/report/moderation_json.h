// A moderation as JSON (format 1), as DEVELOPERS.md describes it.
#pragma once
#include <string>

#include "cohort/moderation.h"

namespace retort {

inline constexpr int kModerationFormat = 1;

// One object and a line end.
std::string moderation_json(const cohort::Moderation& moderation);

}  // namespace retort
