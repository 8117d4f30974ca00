#include "results/pupil_mean.h"

#include <algorithm>

namespace retort::results {
namespace {

constexpr std::size_t kMostTried = 50;  // readings tried one by one

class Judge {
 public:
  Judge(const Group& group, const Summary& summary) : group_(group), summary_(summary), own_(*group.pupil_mean) {
    for (const Reading& reading : group.readings) {
      sum_all_ += reading.value;
      if (reading.kept) sum_kept_ += reading.value;
    }
  }

  [[nodiscard]] MeanCheck run() const {
    if (is(summary_.mean)) return {places(), 0, {}};
    if (group_.readings.size() > summary_.kept && is(sum_all_ / count(group_.readings.size()))) return {MeanVerdict::anomaly_left_in, 0, {}};
    if (near(summary_.mean)) return {MeanVerdict::rounding, 0, {}};
    if (auto found = wrong_count()) return *found;
    if (is_middle()) return {MeanVerdict::middle_reading, 0, {}};
    if (auto found = left_out()) return *found;
    return {MeanVerdict::other, 0, {}};
  }

 private:
  static Exact count(std::size_t n) { return Exact(static_cast<unsigned long>(n)); }

  // Whether the pupil's mean is `value`, rounded to as many places as the pupil wrote; a half may go either way.
  [[nodiscard]] bool is(const Exact& value) const {
    Exact half = power_of_ten(own_.last_place) / 2;
    return abs(own_.value - value) <= half && rounded(own_.value, own_.last_place) == own_.value;
  }
  // Off by less than one unit of its last place.
  [[nodiscard]] bool near(const Exact& value) const { return abs(own_.value - value) < power_of_ten(own_.last_place); }

  // The value is right; are its places?
  [[nodiscard]] MeanVerdict places() const {
    if (own_.last_place > summary_.place) return MeanVerdict::fewer_places;
    if (own_.last_place < summary_.place - 1) return MeanVerdict::more_places;
    if (own_.last_place == summary_.place) return MeanVerdict::right;
    // one place more is right if the mean ends there: 2.5 of 2 and 3
    return own_.value == summary_.mean ? MeanVerdict::right : MeanVerdict::more_places;
  }

  [[nodiscard]] std::optional<MeanCheck> wrong_count() const {
    std::size_t all = group_.readings.size();
    for (std::size_t divisor : {all, summary_.kept, all + 1, all - 1, summary_.kept + 1, summary_.kept - 1}) {
      if (divisor == 0) continue;
      bool kept = divisor != summary_.kept && is(sum_kept_ / count(divisor));
      bool whole = divisor != all && is(sum_all_ / count(divisor));
      if (kept || whole) return MeanCheck{MeanVerdict::wrong_count, divisor, {}};
    }
    return std::nullopt;
  }

  [[nodiscard]] std::optional<MeanCheck> left_out() const {
    if (summary_.kept < 3) return std::nullopt;
    for (std::size_t i = 0; i < std::min(group_.readings.size(), kMostTried); ++i) {
      const Reading& reading = group_.readings[i];
      if (reading.kept && is((sum_kept_ - reading.value) / count(summary_.kept - 1))) return MeanCheck{MeanVerdict::reading_left_out, 0, i};
    }
    return std::nullopt;
  }

  [[nodiscard]] bool is_middle() const {
    std::vector<Exact> values;
    for (const Reading& reading : group_.readings) values.push_back(reading.value);
    std::sort(values.begin(), values.end());
    return values.size() % 2 == 1 && values.size() > 1 && values[values.size() / 2] == own_.value;
  }

  const Group& group_;
  const Summary& summary_;
  const Reading& own_;
  Exact sum_all_ = 0;
  Exact sum_kept_ = 0;
};

}  // namespace

MeanCheck check_mean(const Group& group, const Summary& summary) { return Judge(group, summary).run(); }

}  // namespace retort::results
