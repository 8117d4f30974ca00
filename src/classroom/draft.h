// One pupil's draft with its review, as the class picture takes it.
#pragma once
#include <string>

#include "review/review.h"

namespace retort::classroom {

struct Draft {
  std::string label;  // whose it is, as the teacher has it: a name or a code
  std::string text;   // as it came in; the spans of `review` are bytes of it
  Review review;
  std::string fits_better;  // the title of another practical that it fits clearly better; empty if none (see fit.h)
};

}  // namespace retort::classroom
