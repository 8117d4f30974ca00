// The graph of an analysis of results, as a pupil should draw it: axes with quantity and unit, points as crosses over more
// than half of the paper, error bars of half the range, the line of best fit, anomalies marked by shape and word.
#pragma once
#include <string>

#include "results/analysis.h"

namespace retort {

// One SVG document: no script, nothing loaded from elsewhere, with a title and a description for screen readers; it takes
// the reader's light or dark colours.
std::string results_svg(const results::Analysis& analysis);

}  // namespace retort
