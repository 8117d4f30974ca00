// A rubric in plain words, for a teacher.
#pragma once
#include <string>

#include "rubric/rubric.h"

namespace retort {

std::string rubric_text(const Rubric& rubric, std::size_t width);

}  // namespace retort
