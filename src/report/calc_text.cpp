#include "report/calc_text.h"

#include "base/messages.h"
#include "report/advice.h"
#include "report/page.h"

namespace retort {
namespace {

std::string_view verdict_words(calc::Verdict verdict) {
  switch (verdict) {
    case calc::Verdict::right:
      return "right";
    case calc::Verdict::wrong:
      return "NOT RIGHT";
    case calc::Verdict::unclear:
      break;
  }
  return "cannot tell";
}

// The answer's line breaks as spaces.
std::string one_line(std::string_view text) {
  std::string out;
  for (char c : text) {
    bool space = c == '\n' || c == '\r' || c == '\t';
    if (space && (out.empty() || out.back() == ' ')) continue;
    out += space ? ' ' : c;
  }
  return out;
}

}  // namespace

void append_calculations(std::string_view text, const std::vector<calc::Calculation>& calculations, std::size_t width, std::string& out) {
  for (const calc::Calculation& c : calculations) {
    std::string line = "\"" + printable(one_line(c.span.of(text)), 160) + "\": " + std::string(verdict_words(c.verdict));
    append_wrapped(line, width, "  - ", "    ", out);
    std::string words = advice(c);
    if (c.verdict == calc::Verdict::wrong && !c.correct.empty()) words = "It should be " + c.correct + ". " + words;
    if (!words.empty()) append_wrapped(words, width, "      > ", "        ", out);
  }
}

void append_calculations_text(const Answer& answer, const std::vector<calc::Calculation>& calculations, std::size_t width, std::string& out) {
  std::string heading = "---- " + printable(answer.id, 60) + " ";
  if (columns(heading) < width) heading.append(width - columns(heading), '-');
  out += heading + "\n";
  if (calculations.empty()) out += "  No calculation was found.\n";
  append_calculations(answer.text, calculations, width, out);
}

}  // namespace retort
