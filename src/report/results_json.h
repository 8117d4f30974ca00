// An analysis of results as JSON (format 1), as DEVELOPERS.md describes it.
#pragma once
#include <string>

#include "results/analysis.h"

namespace retort {

inline constexpr int kResultsFormat = 1;

// One object and a line end. `source` is the table's file, for the lines of remarks.
std::string results_json(const results::Analysis& analysis, std::string_view source);

}  // namespace retort
