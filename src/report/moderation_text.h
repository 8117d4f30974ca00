// A moderation for a terminal, at any width from 40 columns; no colour is needed to read it.
#pragma once
#include <string>

#include "cohort/moderation.h"

namespace retort {

std::string moderation_text(const cohort::Moderation& moderation, std::size_t width);

}  // namespace retort
