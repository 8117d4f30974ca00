// Worked examples H.2 and H.3 of the Guide to the expression of uncertainty in measurement (JCGM 100:2008, BIPM/JCGM), Annex H.
// Figures from the transcription in MSLNZ/GTC (MIT licence): not checked against the PDF digit by digit.
#include <cmath>

#include "../support.h"
#include "results/least_squares.h"
#include "results/statistics.h"

namespace retort::results {
namespace {

// H.2, table H.2: five sets of voltage / V, current / mA, phase angle / rad.
const Column kVoltage = {5.007, 4.994, 5.005, 4.990, 4.999};
const Column kCurrent = {19.663, 19.639, 19.640, 19.685, 19.678};
const Column kPhase = {1.0456, 1.0438, 1.0468, 1.0428, 1.0433};

struct MeanRow {
  const char* name;
  Column values;
  double mean, uncertainty;
  double mean_step, uncertainty_step;  // half a unit in the last place published
};

class GumMeans : public ::testing::TestWithParam<MeanRow> {};
TEST_P(GumMeans, AreAsPublished) {
  const MeanRow& row = GetParam();
  EXPECT_NEAR(mean(row.values).value(), row.mean, row.mean_step);
  double of_mean = standard_deviation(row.values).value() / std::sqrt(static_cast<double>(row.values.size()));
  EXPECT_NEAR(of_mean, row.uncertainty, row.uncertainty_step);
}
INSTANTIATE_TEST_SUITE_P(Outside, GumMeans,
                         ::testing::Values(MeanRow{"voltage", kVoltage, 4.9990, 0.0032, 5e-5, 5e-5}, MeanRow{"current", kCurrent, 19.6610, 0.0095, 5e-5, 5e-5},
                                           MeanRow{"phase", kPhase, 1.04446, 0.00075, 5e-6, 5e-6}),
                         test::row_name<MeanRow>);

TEST(Gum, CorrelationsOfH2AreAsPublished) {
  EXPECT_NEAR(correlation(kVoltage, kCurrent).value(), -0.36, 0.005);
  EXPECT_NEAR(correlation(kVoltage, kPhase).value(), 0.86, 0.005);
  EXPECT_NEAR(correlation(kCurrent, kPhase).value(), -0.65, 0.005);
}

// H.3: calibration of a thermometer, b = y1 + y2 (t - 20 °C).
TEST(Gum, TheLineOfH3IsAsPublished) {
  const Column t = {21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511};
  const Column b = {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160};
  Column from_twenty;
  for (Twofold value : t) from_twenty.push_back(value - 20.0);
  std::optional<Fit> fit = fit_polynomial(from_twenty, b, 1);
  ASSERT_TRUE(fit.has_value());
  EXPECT_NEAR(fit->parameters[0].value(), -0.1712, 5e-5);
  EXPECT_NEAR(fit->parameters[1].value(), 0.00218, 5e-6);
  EXPECT_NEAR(fit->standard_errors[0].value(), 0.0029, 5e-5);
  EXPECT_NEAR(fit->standard_errors[1].value(), 0.00067, 5e-6);
  double r = (fit->covariance[0][1] / (fit->standard_errors[0] * fit->standard_errors[1])).value();
  EXPECT_NEAR(r, -0.930, 5e-4);
  EXPECT_EQ(fit->freedom, 9U);
  EXPECT_NEAR(fit->residual_sum.value(), 0.000110096583109, 1e-15);
  // predicted at 30 °C, with its uncertainty from variances and covariance
  EXPECT_NEAR((fit->parameters[0] + fit->parameters[1] * 10.0).value(), -0.1494, 5e-5);
  double variance = (fit->covariance[0][0] + fit->covariance[1][1] * 100.0 + fit->covariance[0][1] * 20.0).value();
  EXPECT_NEAR(std::sqrt(variance), 0.0041, 5e-5);
}

}  // namespace
}  // namespace retort::results
