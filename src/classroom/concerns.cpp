#include "classroom/concerns.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>

#include "classroom/likeness.h"

namespace retort::classroom {
namespace {

bool nothing_found(const Review& review) {
  return std::all_of(review.steps.begin(), review.steps.end(), [](const StepReview& step) { return step.status == StepStatus::missing; });
}

std::string number(std::size_t value) {
  return std::to_string(value);
}

void look_at(const Draft& draft, std::size_t i, std::vector<Concern>& out) {
  const Review& r = draft.review;
  if (r.words == 0) {
    out.push_back({Code::concern_no_words, {i}, {}});
    return;
  }
  if (!draft.fits_better.empty())
    out.push_back({Code::concern_other_practical, {i}, {draft.fits_better}});
  else if (nothing_found(r))
    out.push_back({Code::concern_nothing_found, {i}, {}});
  if (r.copied_words * 2 > r.words) out.push_back({Code::concern_copied, {i}, {number(r.copied_words * 100 / r.words)}});
  if (std::size_t words = count_words(draft.text); words < kShortDraft) out.push_back({Code::concern_too_short, {i}, {number(words)}});
  if (r.invalid_bytes > 0) out.push_back({Code::concern_invalid_bytes, {i}, {number(r.invalid_bytes)}});
}

void look_for_copies(const Rubric& rubric, const std::vector<Draft>& drafts, std::vector<Concern>& out) {
  std::vector<std::string_view> texts;
  for (const Draft& draft : drafts) texts.emplace_back(draft.text);
  for (Alike& alike : near_copies(texts, rubric.question)) {
    auto percent = static_cast<std::size_t>(std::floor(alike.least * 100.0));
    out.push_back({Code::concern_near_copies, std::move(alike.drafts), {number(percent)}});
  }
}

void look_for_labels(const std::vector<Draft>& drafts, std::vector<Concern>& out) {
  std::map<std::string_view, std::vector<std::size_t>> by_label;
  for (std::size_t i = 0; i < drafts.size(); ++i) by_label[drafts[i].label].push_back(i);
  for (const auto& [label, who] : by_label) {
    if (who.size() > 1) out.push_back({Code::concern_label_twice, who, {number(who.size())}});
  }
}

}  // namespace

std::size_t count_words(std::string_view text) {
  std::size_t count = 0;
  bool in_word = false;
  for (char c : text) {
    auto u = static_cast<unsigned char>(c);
    if (u <= ' ') {
      in_word = false;
    } else if (!in_word && (std::isalnum(u) != 0 || u >= 0x80)) {
      in_word = true;
      ++count;
    }
  }
  return count;
}

std::vector<Concern> find_concerns(const Rubric& rubric, const std::vector<Draft>& drafts) {
  std::vector<Concern> out;
  for (std::size_t i = 0; i < drafts.size(); ++i) look_at(drafts[i], i, out);
  look_for_copies(rubric, drafts, out);
  look_for_labels(drafts, out);
  std::stable_sort(out.begin(), out.end(), [](const Concern& a, const Concern& b) { return a.code < b.code; });
  return out;
}

}  // namespace retort::classroom
