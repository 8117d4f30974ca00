#include "results/line.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "results/student.h"

namespace retort::results {
namespace {

constexpr double kChance = 0.05;
constexpr double kBend = 0.02;          // of the range of y
constexpr std::size_t kPointsToLeaveOut = 5;
constexpr std::size_t kPointsForRuns = 8;
constexpr std::size_t kMostLeftOut = 20;
constexpr double kMuchStraighter = 0.25;  // of the line's residual standard deviation

// Of the points that are kept.
Points kept_points(const Points& all, const std::vector<bool>& kept) {
  Points out;
  out.step = all.step;
  out.half_range = all.half_range;
  for (std::size_t i = 0; i < all.x.size(); ++i) {
    if (!kept[i]) continue;
    out.x.push_back(all.x[i]);
    out.y.push_back(all.y[i]);
  }
  return out;
}

double least_scatter(const Points& points) { return std::max(points.step / std::sqrt(12.0), points.half_range / 2); }

double range_of(const Column& values) {
  auto [low, high] = std::minmax_element(values.begin(), values.end(), [](Twofold a, Twofold b) { return a < b; });
  return (*high - *low).value();
}

// The point whose residual from the line through the others is greatest beside its error, if that is past chance.
std::optional<std::size_t> anomalous(const Points& points, const Fit& fit) {
  std::size_t count = points.x.size();
  if (count < kPointsToLeaveOut) return std::nullopt;
  auto n = static_cast<double>(count);
  Twofold x_mean;
  for (Twofold x : points.x) x_mean += x;
  x_mean = x_mean / n;
  Twofold spread;
  for (Twofold x : points.x) spread += (x - x_mean) * (x - x_mean);
  double worst = 0.0;
  std::size_t at = 0;
  for (std::size_t i = 0; i < count; ++i) {
    Twofold off = points.x[i] - x_mean;
    double rest = (Twofold(1.0) - Twofold(1.0) / n - off * off / spread).value();  // 1 - leverage
    if (rest <= 1e-12) continue;  // the line goes through this point whatever it is
    double residual = fit.residuals[i].value();
    double variance = std::max(0.0, (fit.residual_sum.value() - residual * residual / rest) / (n - 3));
    double scatter = std::max(std::sqrt(variance), least_scatter(points));
    if (scatter <= 0) continue;
    double t = std::fabs(residual) / (scatter * std::sqrt(rest));
    if (t > worst) {
      worst = t;
      at = i;
    }
  }
  if (worst == 0 || student_tail(worst, count - 3) * n >= kChance) return std::nullopt;
  return at;
}

struct Curve {
  bool bends = false;
  double chance = 1.0;
  double factor = 0.0;  // of x²
  double residual_sum = 0.0;
};

// A parabola through the points, beside the line.
Curve fit_curve(const Points& points, const Fit& line) {
  Curve out;
  std::optional<Fit> fit = fit_polynomial(points.x, points.y, 2);
  if (!fit || fit->freedom == 0) return out;
  double factor = fit->parameters[2].value();
  double error = fit->unit_errors[2].value() * std::max(fit->residual_sd.value(), least_scatter(points));
  out.factor = factor;
  out.residual_sum = fit->residual_sum.value();
  out.chance = error > 0 ? student_tail(factor / error, fit->freedom) : (factor == 0 ? 1.0 : 0.0);
  double bend = 0.0;
  for (std::size_t i = 0; i < points.y.size(); ++i) bend = std::max(bend, std::fabs((line.residuals[i] - fit->residuals[i]).value()));
  out.bends = out.chance < kChance && bend > kBend * range_of(points.y);
  return out;
}

// How the residuals change sides along x, against chance.
bool in_few_runs(const Points& points, const Fit& fit) {
  if (points.x.size() < kPointsForRuns) return false;
  std::multimap<double, double> along;
  for (std::size_t i = 0; i < points.x.size(); ++i) along.emplace(points.x[i].value(), fit.residuals[i].value());
  std::size_t runs = 0, above = 0, below = 0;
  int last = 0;
  double greatest = 0.0;
  for (const auto& [x, residual] : along) {
    greatest = std::max(greatest, std::fabs(residual));
    int side = residual > 0 ? 1 : -1;
    (side > 0 ? above : below) += 1;
    runs += side != last ? 1U : 0U;
    last = side;
  }
  bool shows = greatest > std::max(kBend * range_of(points.y), points.step);
  return shows && runs_tail(runs, above, below) < kChance;
}

Twofold plotted(Plot plot, Twofold x) {
  switch (plot) {
    case Plot::x_squared: return x * x;
    case Plot::root_x: return sqrt(x);
    case Plot::one_over_x: return Twofold(1.0) / x;
  }
  return x;
}

bool may_plot(Plot plot, const Column& x) {
  return std::all_of(x.begin(), x.end(), [&](Twofold v) { return plot == Plot::one_over_x ? v.high > 0 : v.high >= 0; });
}

// Half the width of the interval that holds a parameter at 95 %.
double uncertainty_of(const Points& points, const Fit& fit, std::size_t parameter) {
  if (fit.freedom == 0) return 0.0;
  double error = fit.unit_errors[parameter].value() * std::max(fit.residual_sd.value(), least_scatter(points));
  return error * student_quantile(kChance, fit.freedom);
}

bool straight(const Points& points, const Fit& fit) { return !fit_curve(points, fit).bends && !in_few_runs(points, fit); }

std::optional<Suggestion> suggest(const Points& points, const Fit& line) {
  std::optional<Suggestion> best;
  double least = line.residual_sum.value() * kMuchStraighter * kMuchStraighter;
  for (Plot plot : {Plot::x_squared, Plot::root_x, Plot::one_over_x}) {
    if (!may_plot(plot, points.x)) continue;
    Points other = points;
    for (Twofold& x : other.x) x = plotted(plot, x);
    std::optional<Fit> fit = fit_polynomial(other.x, other.y, 1);
    if (!fit || !fit->r_squared || fit->residual_sum.value() >= least || !straight(other, *fit)) continue;
    least = fit->residual_sum.value();
    double allowed = std::max({uncertainty_of(other, *fit, 0), other.half_range, other.step / 2});
    best = Suggestion{plot, fit->r_squared->value(), std::fabs(fit->parameters[0].value()) <= allowed};
  }
  return best;
}

class Fitter {
 public:
  explicit Fitter(const Points& points) : all_(points), kept_(points.x.size(), true) {}

