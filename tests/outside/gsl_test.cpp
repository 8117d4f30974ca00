// Lines and parabolas through random tables, against the GNU Scientific Library (Debian's libgsl-dev: gsl_fit_linear,
// gsl_multifit_linear) and Student's t against gsl_cdf. GSL works in doubles, so about twelve digits can agree.
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_fit.h>
#include <gsl/gsl_multifit.h>
#include <gsl/gsl_statistics.h>

#include <cmath>
#include <random>

#include "../support.h"
#include "results/least_squares.h"
#include "results/statistics.h"
#include "results/student.h"

namespace retort::results {
namespace {

constexpr int kTables = 400;

struct Random {
  std::vector<double> x, y;
};

// Such tables as practicals give: 3 to 15 points, noise from none to as much as the slope.
Random random_table(std::mt19937& engine) {
  std::uniform_int_distribution<std::size_t> count(3, 15);
  std::uniform_real_distribution<double> any(-10, 10);
  std::normal_distribution<double> noise(0, std::pow(10, std::uniform_real_distribution<double>(-3, 1)(engine)));
  double slope = any(engine), intercept = any(engine);
  Random out;
  std::size_t n = count(engine);
  for (std::size_t i = 0; i < n; ++i) {
    out.x.push_back(0.5 * static_cast<double>(i + 1) + 0.01 * any(engine));
    out.y.push_back(intercept + slope * out.x.back() + noise(engine));
  }
  return out;
}

Column exact_column(const std::vector<double>& values) { return {values.begin(), values.end()}; }

void expect_close(double got, double wanted, double scale, const char* what) { EXPECT_NEAR(got, wanted, 1e-10 * (std::fabs(wanted) + scale)) << what; }

TEST(Gsl, LinesAgree) {
  std::mt19937 engine(20260101);
  for (int i = 0; i < kTables; ++i) {
    Random table = random_table(engine);
    std::size_t n = table.x.size();
    double c0, c1, cov00, cov01, cov11, sum;
    gsl_fit_linear(table.x.data(), 1, table.y.data(), 1, n, &c0, &c1, &cov00, &cov01, &cov11, &sum);
    std::optional<Fit> fit = fit_polynomial(exact_column(table.x), exact_column(table.y), 1);
    ASSERT_TRUE(fit.has_value());
    expect_close(fit->parameters[0].value(), c0, 1, "intercept");
    expect_close(fit->parameters[1].value(), c1, 1, "gradient");
    expect_close(fit->standard_errors[0].value(), std::sqrt(cov00), 1e-2, "error of the intercept");
    expect_close(fit->standard_errors[1].value(), std::sqrt(cov11), 1e-2, "error of the gradient");
    expect_close(fit->covariance[0][1].value(), cov01, 1e-2, "covariance");
    expect_close(fit->residual_sum.value(), sum, 1e-2, "residual sum");
    expect_close(std::sqrt(fit->r_squared->value()), std::fabs(gsl_stats_correlation(table.x.data(), 1, table.y.data(), 1, n)), 1e-1, "R");
    expect_close(std::fabs(correlation(exact_column(table.x), exact_column(table.y)).value()), std::fabs(gsl_stats_correlation(table.x.data(), 1, table.y.data(), 1, n)), 1e-1, "r");
  }
}

TEST(Gsl, ParabolasAgree) {
  std::mt19937 engine(20260102);
  for (int i = 0; i < kTables; ++i) {
    Random table = random_table(engine);
    std::size_t n = table.x.size();
    if (n < 4) continue;
    gsl_matrix* matrix = gsl_matrix_alloc(n, 3);
    gsl_vector* y = gsl_vector_alloc(n);
    gsl_vector* c = gsl_vector_alloc(3);
    gsl_matrix* covariance = gsl_matrix_alloc(3, 3);
    gsl_multifit_linear_workspace* work = gsl_multifit_linear_alloc(n, 3);
    for (std::size_t k = 0; k < n; ++k) {
      for (std::size_t p = 0; p < 3; ++p) gsl_matrix_set(matrix, k, p, std::pow(table.x[k], static_cast<double>(p)));
      gsl_vector_set(y, k, table.y[k]);
    }
    double sum = 0;
    gsl_multifit_linear(matrix, y, c, covariance, &sum, work);
    std::optional<Fit> fit = fit_polynomial(exact_column(table.x), exact_column(table.y), 2);
    ASSERT_TRUE(fit.has_value());
    for (std::size_t p = 0; p < 3; ++p) {
      expect_close(fit->parameters[p].value(), gsl_vector_get(c, p), 10, "parameter");
      expect_close(fit->standard_errors[p].value(), std::sqrt(gsl_matrix_get(covariance, p, p)), 1, "error");
    }
    expect_close(fit->residual_sum.value(), sum, 1, "residual sum");
    gsl_multifit_linear_free(work);
    gsl_matrix_free(covariance);
    gsl_vector_free(c);
    gsl_vector_free(y);
    gsl_matrix_free(matrix);
  }
}

TEST(Gsl, StudentsTAgrees) {
  for (std::size_t freedom : {1U, 2U, 3U, 4U, 5U, 8U, 13U, 30U, 100U, 1000U}) {
    for (double t : {0.0, 0.1, 0.5, 1.0, 2.0, 5.0, 12.0}) {
      EXPECT_NEAR(student_tail(t, freedom), 2 * gsl_cdf_tdist_Q(t, static_cast<double>(freedom)), 1e-12) << t << ", " << freedom;
    }
    for (double chance : {0.5, 0.05, 0.01, 0.001}) {
      double wanted = gsl_cdf_tdist_Qinv(chance / 2, static_cast<double>(freedom));
      EXPECT_NEAR(student_quantile(chance, freedom) / wanted, 1.0, 1e-9) << chance << ", " << freedom;
    }
  }
}

}  // namespace
}  // namespace retort::results
