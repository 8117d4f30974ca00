// How sure a share is, when it was counted in few answers.
#pragma once
#include "cohort/count.h"

namespace retort::cohort {

struct Interval {
  double low = 0.0;
  double high = 1.0;
};

// A share of answers, from 0 to 1, with its 95 % interval.
struct Share {
  Count count = 0;
  Count of = 0;
  double value = 0.0;  // 0 if there are no answers
  Interval interval;   // all of 0 to 1 if there are none
};

// The score interval: E. B. Wilson, "Probable inference, the law of succession, and statistical inference", Journal of the
// American Statistical Association 22 (1927) 209-212. `z` is the normal deviate; the default leaves out 5 %.
// Requires count <= of.
Interval wilson(Count count, Count of, double z = 1.959963984540054);

// Requires count <= of.
Share share(Count count, Count of);

}  // namespace retort::cohort
