#include "report/moderation_text.h"

#include <algorithm>
#include <set>

#include "base/messages.h"
#include "report/moderation_words.h"
#include "report/page.h"

namespace retort {
namespace {

constexpr std::size_t kMostAgainShown = 20;
constexpr std::size_t kMostTableMarks = 12;  // columns of the table of mark pairs

class Text {
 public:
  Text(const cohort::Moderation& moderation, std::size_t width, std::string& out) : moderation_(moderation), width_(width), out_(out) {}

  void rubric(const cohort::RubricPart& part) {
    wrapped(printable(part.names.title, 200) + "  [" + printable(part.id) + "]", "");
    wrapped(answers_words(part), "  ");
    omissions(part);
    if (part.comparisons > 0) section("Groups that differ", difference_words(part));
    section("Calculations", calculation_words(part.calculations));
    markers(part);
    again(part);
    sample(part);
  }

 private:
  void wrapped(const std::string& text, const std::string& margin) { append_wrapped(text, width_, margin, margin, out_); }
  void heading(const std::string& text) { out_ += "\n" + text + "\n"; }
  void item(const std::string& text) { append_wrapped(text, width_, "  - ", "    ", out_); }

  void section(const std::string& title, const std::vector<std::string>& sentences) {
    if (sentences.empty()) return;
    heading(title);
    for (const std::string& sentence : sentences) item(sentence);
  }

  void omissions(const cohort::RubricPart& part) {
    heading("Missing most often (* core step)");
    wrapped(interval_words(), "  ");
    for (const cohort::StepPart& step : part.steps) {
      append_wrapped(omission_words(step), width_, step.core ? "  * " : "  - ", "    ", out_);
      std::string groups;
      for (const cohort::StepGroup& group : step.groups)
        groups += (groups.empty() ? "" : "; ") + group_name(group.group) + " " + percent_range(group.missing);
      if (!groups.empty()) wrapped(groups, "      ");
    }
  }

  void markers(const cohort::RubricPart& part) {
    std::vector<std::string> agreement = agreement_words(part);
    section("Two markers", agreement);
    if (!agreement.empty()) crosstab(part);
    for (const cohort::GroupAgreement& group : part.group_agreement) {
      item(group_name(group.group) + ": the same mark " + percent_range(group.exact) + ", within one " + percent_range(group.within_one) + ".");
    }
    for (std::size_t i = 0; i < part.markers.size(); ++i) {
      std::string name = marker_name(i);
      name[0] = i == 0 ? 'F' : 'S';
      section(name, marker_words(part, i));
      for (const cohort::RangePart& group : part.markers[i].groups) {
        std::string range = group.inside.of == 0 ? "" : ", inside the range " + percent_range(group.inside) + ", distance " + signed_marks(group.off);
        item(group_name(group.group) + ": " + std::to_string(group.marks) + " marks, " + decimals(group.mean, 2) + " on average" + range + ".");
      }
    }
  }

  // Rows: the first marker's marks; columns: the second's.
  void crosstab(const cohort::RubricPart& part) {
    std::set<int> columns;
    std::map<int, std::map<int, cohort::Count>> rows;
    for (const auto& [marks, count] : part.crosstab) {
      columns.insert(marks.second);
      rows[marks.first][marks.second] = count;
    }
    if (columns.size() > kMostTableMarks) return;
    std::size_t cell = 4;
    for (const auto& [marks, count] : part.crosstab) cell = std::max(cell, std::to_string(count).size() + 2);
    if (14 + cell * columns.size() > width_) return;
    auto right = [&](const std::string& text) { return std::string(cell - std::min(cell, text.size()), ' ') + text; };
    out_ += "    first      second marker\n    marker  ";
    for (int column : columns) out_ += right(std::to_string(column));
    out_ += "\n";
    for (const auto& [mark, counts] : rows) {
      std::string name = std::to_string(mark);
      out_ += "    " + std::string(6 - std::min<std::size_t>(6, name.size()), ' ') + name + "  ";
      for (int column : columns) {
        auto found = counts.find(column);
        out_ += right(found == counts.end() ? "." : std::to_string(found->second));
      }
      out_ += "\n";
    }
  }

  void again(const cohort::RubricPart& part) {
    heading("To look at again");
    wrapped(again_words(part), "  ");
    for (std::size_t i = 0; i < std::min(part.again.size(), kMostAgainShown); ++i) {
      item(script(part.again[i].script) + ": " + reason_words(part.again[i]) + ".");
    }
    if (part.again.size() > kMostAgainShown) item(std::to_string(part.again.size() - kMostAgainShown) + " more stand in the HTML, CSV and JSON.");
  }

  void sample(const cohort::RubricPart& part) {
    heading("A sample to mark again");
    wrapped(sample_words(moderation_, part), "  ");
    for (const cohort::Script& each : part.sample) item(script(each));
  }

  static std::string script(const cohort::Script& script) {
    std::string out = printable(script.id, 60);
    if (!script.group.empty()) out += " (" + printable(script.group, 40) + ")";
    if (script.mark >= 0 || script.mark2 >= 0) out += ", marked " + marks_words(script);
    if (script.high >= 0) out += ", range " + range_words(script);
    return out;
  }

  const cohort::Moderation& moderation_;
  std::size_t width_;
  std::string& out_;
};

}  // namespace

std::string moderation_text(const cohort::Moderation& moderation, std::size_t width) {
  std::string out;
  for (const cohort::RubricPart& part : moderation.rubrics) {
    if (!out.empty()) out += "\n\n";
    Text(moderation, width, out).rubric(part);
  }
  return out;
}

}  // namespace retort
