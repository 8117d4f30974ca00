#include "results/gradient.h"

#include <algorithm>
#include <cmath>

namespace retort::results {
namespace {

constexpr int kFewestFigures = 2;
constexpr int kMostFigures = 4;

Written write(Twofold value, int figures, std::string unit) { return {value, figures, written(to_exact(value), figures), std::move(unit)}; }

// The unit of the gradient as text, also where a unit is not known: "cm per square".
std::string gradient_symbol(const Quantity& x, const Quantity& y) {
  if (auto unit = gradient_unit(x, y)) return unit->symbol;
  if (x.unit.empty()) return y.unit;
  return (y.unit.empty() ? "1" : y.unit) + " per " + x.unit;
}

// An uncertainty has one figure, or two if the first is 1.
std::string uncertainty_text(double value) {
  if (value <= 0 || !std::isfinite(value)) return {};
  Exact size = exact(value);
  bool one = rounded(size, first_place(size)) == power_of_ten(first_place(size));
  int place = first_place(rounded(size, first_place(size))) - (one ? 1 : 0);
  return place >= -6 && place <= 0 ? written_to_place(size, place) : written(size, one ? 2 : 1);
}

// The greatest 1, 2 or 5 × 10ⁿ that is not more than a tenth of `range`: where a pupil can read an axis.
double reading_step(double range) {
  double power = std::pow(10.0, std::floor(std::log10(range / 10)));
  double ratio = range / 10 / power;
  return power * (ratio >= 5 ? 5 : ratio >= 2 ? 2 : 1);
}

// Values of x near the ends of the points that are easy to read.
std::pair<double, double> ends(const Column& x) {
  auto [low, high] = std::minmax_element(x.begin(), x.end(), [](Twofold a, Twofold b) { return a < b; });
  double from = low->value();
  double to = high->value();
  double step = reading_step(to - from);
  double first = std::ceil(from / step - 1e-9) * step;
  double last = std::floor(to / step + 1e-9) * step;
  return {first, last};
}

PointOnLine point(const Line& line, double x, int x_place, int y_place) {
  PointOnLine out;
  Exact at = rounded(exact(x), x_place);
  out.x = written_to_place(at, x_place);
  Exact y = rounded(to_exact(line.intercept()) + to_exact(line.gradient()) * at, y_place);
  out.y = written_to_place(y, y_place);
  out.x_value = to_double(at);
  out.y_value = to_double(y);
  return out;
}

// Two points, read to one figure more than the gradient has.
void add_points(const Line& line, const Column& x, int figures, Gradient& out) {
  auto [from, to] = ends(x);
  int x_place = static_cast<int>(std::floor(std::log10(reading_step(to - from)) + 1e-9));
  double rise = std::fabs(line.gradient().value()) * (to - from);
  int y_place = rise > 0 ? static_cast<int>(std::floor(std::log10(rise))) - figures : 0;
  out.low = point(line, from, x_place, y_place);
  out.high = point(line, to, x_place, y_place);
  double run = out.high.x_value - out.low.x_value;
  if (run > 0) out.from_points = written(exact((out.high.y_value - out.low.y_value) / run), figures);
}

}  // namespace

std::string Written::with_unit() const { return results::with_unit(text, unit); }

std::string with_unit(std::string_view number, std::string_view unit) {
  std::string out(number);
  if (!unit.empty() && unit != "\u00B0" && unit != "%") out += ' ';
  return out + std::string(unit);
}

int figures_of(const std::vector<Group>& groups, const std::vector<int>& mean_figures) {
  // the greatest value of each: a small one has fewer figures for no fault of the instrument
  int x = 0;
  for (const Group& group : groups) x = std::max(x, group.x.figures);
  int y = 0;
  for (int figures : mean_figures) y = std::max(y, figures);
  return std::clamp(std::min(x, y), kFewestFigures, kMostFigures);
}

std::optional<CompoundUnit> gradient_unit(const Quantity& x, const Quantity& y) {
  bool known = (x.unit.empty() || x.compound) && (y.unit.empty() || y.compound);
  if (!known) return std::nullopt;
  return unit_quotient(y.compound.value_or(CompoundUnit{}), x.compound.value_or(CompoundUnit{}));
}

int borne_out(Twofold value, int figures, double uncertainty) {
  Exact size = to_exact(value);
  if (size == 0 || uncertainty <= 0 || !std::isfinite(uncertainty)) return figures;
  return std::clamp(first_place(size) - first_place(exact(uncertainty)) + 1, std::min(kFewestFigures, figures), figures);
}

Gradient describe_gradient(const Line& line, const Readings& readings, int figures, int place) {
  Gradient out;
  figures = borne_out(line.gradient(), figures, line.gradient_uncertainty);
  out.gradient = write(line.gradient(), figures, gradient_symbol(readings.x, readings.y));
  out.intercept = {line.intercept(), figures, written_to_place(to_exact(line.intercept()), std::min(place, 0)), readings.y.unit};
  if (line.fit.freedom > 0) {
    out.gradient_uncertainty = uncertainty_text(line.gradient_uncertainty);
    out.intercept_uncertainty = uncertainty_text(line.intercept_uncertainty);
  }
  Column x;
  for (std::size_t i = 0; i < readings.groups.size(); ++i) x.push_back(to_twofold(readings.groups[i].x.value));
  add_points(line, x, figures, out);
  return out;
}

std::optional<Constant> find_constant(const GradientMeaning& meaning, const Written& gradient, const std::optional<CompoundUnit>& unit, const std::string& file,
                                      Findings& findings) {
  Exact value = to_exact(gradient.value);
  if (value == 0) return std::nullopt;
  bool inverse = meaning.from == ConstantFrom::inverse;
  CompoundUnit wanted = meaning.unit.value_or(CompoundUnit{});
  if (!unit) {
    findings.push_back(make_finding(Code::results_unit_unknown, file, {meaning.name}));
    return std::nullopt;
  }
  CompoundUnit got = inverse ? unit_quotient(CompoundUnit{}, *unit) : *unit;
  if (!(got.dimension == wanted.dimension)) {
    findings.push_back(make_finding(Code::results_unit_misfit, file, {meaning.name, wanted.symbol.empty() ? "no unit" : wanted.symbol, gradient.unit.empty() ? "no unit" : gradient.unit}));
    return std::nullopt;
  }
  if (inverse) value = 1 / value;
  value *= exact(got.scale) / exact(wanted.scale);
  return Constant{meaning.name, meaning.stands_for, meaning.from, write(to_twofold(value), gradient.figures, wanted.symbol)};
}

}  // namespace retort::results
