// Checked answers made for tests.
#pragma once
#include <string>
#include <vector>

#include "cohort/random.h"
#include "cohort/tally.h"

namespace retort::test {

// `many` answers of a few groups, marks, places and slips, by chance from `seed`.
inline std::vector<cohort::Entry> some_entries(std::size_t many, std::uint64_t seed) {
  cohort::Random random(seed);
  auto below = [&](std::uint64_t limit) { return static_cast<int>(random.next() % limit); };
  std::vector<cohort::Entry> out;
  for (std::size_t i = 0; i < many; ++i) {
    cohort::Entry entry;
    entry.rubric = below(5) == 0 ? "other" : "small";
    entry.id = "pupil-" + std::to_string(i);
    entry.group = below(9) == 0 ? "" : "class " + std::to_string(below(4));
    if (below(6) != 0) entry.mark = below(7);
    if (below(3) != 0) entry.mark2 = below(7);
    if (below(2) != 0) entry.place = static_cast<std::int64_t>(i);
    for (const char* id : {"ruler", "repeat", "safety"}) entry.steps.push_back({id, static_cast<StepStatus>(below(3)), std::string(id) != "safety"});
    entry.has_level = below(8) != 0;
    entry.level.low = below(5);
    entry.level.high = entry.level.low + below(2);
    entry.wrong = static_cast<cohort::Count>(below(2));
    if (entry.wrong > 0) entry.slips = {below(2) != 0 ? "rounding" : "power-of-ten"};
    out.push_back(entry);
  }
  return out;
}

}  // namespace retort::test
