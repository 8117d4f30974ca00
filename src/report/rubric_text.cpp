#include "report/rubric_text.h"

#include "report/page.h"

namespace retort {
namespace {

std::string list(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

void labelled(std::string_view label, const std::string& text, std::size_t width, std::string& out) {
  if (text.empty()) return;
  std::string first = "      " + std::string(label);
  first.resize(17, ' ');
  append_wrapped(text, width, first, std::string(17, ' '), out);
}

void example(const Step& step, StepStatus status, std::size_t width, std::string& out) {
  for (const Example& e : step.examples) {
    if (e.status != status) continue;
    labelled("for instance", "\"" + e.text + "\"", width, out);
    return;
  }
}

}  // namespace

std::string rubric_text(const Rubric& rubric, std::size_t width) {
  std::string out = rubric.title + "  [" + rubric.id + "]\n\n";
  append_wrapped(rubric.question, width, "  ", "  ", out);
  out += "\n";
  if (!rubric.given.wordings.empty()) append_wrapped("The table gives (" + rubric.given.quantity + "): " + list(rubric.given.wordings), width, "  ", "    ", out);
  if (!rubric.given.apparatus.empty()) append_wrapped("Apparatus: " + list(rubric.given.apparatus), width, "  ", "    ", out);
  if (!rubric.given.hypothesis.empty()) append_wrapped("Hypothesis: " + rubric.given.hypothesis, width, "  ", "    ", out);
  out += "\nSteps (* core)\n";
  for (std::size_t i = 0; i < rubric.steps.size(); ++i) {
    const Step& step = rubric.steps[i];
    std::string number = std::to_string(i + 1);
    append_wrapped(step.title + (step.core ? " *" : "") + "  [" + step.id + ", " + step.facet + "]", width,
                   "\n  " + std::string(number.size() < 2 ? 1 : 0, ' ') + number + "  ", "      ", out);
    labelled("present", step.present_means, width, out);
    example(step, StepStatus::present, width, out);
    labelled("vague", step.vague_means, width, out);
    example(step, StepStatus::vague, width, out);
    labelled("nudge", step.hint, width, out);
  }
  if (!rubric.order.empty()) out += "\nOrder\n";
  for (const auto& [first, then] : rubric.order) {
    append_wrapped(rubric.steps[first].title + "  before  " + rubric.steps[then].title, width, "  - ", "    ", out);
  }
  if (!rubric.cautions.empty()) out += "\nUsual cautions\n";
  for (const std::string& caution : rubric.cautions) append_wrapped(caution, width, "  - ", "    ", out);
  append_wrapped("The school's own risk assessment and local rules come first.", width, "\n  ", "  ", out);
  return out;
}

}  // namespace retort
