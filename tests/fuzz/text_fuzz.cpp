// Any bytes as an answer: read, checked against a shipped rubric, written as JSON and as text.
#include <cstdlib>
#include <string>

#include "intake/rubric_folder.h"
#include "report/review_json.h"
#include "report/review_text.h"
#include "rubric/json.h"

namespace {

using namespace retort;

struct Ready {
  Ready() {
    setenv("RETORT_RUBRICS", RETORT_SOURCE_DIR "/rubrics", 1);
    Result<RubricFolder> opened = open_rubrics();
    if (!opened) std::abort();
    folder = std::move(opened).value();
    checker = Checker::make("spring-extension.json", folder.files, folder.real_words).checker;
    if (!checker) std::abort();
    reviewer = std::make_unique<Reviewer>(*checker);
  }
  RubricFolder folder;
  std::unique_ptr<Checker> checker;
  std::unique_ptr<Reviewer> reviewer;
};

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static Ready ready;
  Answer answer;
  answer.id = "fuzz";
  answer.text.assign(reinterpret_cast<const char*>(data), size);
  Review review = ready.reviewer->review(answer.text);
  for (const StepReview& step : review.steps) {
    for (Span span : step.evidence) {
      if (span.begin >= span.end || span.end > size) std::abort();
    }
  }
  std::string json;
  append_review_json(ready.checker->rubric(), answer, review, json);
  Findings findings;
  if (!json::parse(json, "out", findings) || !findings.empty()) std::abort();
  std::string text;
  append_review_text(ready.checker->rubric(), answer, review, 80, text);
  return 0;
}
