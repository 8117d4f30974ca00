#include "cohort/agreement.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <vector>

#include "cohort/random.h"

namespace retort::cohort {
namespace {

double real(Count count) {
  return static_cast<double>(count);
}

struct Margins {
  std::map<int, Count> first, second;
  Count answers = 0;
};

Margins margins(const Crosstab& table) {
  Margins out;
  for (const auto& [marks, count] : table) {
    out.first[marks.first] += count;
    out.second[marks.second] += count;
    out.answers += count;
  }
  return out;
}

// 1 - observed / expected disagreement, where `weight` says how much two marks disagree.
template <typename Weight>
std::optional<double> one_minus_ratio(const Crosstab& table, const Weight& weight) {
  Margins sums = margins(table);
  if (sums.answers == 0) return std::nullopt;
  double observed = 0.0;
  for (const auto& [marks, count] : table) observed += weight(marks.first, marks.second) * real(count);
  double expected = 0.0;
  for (const auto& [first, a] : sums.first) {
    for (const auto& [second, b] : sums.second) expected += weight(first, second) * real(a) * real(b) / real(sums.answers);
  }
  if (expected <= 0.0) return std::nullopt;
  return 1 - observed / expected;
}

Interval percentiles(std::vector<double>& values) {
  std::sort(values.begin(), values.end());
  // The 2.5 % and 97.5 % of B values: the (B x 0.025)th, and as many from the other end.
  auto cut = static_cast<std::size_t>(std::floor(0.025 * static_cast<double>(values.size())));
  std::size_t at = cut > 0 ? cut - 1 : 0;
  return {values[at], values[values.size() - 1 - at]};
}

struct Redrawn {
  std::vector<double> plain, weighted;
};

Redrawn redraw(const Crosstab& table, std::uint64_t seed) {
  std::vector<Count> counts, drawn;
  for (const auto& [marks, count] : table) counts.push_back(count);
  Random random(seed);
  Redrawn out;
  Crosstab again = table;
  for (int i = 0; i < kRedraws; ++i) {
    random.redraw(counts, drawn);
    auto next = drawn.begin();
    for (auto& [marks, count] : again) count = *next++;
    if (std::optional<double> value = kappa(again)) out.plain.push_back(*value);
    if (std::optional<double> value = weighted_kappa(again)) out.weighted.push_back(*value);
  }
  return out;
}

std::optional<Estimate> estimate(std::optional<double> value, std::vector<double>& redrawn) {
  if (!value) return std::nullopt;
  Estimate out{*value, std::nullopt};
  if (redrawn.size() * 20 >= static_cast<std::size_t>(kRedraws) * 19) out.interval = percentiles(redrawn);
  return out;
}

}  // namespace

std::optional<double> kappa(const Crosstab& table) {
  return one_minus_ratio(table, [](int a, int b) { return a == b ? 0.0 : 1.0; });
}

std::optional<double> weighted_kappa(const Crosstab& table) {
  return one_minus_ratio(table, [](int a, int b) { return static_cast<double>(a - b) * static_cast<double>(a - b); });
}

MarkerAgreement marker_agreement(const Crosstab& table, std::uint64_t seed) {
  MarkerAgreement out;
  Count exact = 0, within = 0;
  double first = 0.0, second = 0.0;
  for (const auto& [marks, count] : table) {
    int apart = std::abs(marks.first - marks.second);
    if (apart == 0) exact += count;
    if (apart <= 1) within += count;
    first += marks.first * real(count);
    second += marks.second * real(count);
    out.answers += count;
  }
  out.exact = share(exact, out.answers);
  out.within_one = share(within, out.answers);
  if (out.answers == 0) return out;
  out.first_mean = first / real(out.answers);
  out.second_mean = second / real(out.answers);
  Redrawn redrawn = redraw(table, seed);
  out.kappa = estimate(kappa(table), redrawn.plain);
  out.weighted = estimate(weighted_kappa(table), redrawn.weighted);
  return out;
}

}  // namespace retort::cohort
