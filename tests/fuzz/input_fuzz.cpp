// Any bytes as a .jsonl file and as labelled answers.
#include <cstdlib>
#include <string>

#include "base/messages.h"
#include "intake/answer.h"
#include "proof/labelled.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace retort;
  std::string content(reinterpret_cast<const char*>(data), size);
  Findings findings;
  std::size_t number = 0;
  std::string_view rest = content;
  while (!rest.empty()) {
    std::size_t end = rest.find('\n');
    Answer answer;
    bool good = read_answer_line(rest.substr(0, end), "fuzz", ++number, answer, findings);
    if (good && answer.id.empty()) std::abort();
    rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
  }
  Rubric rubric;
  rubric.id = "r";
  rubric.steps.resize(1);
  rubric.steps[0].id = "s";
  for (const LabelledAnswer& answer : read_labelled(content, "fuzz", rubric, findings)) {
    if (answer.labels.size() != 1) std::abort();
  }
  for (const Finding& finding : findings) describe(finding, {});
  return 0;
}