  Line run() {
    if (all_.x.size() < 2) return std::move(line_);
    std::optional<Fit> fit = fit_polynomial(all_.x, all_.y, 1);
    line_.state = fit ? LineState::fitted : LineState::x_all_the_same;
    if (!fit) return std::move(line_);
    line_.fit = std::move(*fit);
    Points points = all_;
    Curve curve = fit_curve(points, line_.fit);
    leave_out(points, curve);
    judge(points, curve);
    return std::move(line_);
  }

 private:
  // Leaves out anomalous points; not if the points are better told by a curve through all of them.
  void leave_out(Points& points, Curve& curve) {
    std::size_t most = std::min(all_.x.size() / kPointsToLeaveOut, kMostLeftOut);
    std::vector<bool> kept = kept_;
    std::vector<std::size_t> out;
    Points rest = points;
    Fit fit = line_.fit;
    std::vector<std::size_t> index(all_.x.size());
    for (std::size_t i = 0; i < index.size(); ++i) index[i] = i;
    while (out.size() < most) {
      std::optional<std::size_t> worst = anomalous(rest, fit);
      if (!worst) break;
      kept[index[*worst]] = false;
      out.push_back(index[*worst]);
      index.erase(index.begin() + static_cast<std::ptrdiff_t>(*worst));
      rest = kept_points(all_, kept);
      std::optional<Fit> again = fit_polynomial(rest.x, rest.y, 1);
      if (!again) return;  // the others all stand at one x
      fit = std::move(*again);
    }
    if (out.empty()) return;
    Curve after = fit_curve(rest, fit);
    bool curve_tells_more = curve.bends && (after.bends || curve.residual_sum < fit.residual_sum.value());
    if (curve_tells_more) return;
    std::sort(out.begin(), out.end());
    line_.left_out = std::move(out);
    line_.fit = std::move(fit);
    points = std::move(rest);
    curve = after;
  }

  void judge(const Points& points, const Curve& curve) {
    const Fit& fit = line_.fit;
    line_.scatter = std::max(fit.residual_sd.value(), least_scatter(points));
    line_.intercept_uncertainty = std::max({uncertainty_of(points, fit, 0), points.half_range, points.step / 2});
    line_.gradient_uncertainty = uncertainty_of(points, fit, 1);
    line_.curve_chance = curve.chance;
    line_.flat = fit.freedom > 1 && std::fabs(line_.gradient().value()) <= line_.gradient_uncertainty;
    line_.shape = shape(points, curve);
    line_.origin = origin(points);
    if (line_.curved()) line_.suggestion = suggest(points, fit);
  }

  [[nodiscard]] Shape shape(const Points& points, const Curve& curve) const {
    if (line_.fit.freedom < 2) return Shape::unknown;
    if (curve.bends) return (curve.factor > 0) == (line_.gradient().high > 0) ? Shape::steeper : Shape::shallower;
    return in_few_runs(points, line_.fit) ? Shape::uneven : Shape::straight;
  }

  [[nodiscard]] Origin origin(const Points& points) const {
    if (line_.fit.freedom == 0) return Origin::unsure;
    double size = std::fabs(line_.intercept().value());
    if (size > line_.intercept_uncertainty) return Origin::misses;
    constexpr double kTooWide = 0.25;  // of the range of y: an uncertainty so great leaves it open
    return line_.intercept_uncertainty > kTooWide * range_of(points.y) ? Origin::unsure : Origin::through;
  }

  const Points& all_;
  std::vector<bool> kept_;
  Line line_;
};

}  // namespace

Line fit_line(const Points& points) { return Fitter(points).run(); }

}  // namespace retort::results
