// What the statistics do at their edges; tests/outside compares them with figures of others.
#include <cmath>

#include "../support.h"
#include "cohort/agreement.h"
#include "cohort/drift.h"
#include "cohort/exact_test.h"
#include "cohort/random.h"

namespace retort::cohort {
namespace {

TEST(Share, OfNothingCanBeAnything) {
  Share none = share(0, 0);
  EXPECT_EQ(none.value, 0.0);
  EXPECT_EQ(none.interval.low, 0.0);
  EXPECT_EQ(none.interval.high, 1.0);
}

TEST(Fisher, HasNothingToSayWithoutBothKinds) {
  EXPECT_EQ(fisher_exact(0, 5, 0, 9), 1.0);
  EXPECT_EQ(fisher_exact(0, 0, 3, 9), 1.0);
}

TEST(Fisher, IsTheSameTurnedRound) {
  EXPECT_NEAR(fisher_exact(2, 9, 7, 3), fisher_exact(9, 2, 3, 7), 1e-12);
  EXPECT_NEAR(fisher_exact(2, 9, 7, 3), fisher_exact(2, 7, 9, 3), 1e-12);
}

TEST(Fisher, TakesABillionAnswers) {
  double chance = fisher_exact(100'000'000, 900'000'000, 100'020'000, 899'980'000);
  EXPECT_GT(chance, 0.1);
  EXPECT_LT(chance, 0.2);
}

TEST(Agreement, OfMarksThatAreAllTheSameHasNoKappa) {
  MarkerAgreement got = marker_agreement({{{3, 3}, 12}}, 1);
  EXPECT_FALSE(got.kappa.has_value());
  EXPECT_FALSE(got.weighted.has_value());
  EXPECT_EQ(got.exact.count, 12U);
}

TEST(Agreement, OfNoAnswers) {
  EXPECT_EQ(marker_agreement({}, 1).answers, 0U);
}

TEST(Agreement, FullAgreementIsOne) {
  MarkerAgreement got = marker_agreement({{{1, 1}, 10}, {{4, 4}, 10}}, 1);
  ASSERT_TRUE(got.kappa && got.kappa->interval);
  EXPECT_EQ(got.kappa->value, 1.0);
  EXPECT_EQ(got.kappa->interval->low, 1.0);
}

TEST(Agreement, IntervalsHoldTheValueAndFollowTheSeed) {
  Crosstab table = {{{1, 1}, 10}, {{2, 2}, 9}, {{3, 3}, 12}, {{1, 2}, 5}, {{3, 2}, 4}, {{1, 3}, 1}};
  MarkerAgreement one = marker_agreement(table, 1);
  MarkerAgreement same = marker_agreement(table, 1);
  MarkerAgreement other = marker_agreement(table, 2);
  ASSERT_TRUE(one.weighted && one.weighted->interval);
  EXPECT_LT(one.weighted->interval->low, one.weighted->value);
  EXPECT_GT(one.weighted->interval->high, one.weighted->value);
  EXPECT_EQ(one.weighted->interval->low, same.weighted->interval->low);
  EXPECT_NE(one.weighted->interval->low, other.weighted->interval->low);
  EXPECT_NEAR(one.weighted->interval->low, other.weighted->interval->low, 0.05);
}

TEST(Random, RedrawsAsManyAsThereWere) {
  Random random(5);
  std::vector<Count> out;
  random.redraw({1000, 0, 3, 200000}, out);
  EXPECT_EQ(out[0] + out[1] + out[2] + out[3], 201003U);
  EXPECT_EQ(out[1], 0U);
}

struct BinomialRow {
  const char* name;
  Count of;
  double chance;
};

class Binomial : public ::testing::TestWithParam<BinomialRow> {};

// Mean and variance of 4000 draws, within five standard errors of np and np(1 - p) (the second for large n only roughly).
TEST_P(Binomial, HasItsMeanAndVariance) {
  Random random(9);
  constexpr int kDraws = 4000;
  double n = static_cast<double>(GetParam().of);
  double p = GetParam().chance;
  double mean = 0, square = 0;
  for (int i = 0; i < kDraws; ++i) {
    double off = static_cast<double>(random.binomial(GetParam().of, p)) - n * p;
    mean += off / kDraws;
    square += off * off / kDraws;
  }
  double variance = n * p * (1 - p);
  EXPECT_LT(std::abs(mean), 5 * std::sqrt(variance / kDraws));
  EXPECT_NEAR(square / variance, 1.0, 0.15);
}

INSTANTIATE_TEST_SUITE_P(Rows, Binomial,
                         ::testing::Values(BinomialRow{"small", 7, 0.3}, BinomialRow{"even", 100, 0.5}, BinomialRow{"rare", 1000, 0.005},
                                           BinomialRow{"nearly all", 300, 0.99}, BinomialRow{"large", 1'000'000, 0.2}),
                         test::row_name<BinomialRow>);

TEST(Drift, NeedsEnoughAnswersInDifferentPlaces) {
  DriftSums few, together, exact;
  for (int i = 0; i < 9; ++i) few.add(i, 3, 3, 4);
  for (int i = 0; i < 50; ++i) together.add(7, i % 7, 3, 4);
  EXPECT_FALSE(drift(few).has_value());
  EXPECT_FALSE(drift(together).has_value());
  for (int i = 0; i < 30; ++i) exact.add(1000 + i % 3, 1 + i % 3, 1, 1);
  ASSERT_TRUE(drift(exact).has_value());
  EXPECT_TRUE(drift(exact)->beyond_chance());
  EXPECT_NEAR(drift(exact)->change, 2.0, 1e-9);
}

TEST(Drift, SumsOfAnythingDoNotOverflow) {
  DriftSums sums;
  sums.n = 1'000'000'000;
  sums.last = 5;
  sums.y = 1'000'000'000'000'000'000;
  sums.yy = 1;
  sums.xx = ~DriftSums::Wide{0} / 3;
  sums.xy = ~DriftSums::Wide{0} / 5;
  std::optional<Drift> got = drift(sums);  // no sense in it, and no fault either
  EXPECT_TRUE(!got || got->answers == sums.n);
}

}  // namespace
}  // namespace retort::cohort
