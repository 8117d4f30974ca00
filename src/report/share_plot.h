// A share with its interval as a small drawing for a table cell: a dot on a line from 0 to 100 %.
#pragma once
#include <string>

#include "cohort/proportion.h"

namespace retort {

// SVG of fixed size, in the colour of the text around it. It repeats figures that stand beside it, so readers of screens pass
// over it. `filled`: a full dot, else a hollow one.
std::string share_plot(const cohort::Share& share, bool filled);
// The scale above such drawings: 0, 50 and 100 %.
std::string share_scale();

}  // namespace retort
