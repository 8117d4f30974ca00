// Drafts cut where marks begin and end.
#include "report/draft_pieces.h"

#include <gtest/gtest.h>

namespace retort {
namespace {

StepReview step(StepStatus status, std::vector<Span> evidence) { return {status, std::move(evidence), ""}; }

calc::Calculation sum(Span span, calc::Verdict verdict) {
  calc::Calculation out;
  out.span = span;
  out.verdict = verdict;
  return out;
}

// "there[1]:words|..." for each piece.
std::string shown(std::string_view text, const Review& review) {
  constexpr std::string_view kKinds[] = {"", "there", "near", "sum"};
  std::string out;
  for (const DraftPiece& piece : draft_pieces(text, review)) {
    out += (out.empty() ? "" : "|") + std::string(kKinds[static_cast<std::size_t>(piece.kind)]);
    for (std::size_t i : piece.steps) out += "[" + std::to_string(i) + "]";
    out += ":" + std::string(piece.span.of(text));
  }
  return out;
}

TEST(DraftPieces, Cut) {
  using enum StepStatus;
  const std::string text = "0123456789";
  const struct {
    const char* name;
    std::vector<StepReview> steps;
    std::vector<calc::Calculation> sums;
    const char* expected;
  } rows[] = {
      {"no marks", {step(missing, {})}, {}, ":0123456789"},
      {"one step there", {step(present, {{2, 5}})}, {}, ":01|there[0]:234|:56789"},
      {"at both ends", {step(present, {{0, 2}, {8, 10}})}, {}, "there[0]:01|:234567|there[0]:89"},
      {"evidence of a missing step is not marked", {step(missing, {{2, 5}})}, {}, ":0123456789"},
      {"the same words for two steps", {step(vague, {{2, 5}}), step(present, {{2, 5}})}, {}, ":01|there[0][1]:234|:56789"},
      {"one over the other's end", {step(present, {{0, 5}}), step(vague, {{3, 8}})}, {}, "there[0]:012|there[1]:34|near:567|:89"},
      {"one within the other", {step(vague, {{0, 10}}), step(present, {{4, 6}})}, {}, "near[0]:0123|there[1]:45|near:6789"},
      {"a wrong sum goes first", {step(present, {{0, 10}})}, {sum({4, 6}, calc::Verdict::wrong)}, "there[0]:0123|sum:45|there:6789"},
      {"a right sum is not marked", {step(missing, {})}, {sum({4, 6}, calc::Verdict::right)}, ":0123456789"},
      {"a span outside of the text", {step(present, {{8, 12}})}, {}, ":0123456789"},
      {"an empty span", {step(present, {{3, 3}})}, {}, ":0123456789"},
  };
  for (const auto& row : rows) {
    Review review;
    review.steps = row.steps;
    review.calculations = row.sums;
    EXPECT_EQ(shown(text, review), row.expected) << row.name;
  }
  EXPECT_TRUE(draft_pieces("", Review{}).empty());
}

}  // namespace
}  // namespace retort
