#include "classroom/picture.h"

namespace retort::classroom {

Picture make_picture(const Rubric& rubric, const std::vector<Draft>& drafts, const std::vector<std::string>& names) {
  std::vector<std::string_view> labels(names.begin(), names.end());
  for (const Draft& draft : drafts) labels.emplace_back(draft.label);
  Anonymity anonymity(labels);
  Picture out;
  out.drafts = order_of_drafts(drafts);
  out.tallies = tally(rubric.steps.size(), drafts);
  out.steps = order_of_steps(out.tallies);
  out.omissions = order_of_omissions(rubric, out.tallies);
  out.reteach = choose_reteach(rubric, drafts, out.tallies, anonymity);
  out.grouping = make_groups(rubric, drafts);
  out.sums = count_sums(drafts, anonymity);
  out.concerns = find_concerns(rubric, drafts);
  return out;
}

}  // namespace retort::classroom
