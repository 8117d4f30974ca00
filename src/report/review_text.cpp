#include "report/review_text.h"

#include "base/messages.h"
#include "report/calc_text.h"
#include "report/page.h"

namespace retort {
namespace {

std::string rule(std::string_view title, std::size_t width) {
  std::string out = "---- " + std::string(title) + " ";
  std::size_t used = columns(out);
  if (used < width) out.append(width - used, '-');
  return out + "\n";
}

std::string range_words(const Level& level) {
  return level.low == level.high ? std::to_string(level.low) : std::to_string(level.low) + " to " + std::to_string(level.high);
}

std::vector<Underline> underlines(const Review& review) {
  std::vector<Underline> marks;
  for (std::size_t i = 0; i < review.steps.size(); ++i) {
    bool vague = review.steps[i].status == StepStatus::vague;
    for (Span span : review.steps[i].evidence) marks.push_back({span, std::to_string(i + 1) + (vague ? "?" : ""), vague ? '~' : '-'});
  }
  return marks;
}

std::string quoted(const Answer& answer, const StepReview& step) {
  std::string out;
  constexpr std::size_t kMostQuotes = 2;
  for (std::size_t i = 0; i < step.evidence.size() && i < kMostQuotes; ++i) {
    out += (i == 0 ? "" : " ... ") + std::string("\"") + printable(step.evidence[i].of(answer.text), 70) + "\"";
  }
  return out;
}

void append_steps(const Rubric& rubric, const Answer& answer, const Review& review, StepStatus status, std::string_view heading,
                  std::size_t width, std::string& out) {
  std::size_t count = 0;
  for (const StepReview& step : review.steps) count += step.status == status ? 1U : 0U;
  if (count == 0) return;
  out += "\n" + std::string(heading) + " (" + std::to_string(count) + ")\n";
  for (std::size_t i = 0; i < review.steps.size(); ++i) {
    const StepReview& step = review.steps[i];
    if (step.status != status) continue;
    std::string number = std::to_string(i + 1) + (status == StepStatus::vague ? "?" : "");
    std::string first = "  " + std::string(number.size() < 3 ? 3 - number.size() : 0, ' ') + number + "  ";
    std::string line = rubric.steps[i].title;
    if (rubric.steps[i].core) line += " *";
    if (status != StepStatus::missing) line += ": " + quoted(answer, step);
    append_wrapped(line, width, first, "       ", out);
    if (!step.note.empty()) append_wrapped(step.note, width, "       > ", "         ", out);
  }
}

void append_order(const Rubric& rubric, const Review& review, std::size_t width, std::string& out) {
  std::string broken;
  for (std::size_t i = 0; i < review.order.size(); ++i) {
    if (!review.order[i].both || review.order[i].kept) continue;
    const auto& [first, then] = rubric.order[i];
    append_wrapped("\"" + rubric.steps[first].title + "\" should come before \"" + rubric.steps[then].title + "\".", width, "  - ", "    ", broken);
  }
  if (!broken.empty()) out += "\nOrder\n" + broken;
}

}  // namespace

std::string review_text_heading(const Rubric& rubric, std::size_t width) {
  std::string out = rule(rubric.title, width);
  append_wrapped(rubric.question, width, "  ", "  ", out);
  out += "\n";
  append_wrapped("Under each draft, 3---- marks words that earn step 3 and 3?~~~ words that are near it but not clear enough.", width, "  ", "  ", out);
  return out;
}

std::string review_text_closing(const Rubric& rubric, std::size_t width) {
  std::string out = rule("For all of these", width);
  append_wrapped("A step with * is one that the method cannot do without. Marks are an indication only: a person reads the answer and decides.",
                 width, "  ", "  ", out);
  if (!rubric.cautions.empty()) {
    out += "\n  Before anyone does this practical\n";
    for (const std::string& caution : rubric.cautions) append_wrapped(caution, width, "  - ", "    ", out);
  }
  append_wrapped("The school's own risk assessment and local rules come first.", width, "  ", "  ", out);
  return out;
}

void append_review_text(const Rubric& rubric, const Answer& answer, const Review& review, std::size_t width, std::string& out) {
  out += "\n" + rule(printable(answer.id, 60), width);
  if (review.words == 0) {
    out += "  There are no words in this answer.\n";
    return;
  }
  std::string_view text = answer.text;
  text = text.substr(0, text.find_last_not_of(" \t\r\n") + 1);
  append_marked(text, underlines(review), width, "  ", out);
  append_steps(rubric, answer, review, StepStatus::present, "There", width, out);
  append_steps(rubric, answer, review, StepStatus::vague, "Mentioned, but not clear enough yet", width, out);
  append_steps(rubric, answer, review, StepStatus::missing, "Not found", width, out);
  append_order(rubric, review, width, out);
  if (!review.calculations.empty()) {
    out += "\nCalculations\n";
    append_calculations(answer.text, review.calculations, width, out);
  }
  if (!review.next.empty()) {
    out += "\nDo next\n";
    for (std::size_t i : review.next) append_wrapped(rubric.steps[i].hint, width, "  - ", "    ", out);
  }
  if (review.copied_words * 2 > review.words) out += "\n  Much of this is the question's own words, which earn nothing by themselves.\n";
  out += "\n";
  append_wrapped("As an indication: about " + range_words(review.level) + " of " + std::to_string(review.level.of) + " marks. A person decides the mark.",
                 width, "  ", "  ", out);
}

}  // namespace retort
