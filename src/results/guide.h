// What a rubric says about the results of its investigation: which columns to plot, and what the gradient stands for.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "quantity/compound.h"

namespace retort::results {

// How the constant comes out of the table.
enum class ConstantFrom {
  gradient,  // it is the gradient
  inverse,   // it is 1 / gradient
  sines,     // it is the gradient of sin x against sin y
};

struct GradientMeaning {
  std::string stands_for;  // "1 / spring constant"
  std::string name;        // "spring constant"
  ConstantFrom from = ConstantFrom::gradient;
  std::optional<CompoundUnit> unit;  // none: a bare number
};

struct Guide {
  std::vector<std::string> x;  // names for the quantity on the x axis, any of them
  std::vector<std::string> y;
  std::optional<GradientMeaning> gradient;
};

}  // namespace retort::results
