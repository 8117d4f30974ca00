// The statistics of a cohort against published figures and against SciPy and statsmodels.
#include <sstream>

#include "../support.h"
#include "cohort/agreement.h"
#include "cohort/drift.h"
#include "cohort/exact_test.h"
#include "cohort/random.h"

namespace retort::cohort {
namespace {

using test::read_all;
using test::source_path;

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> out;
  std::istringstream in(text);
  for (std::string part; std::getline(in, part, at);) out.push_back(part);
  return out;
}

// Rows of data/cohort_rows.tsv that begin with `kind`, without it.
std::vector<std::vector<std::string>> rows(const std::string& kind) {
  std::vector<std::vector<std::string>> out;
  std::istringstream in(read_all(source_path("tests/outside/data/cohort_rows.tsv")));
  for (std::string line; std::getline(in, line);) {
    std::vector<std::string> cells = split(line, '\t');
    if (cells[0] == kind) out.emplace_back(cells.begin() + 1, cells.end());
  }
  EXPECT_FALSE(out.empty()) << kind;
  return out;
}

Count count(const std::string& text) {
  return std::stoull(text);
}
double real(const std::string& text) {
  return std::stod(text);
}

// R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in Medicine 17 (1998) 857-872,
// table I, method 3 (Wilson's score interval); from memory.
TEST(Outside, WilsonIntervalsOfNewcombe) {
  struct {
    Count count, of;
    double low, high;
  } table[] = {{81, 263, 0.2553, 0.3662}, {15, 148, 0.0624, 0.1605}, {0, 20, 0.0000, 0.1611}, {1, 29, 0.0061, 0.1718}};
  for (const auto& row : table) {
    Interval interval = wilson(row.count, row.of);
    EXPECT_NEAR(interval.low, row.low, 5e-5) << row.count;
    EXPECT_NEAR(interval.high, row.high, 5e-5) << row.count;
  }
}

TEST(Outside, WilsonIntervalsOfStatsmodels) {
  for (const auto& row : rows("wilson")) {
    Interval interval = wilson(count(row[0]), count(row[1]));
    EXPECT_NEAR(interval.low, real(row[2]), 1e-12) << row[0] << " of " << row[1];
    EXPECT_NEAR(interval.high, real(row[3]), 1e-12) << row[0] << " of " << row[1];
  }
}

// R. A. Fisher, "The Design of Experiments" (1935), chapter II: eight cups of tea, four of them with the milk first. 70 ways
// to choose four; 1 of them all right, 16 with three right, 36 with two.
TEST(Outside, TheLadyTastingTea) {
  EXPECT_NEAR(fisher_exact(4, 0, 0, 4), 2.0 / 70, 1e-12);
  EXPECT_NEAR(fisher_exact(3, 1, 1, 3), 34.0 / 70, 1e-12);
  EXPECT_NEAR(fisher_exact(2, 2, 2, 2), 1.0, 1e-12);
}

TEST(Outside, ExactTestsOfSciPy) {
  for (const auto& row : rows("fisher")) {
    double expected = real(row[4]);
    double got = fisher_exact(count(row[0]), count(row[1]), count(row[2]), count(row[3]));
    EXPECT_NEAR(got, expected, 1e-7 * expected + 1e-14) << row[0] << " " << row[1] << " " << row[2] << " " << row[3];
  }
}

TEST(Outside, HolmOfStatsmodels) {
  for (const auto& row : rows("holm")) {
    std::vector<double> chances;
    for (const std::string& chance : split(row[0], ' ')) chances.push_back(real(chance));
    std::vector<double> raised = holm(chances);
    std::vector<std::string> expected = split(row[1], ' ');
    ASSERT_EQ(raised.size(), expected.size());
    for (std::size_t i = 0; i < raised.size(); ++i) EXPECT_NEAR(raised[i], real(expected[i]), 1e-12);
  }
}

// Proportions times 100 of J. L. Fleiss, J. Cohen and B. S. Everitt, "Large sample standard errors of kappa and weighted
// kappa", Psychological Bulletin 72 (1969) 323-327, table 1: kappa .429. Counts of J. Cohen, "Weighted kappa", Psychological
// Bulletin 70 (1968) 213-220, table 1: kappa .492. Both from memory.
TEST(Outside, KappasAsPublished) {
  Crosstab fleiss = {{{1, 1}, 53}, {{1, 2}, 5}, {{1, 3}, 2}, {{2, 1}, 11}, {{2, 2}, 14}, {{2, 3}, 5}, {{3, 1}, 1}, {{3, 2}, 6}, {{3, 3}, 3}};
  Crosstab cohen = {{{1, 1}, 88}, {{1, 2}, 14}, {{1, 3}, 18}, {{2, 1}, 10}, {{2, 2}, 40}, {{2, 3}, 10}, {{3, 1}, 2}, {{3, 2}, 6}, {{3, 3}, 12}};
  EXPECT_NEAR(kappa(fleiss).value(), 0.429, 5e-4);
  EXPECT_NEAR(kappa(cohen).value(), 0.492, 5e-4);
}

TEST(Outside, KappasOfStatsmodels) {
  for (const auto& row : rows("kappa")) {
    Crosstab table;
    for (const std::string& cell : split(row[0], ' ')) {
      std::vector<std::string> parts = split(cell, ',');
      table[{std::stoi(parts[0]), std::stoi(parts[1])}] = count(parts[2]);
    }
    EXPECT_NEAR(kappa(table).value(), real(row[1]), 1e-12);
    EXPECT_NEAR(weighted_kappa(table).value(), real(row[2]), 1e-12);
  }
}

TEST(Outside, DriftIsTheLineOfSciPy) {
  for (const auto& row : rows("drift")) {
    DriftSums sums;
    for (const std::string& cell : split(row[0], ' ')) {
      std::vector<std::string> parts = split(cell, ',');
      sums.add(std::stoll(parts[0]), std::stoi(parts[1]), std::stoi(parts[2]), std::stoi(parts[3]));
    }
    std::optional<Drift> got = drift(sums);
    ASSERT_TRUE(got.has_value());
    EXPECT_NEAR(got->change, real(row[1]), 1e-9);
    EXPECT_NEAR(got->interval.low, real(row[2]), 1e-6);
    EXPECT_NEAR(got->interval.high, real(row[3]), 1e-6);
  }
}

// The first outputs of SplitMix64 from the state 1234567, as its reference implementation (S. Vigna, splitmix64.c, public
// domain) gives them; from memory.
TEST(Outside, SplitMix64) {
  Random random(1234567);
  EXPECT_EQ(random.next(), 6457827717110365317U);
  EXPECT_EQ(random.next(), 3203168211198807973U);
}

}  // namespace
}  // namespace retort::cohort
