#include "results/least_squares.h"

#include "results/statistics.h"

namespace retort::results {
namespace {

// A column that is, to 24 of 31 digits, a sum of those before it fixes no parameter.
constexpr double kDependent = 1e-24;

Twofold dot(const Column& a, const Column& b, std::size_t from) {
  Twofold sum;
  for (std::size_t i = from; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

// A, made upper triangular column by column; y goes along.
class Triangle {
 public:
  Triangle(std::vector<Column> columns, Column y) : a_(std::move(columns)), y_(std::move(y)) {}

  // False if the columns depend on each other.
  bool make() {
    for (std::size_t k = 0; k < a_.size(); ++k) {
      Twofold whole = sqrt(dot(a_[k], a_[k], 0));
      Twofold norm = sqrt(dot(a_[k], a_[k], k));
      if (whole.high == 0 || norm.high <= kDependent * whole.high) return false;
      reflect(k, norm);
    }
    return true;
  }

  // Solves R b = the first elements of `right`.
  [[nodiscard]] Column solve(const Column& right) const {
    Column b(a_.size());
    for (std::size_t k = a_.size(); k-- > 0;) {
      Twofold rest = right[k];
      for (std::size_t j = k + 1; j < a_.size(); ++j) rest -= a_[j][k] * b[j];
      b[k] = rest / a_[k][k];
    }
    return b;
  }
  [[nodiscard]] const Column& right() const { return y_; }

 private:
  // Reflects so that column k has nothing below its diagonal.
  void reflect(std::size_t k, Twofold norm) {
    Twofold diagonal = a_[k][k].high > 0 ? -norm : norm;
    Column v(a_[k].size());
    for (std::size_t i = k; i < v.size(); ++i) v[i] = a_[k][i];
    v[k] -= diagonal;
    Twofold size = dot(v, v, k);
    if (size.high == 0) return;
    auto turn = [&](Column& column) {
      Twofold factor = dot(v, column, k) * 2.0 / size;
      for (std::size_t i = k; i < v.size(); ++i) column[i] -= factor * v[i];
    };
    for (std::size_t j = k; j < a_.size(); ++j) turn(a_[j]);
    turn(y_);
  }

  std::vector<Column> a_;
  Column y_;
};

void add_residuals(const std::vector<Column>& columns, const Column& y, bool constant, Fit& fit) {
  Twofold centre = constant ? mean(y) : Twofold();
  Twofold total;
  for (std::size_t i = 0; i < y.size(); ++i) {
    Twofold fitted;
    for (std::size_t j = 0; j < columns.size(); ++j) fitted += columns[j][i] * fit.parameters[j];
    fit.residuals.push_back(y[i] - fitted);
    fit.residual_sum += fit.residuals[i] * fit.residuals[i];
    total += (y[i] - centre) * (y[i] - centre);
  }
  if (total.high > 0) fit.r_squared = Twofold(1.0) - fit.residual_sum / total;
}

// s²(RᵀR)⁻¹ = s² R⁻¹(R⁻¹)ᵀ
void add_errors(const Triangle& triangle, Fit& fit) {
  std::size_t count = fit.parameters.size();
  std::vector<Column> inverse;  // columns of R⁻¹
  for (std::size_t k = 0; k < count; ++k) {
    Column unit(count);
    unit[k] = 1.0;
    inverse.push_back(triangle.solve(unit));
  }
  Twofold variance = fit.freedom > 0 ? fit.residual_sum / static_cast<double>(fit.freedom) : Twofold();
  fit.residual_sd = sqrt(variance);
  fit.covariance.assign(count, Column(count));
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = 0; j < count; ++j) {
      Twofold sum;
      for (const Column& column : inverse) sum += column[i] * column[j];
      fit.covariance[i][j] = sum * variance;
      if (i == j) fit.unit_errors.push_back(sqrt(sum));
    }
    fit.standard_errors.push_back(fit.unit_errors[i] * fit.residual_sd);
  }
}

}  // namespace

std::optional<Fit> least_squares(const std::vector<Column>& columns, const Column& y, bool constant) {
  if (columns.empty() || y.size() < columns.size()) return std::nullopt;
  Triangle triangle(columns, y);
  if (!triangle.make()) return std::nullopt;
  Fit fit;
  fit.freedom = y.size() - columns.size();
  fit.parameters = triangle.solve(triangle.right());
  add_residuals(columns, y, constant, fit);
  add_errors(triangle, fit);
  return fit;
}

std::optional<Fit> fit_polynomial(const Column& x, const Column& y, std::size_t degree) {
  std::vector<Column> columns(1, Column(x.size(), Twofold(1.0)));
  for (std::size_t power = 1; power <= degree; ++power) {
    Column next(x.size());
    for (std::size_t i = 0; i < x.size(); ++i) next[i] = columns.back()[i] * x[i];
    columns.push_back(std::move(next));
  }
  return least_squares(columns, y, true);
}

}  // namespace retort::results
