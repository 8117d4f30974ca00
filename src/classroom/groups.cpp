#include "classroom/groups.h"

#include <algorithm>

#include "classroom/reteach.h"
#include "classroom/tally.h"

namespace retort::classroom {
namespace {

class Grouper {
 public:
  Grouper(const Rubric& rubric, const std::vector<Draft>& drafts) : drafts_(drafts), core_(core_steps(rubric)), free_(order_of_drafts(drafts)) {}

  Grouping run() {
    std::size_t all = free_.size();
    std::erase_if(free_, [&](std::size_t draft) {
      bool complete = std::none_of(core_.begin(), core_.end(), [&](std::size_t step) { return lacks(draft, step); });
      if (complete) out_.complete.push_back(draft);
      return complete;
    });
    std::vector<std::size_t> few;
    std::vector<std::size_t> many;
    for (std::size_t step : core_) (lacking(step).size() * 2 < all ? few : many).push_back(step);
    take(few);
    take(many);
    out_.alone = free_;
    return std::move(out_);
  }

 private:
  [[nodiscard]] bool lacks(std::size_t draft, std::size_t step) const { return drafts_[draft].review.steps[step].status != StepStatus::present; }

  // Those not yet in a group who lack it.
  [[nodiscard]] std::vector<std::size_t> lacking(std::size_t step) const {
    std::vector<std::size_t> out;
    std::copy_if(free_.begin(), free_.end(), std::back_inserter(out), [&](std::size_t draft) { return lacks(draft, step); });
    return out;
  }

  void take(const std::vector<std::size_t>& steps) {
    for (;;) {
      std::vector<std::size_t> most;
      std::size_t topic = 0;
      for (std::size_t step : steps) {
        std::vector<std::size_t> who = lacking(step);
        if (who.size() > most.size()) {
          most = std::move(who);
          topic = step;
        }
      }
      if (most.size() < 2) return;
      share_out(topic, most);
      std::erase_if(free_, [&](std::size_t draft) { return std::find(most.begin(), most.end(), draft) != most.end(); });
    }
  }

  void share_out(std::size_t topic, const std::vector<std::size_t>& who) {
    std::size_t count = (who.size() + kLargestGroup - 1) / kLargestGroup;
    for (std::size_t g = 0; g < count; ++g) {
      auto from = who.begin() + static_cast<std::ptrdiff_t>(g * who.size() / count);
      auto to = who.begin() + static_cast<std::ptrdiff_t>((g + 1) * who.size() / count);
      Group group{topic, {from, to}, {}};
      for (std::size_t step : core_) {
        bool all = std::all_of(from, to, [&](std::size_t draft) { return lacks(draft, step); });
        if (step != topic && all) group.also.push_back(step);
      }
      out_.groups.push_back(std::move(group));
    }
  }

  const std::vector<Draft>& drafts_;
  std::vector<std::size_t> core_;
  std::vector<std::size_t> free_;  // not yet in a group, in the order of the class table
  Grouping out_;
};

}  // namespace

Grouping make_groups(const Rubric& rubric, const std::vector<Draft>& drafts) {
  return Grouper(rubric, drafts).run();
}

}  // namespace retort::classroom
