// An analysis of results for a terminal, at any width from 40 columns; no colour is needed to read it.
#pragma once
#include <string>

#include "results/analysis.h"

namespace retort {

std::string results_text(const results::Analysis& analysis, std::size_t width);

}  // namespace retort
