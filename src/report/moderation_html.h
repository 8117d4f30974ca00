// A moderation as one HTML page: tables with dot-and-interval drawings, the table of mark pairs, lists of answers.
#pragma once
#include <string>

#include "cohort/moderation.h"

namespace retort {

std::string moderation_html(const cohort::Moderation& moderation);

}  // namespace retort
