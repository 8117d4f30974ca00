// Refraction: sin i against sin r, whose gradient is the refractive index (Snell's law, sin i = n sin r).
#pragma once
#include <optional>

#include "results/gradient.h"
#include "results/repeats.h"

namespace retort::results {

struct Sines {
  std::vector<std::size_t> groups;     // those with both angles from 0° to 90°, and not both 0°
  Line line;                           // of sin x (up) against sin y (along)
  Written index;                       // n: the gradient
  std::string uncertainty;             // at 95 %; empty without degrees of freedom
  std::optional<Twofold> mean_ratio;   // of sin x / sin y, single ones; y of 0° left out
  std::optional<Written> critical;     // critical angle, if n > 1
};

// Whether both quantities are angles and neither is one of reflection.
bool are_refraction_angles(const Quantity& x, const Quantity& y);

// Nothing if fewer than two points are left. `place`: of the last digit of the mean angles.
std::optional<Sines> fit_sines(const Readings& readings, const std::vector<Summary>& summaries, int figures);

}  // namespace retort::results
