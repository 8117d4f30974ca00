#include "results/repeats.h"

#include <algorithm>
#include <array>

namespace retort::results {
namespace {

constexpr int kUsualRanges = 3;
constexpr int kOwnRanges = 2;
constexpr int kSteps = 3;
constexpr std::size_t kRowsThatTell = 3;

// Dean and Dixon (1951): Q at 90 % for 3, 4, … 10 readings, in hundredths.
constexpr std::array<int, 8> kDixon = {94, 76, 64, 56, 51, 47, 44, 41};

Exact dixon(std::size_t count) { return Exact(kDixon[std::min(count - 3, kDixon.size() - 1)], 100); }

// Two readings alone are said to disagree if they differ by more than this part of their mean; common practice, no source.
const Exact& parts_that_agree() {
  static const Exact kTenth(1, 10);
  return kTenth;
}

// The readings of a group that are kept, as indices in the order of their values.
std::vector<std::size_t> sorted_kept(const Group& group) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < group.readings.size(); ++i) {
    if (group.readings[i].kept) out.push_back(i);
  }
  std::sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) { return group.readings[a].value < group.readings[b].value; });
  return out;
}

Exact range_of(const Group& group, const std::vector<std::size_t>& sorted) {
  return sorted.empty() ? Exact(0) : Exact(group.readings[sorted.back()].value - group.readings[sorted.front()].value);
}

// One step of the scale the readings were taken from: the finest place that one of them is written to.
int place_of(const Group& group) {
  int place = 0;
  bool first = true;
  for (const Reading& reading : group.readings) {
    if (!first && reading.last_place >= place) continue;
    place = reading.last_place;
    first = false;
  }
  return place;
}

class Summariser {
 public:
  explicit Summariser(const std::vector<Group>& groups) {
    for (const Group& group : groups) {
      if (group.readings.size() > 1) ranges_.push_back(range_of(group, sorted_kept(group)));
    }
    std::sort(ranges_.begin(), ranges_.end());
  }

  Summary summarise(Group& group) const {
    Summary out;
    out.place = place_of(group);
    std::optional<Exact> usual = usual_range_beside(group);
    std::size_t most = group.readings.empty() ? 0 : (group.readings.size() - 1) / 2;
    while (group.readings.size() >= 3 && out.anomalies.size() < most) {
      std::optional<Anomaly> found = find(group, usual, out.place);
      if (!found) break;
      group.readings[found->reading].kept = false;
      out.anomalies.push_back(std::move(*found));
    }
    fill(group, out);
    out.disagree = disagree(group, usual, out);
    return out;
  }

 private:
  // The median range of the other groups with repeats; none if there are too few of them.
  [[nodiscard]] std::optional<Exact> usual_range_beside(const Group& group) const {
    bool counted = group.readings.size() > 1;
    std::size_t others = ranges_.size() - (counted ? 1 : 0);
    if (others < kRowsThatTell) return std::nullopt;
    std::size_t own = ranges_.size();
    if (counted) own = static_cast<std::size_t>(std::lower_bound(ranges_.begin(), ranges_.end(), range_of(group, sorted_kept(group))) - ranges_.begin());
    auto at = [&](std::size_t i) { return ranges_[i < own ? i : i + 1]; };
    return others % 2 == 1 ? at(others / 2) : Exact((at(others / 2 - 1) + at(others / 2)) / 2);
  }

  // The reading at either end that stands farthest from its neighbour, if it is an anomaly.
  static std::optional<Anomaly> find(const Group& group, const std::optional<Exact>& usual, int place) {
    std::vector<std::size_t> sorted = sorted_kept(group);
    if (sorted.size() < 3) return std::nullopt;
    auto value = [&](std::size_t i) { return group.readings[sorted[i]].value; };
    std::size_t last = sorted.size() - 1;
    Exact low_gap = value(1) - value(0);
    Exact high_gap = value(last) - value(last - 1);
    bool high = high_gap > low_gap;
    Anomaly out;
    out.reading = high ? sorted[last] : sorted[0];
    out.gap = high ? high_gap : low_gap;
    Exact whole = value(last) - value(0);
    Exact others = whole - out.gap;
    Exact steps = power_of_ten(place) * kSteps;
    if (usual) {
      out.usual = *usual;
      out.limit = std::max({Exact(*usual * kUsualRanges), Exact(others * kOwnRanges), steps});
    } else {
      out.rule = AnomalyRule::dixon;
      out.limit = std::max(Exact(whole * dixon(sorted.size())), steps);
    }
    if (out.gap <= out.limit) return std::nullopt;
    return out;
  }

  static void fill(const Group& group, Summary& out) {
    std::vector<std::size_t> sorted = sorted_kept(group);
    out.kept = sorted.size();
    if (sorted.empty()) return;
    Exact sum = 0;
    for (std::size_t i : sorted) sum += group.readings[i].value;
    out.mean = sum / static_cast<unsigned long>(sorted.size());
    out.range = range_of(group, sorted);
    out.uncertainty = out.range / 2;
    if (sorted.size() > 1 && out.mean != 0) out.percent = to_double(out.uncertainty / abs(out.mean) * 100);
  }

  static bool disagree(const Group& group, const std::optional<Exact>& usual, const Summary& summary) {
    if (summary.kept < 2) return false;
    Exact steps = power_of_ten(summary.place) * kSteps;
    Exact limit = usual ? Exact(*usual * kUsualRanges) : Exact(abs(summary.mean) * parts_that_agree());
    bool told = usual || group.readings.size() == 2;
    return told && summary.range > std::max(limit, steps);
  }

  std::vector<Exact> ranges_;  // of all groups with repeats, sorted
};

}  // namespace

std::vector<Summary> summarise(std::vector<Group>& groups) {
  Summariser summariser(groups);
  std::vector<Summary> out;
  for (Group& group : groups) out.push_back(summariser.summarise(group));
  return out;
}

}  // namespace retort::results
