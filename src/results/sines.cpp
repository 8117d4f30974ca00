#include "results/sines.h"

#include <cmath>
#include <numbers>

namespace retort::results {
namespace {

bool angle(const Quantity& quantity) { return quantity.compound && quantity.compound->dimension == dimension::kAngle; }

double degrees(const Exact& value, const Quantity& quantity) { return to_double(Exact(value * exact(quantity.compound->scale))); }

double sine(double angle_in_degrees) { return std::sin(angle_in_degrees * std::numbers::pi / 180); }

bool in_quarter(double angle_in_degrees) { return angle_in_degrees >= 0 && angle_in_degrees <= 90; }

}  // namespace

bool are_refraction_angles(const Quantity& x, const Quantity& y) {
  bool reflection = has_words(x.name, "reflection") || has_words(y.name, "reflection") || has_words(y.name, "reflected");
  return angle(x) && angle(y) && !reflection;
}

std::optional<Sines> fit_sines(const Readings& readings, const std::vector<Summary>& summaries, int figures) {
  Sines out;
  Points points;
  Twofold ratios;
  std::size_t ratio_count = 0;
  for (std::size_t i = 0; i < readings.groups.size(); ++i) {
    if (summaries[i].kept == 0) continue;
    double outside = degrees(readings.groups[i].x.value, readings.x);
    double inside = degrees(summaries[i].mean, readings.y);
    if (!in_quarter(outside) || !in_quarter(inside)) continue;
    out.groups.push_back(i);
    points.x.push_back(sine(inside));
    points.y.push_back(sine(outside));
    if (inside <= 0) continue;
    ratios += Twofold(sine(outside)) / sine(inside);
    ++ratio_count;
  }
  // a step of an angle is least felt as a step of its sine at 90°, most at 0°: take that at 45°
  double step = readings.groups.empty() ? 0.0 : to_double(power_of_ten(readings.groups[0].x.last_place));
  points.step = step * std::numbers::pi / 180 * std::numbers::sqrt2 / 2;
  out.line = fit_line(points);
  if (out.line.state != LineState::fitted) return std::nullopt;
  Exact index = to_exact(out.line.gradient());
  figures = borne_out(out.line.gradient(), figures, out.line.gradient_uncertainty);
  out.index = {out.line.gradient(), figures, written(index, figures), ""};
  if (out.line.fit.freedom > 0 && out.line.gradient_uncertainty > 0) out.uncertainty = written(exact(out.line.gradient_uncertainty), 1);
  if (ratio_count > 0) out.mean_ratio = ratios / static_cast<double>(ratio_count);
  double n = out.line.gradient().value();
  if (n > 1) {
    double critical = std::asin(1 / n) * 180 / std::numbers::pi;
    out.critical = Written{critical, 2, written(exact(critical), 2), "\u00B0"};
  }
  return out;
}

}  // namespace retort::results
