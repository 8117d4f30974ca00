#include "classroom/fit.h"

namespace retort::classroom {

double fit(const std::vector<StepReview>& steps) {
  if (steps.empty()) return 0.0;
  double sum = 0.0;
  for (const StepReview& step : steps) {
    if (step.status == StepStatus::present) sum += 1.0;
    if (step.status == StepStatus::vague) sum += 0.5;
  }
  return sum / static_cast<double>(steps.size());
}

bool fits_clearly_better(double other, double own) {
  return other >= kClearlyTimes * own && other >= own + kClearlyMore;
}

}  // namespace retort::classroom
