#include "report/class_text.h"

#include <algorithm>

#include "base/messages.h"
#include "report/class_words.h"
#include "report/page.h"

namespace retort {
namespace {

constexpr std::size_t kLongestName = 24;  // columns of the table's first column

class ClassText {
 public:
  ClassText(const ClassReport& report, std::size_t width) : r_(report), p_(report.picture), width_(width) {}

  std::string run() {
    heading("---- " + r_.rubric.title + ": the class ");
    say(drafts_sentence(r_));
    if (r_.change != nullptr) change();
    steps();
    table();
    omissions();
    reteach();
    groups();
    sums();
    concerns();
    closing();
    return std::move(out_);
  }

 private:
  void heading(std::string title) {
    if (columns(title) < width_) title.append(width_ - columns(title), '-');
    append_wrapped(title, width_, "", "", out_);
  }
  void part(std::string_view title) { append_wrapped("\n" + std::string(title), width_, "", "", out_); }
  void say(std::string_view words) { append_wrapped(words, width_, "  ", "  ", out_); }
  void item(std::string_view words) { append_wrapped(words, width_, "  - ", "    ", out_); }
  void under(std::string_view words) { append_wrapped(words, width_, "      ", "        ", out_); }

  [[nodiscard]] std::string title(std::size_t step) const { return r_.rubric.steps[step].title + (r_.rubric.steps[step].core ? " *" : ""); }

  void change() {
    part("Since the first drafts");
    say(change_sentence(*r_.change));
    for (std::size_t step : p_.steps) {
      const classroom::StepChange& c = r_.change->steps[step];
      if (c.gained + c.lost == 0) continue;
      item(title(step) + ": " + std::to_string(c.before) + " had it, now " + std::to_string(c.after) + " (" + std::to_string(c.gained) + " gained, " +
           std::to_string(c.lost) + " lost)");
    }
    for (const classroom::PupilChange& pupil : r_.change->pupils) pupil_change(pupil);
    unpaired("Only a first draft", *r_.before, r_.change->only_before);
    unpaired("Only a second draft", r_.drafts, r_.change->only_after);
    for (const std::string& label : r_.change->unsure) item(printable(label, 60) + " stands on several drafts, so these are not compared.");
  }

  void pupil_change(const classroom::PupilChange& pupil) {
    if (pupil.gained.empty() && pupil.lost.empty() && pupil.nearer.empty()) {
      item(printable(r_.drafts[pupil.after].label, 60) + ": nothing gained or lost");
      return;
    }
    item(printable(r_.drafts[pupil.after].label, 60));
    if (!pupil.gained.empty()) under("gained: " + titles(r_.rubric, pupil.gained));
    if (!pupil.nearer.empty()) under("nearer, not clear yet: " + titles(r_.rubric, pupil.nearer));
    if (!pupil.lost.empty()) under("lost: " + titles(r_.rubric, pupil.lost));
  }

  void unpaired(std::string_view words, const std::vector<classroom::Draft>& drafts, const std::vector<std::size_t>& who) {
    if (!who.empty()) item(std::string(words) + ": " + names(drafts, who));
  }

  void steps() {
    part("The steps, those that most have first");
    for (std::size_t step : p_.steps) {
      const classroom::Tally& t = p_.tallies[step];
      std::string number = std::to_string(step + 1);
      std::string first = "  " + std::string(number.size() < 2 ? 2 - number.size() : 0, ' ') + number + "  ";
      append_wrapped(title(step) + ": " + std::to_string(t.present) + " there, " + std::to_string(t.vague) + " not clear, " +
                         std::to_string(t.missing) + " left out",
                     width_, first, "      ", out_);
    }
    say("A step with * is one that the method cannot do without.");
  }

  // Pupils by steps; the steps' numbers stand upright over their columns.
  void table() {
    if (p_.drafts.empty()) return;
    part("Pupils by steps (" + std::string(kMarksMeaning) + ")");
    std::size_t room = width_ > 2 + 2 * p_.steps.size() + 8 ? width_ - 2 - 2 * p_.steps.size() : 8;
    std::size_t name_width = 0;
    for (std::size_t i : p_.drafts) name_width = std::max(name_width, columns(short_name(i)));
    name_width = std::min({name_width, room, kLongestName});
    std::string tens(2 + name_width, ' ');
    std::string units = tens;
    for (std::size_t step : p_.steps) {
      std::size_t number = step + 1;
      tens += number > 9 ? " " + std::to_string(number / 10 % 10) : "  ";
      units += " " + std::to_string(number % 10);
    }
    tens.erase(tens.find_last_not_of(' ') + 1);
    if (!tens.empty()) out_ += tens + "\n";
    out_ += units + "\n";
    for (std::size_t i : p_.drafts) {
      std::string line = "  " + cut(short_name(i), name_width);
      for (std::size_t step : p_.steps) line += " " + std::string(status_mark(r_.drafts[i].review.steps[step].status));
      if (r_.with_range) line += "  " + range(r_.drafts[i].review.level);
      out_ += line + "\n";
    }
    if (r_.with_range) say("On the right: marks, an indication only. A person decides the mark.");
  }

  [[nodiscard]] std::string short_name(std::size_t i) const { return printable(r_.drafts[i].label, 60); }

  // `name` in just so many columns.
  static std::string cut(const std::string& name, std::size_t width) {
    std::string lines;
    append_wrapped(name, width + 10, "", "", lines);
    std::string first = lines.substr(0, lines.find('\n'));
    while (columns(first) > width && !first.empty()) {
      do first.pop_back();
      while (!first.empty() && (static_cast<unsigned char>(first.back()) & 0x80U) != 0 && !whole(first));
    }
    return first + std::string(width - columns(first), ' ');
  }
  // Whether `text` ends with a whole character.
  static bool whole(const std::string& text) {
    std::size_t i = text.size();
    std::size_t tail = 0;
    while (i > 0 && (static_cast<unsigned char>(text[i - 1]) & 0xC0U) == 0x80U) --i, ++tail;
    if (i == 0) return false;
    auto lead = static_cast<unsigned char>(text[i - 1]);
    return tail == (lead >= 0xF0 ? 3U : lead >= 0xE0 ? 2U : lead >= 0xC0 ? 1U : 0U);
  }

  static std::string range(const Level& level) {
    return std::to_string(level.low) + "-" + std::to_string(level.high) + " of " + std::to_string(level.of);
  }

  void omissions() {
    if (p_.omissions.empty()) return;
    part("Left out most often");
    for (std::size_t i = 0; i < p_.omissions.size() && i < kOmissionsSaid; ++i) item(omission_sentence(r_, p_.omissions[i]));
  }

  void reteach() {
    if (p_.reteach.empty()) return;
    part("What to teach again");
    say(kReteachRule);
    std::size_t number = 0;
    for (const classroom::Reteach& r : p_.reteach) {
      append_wrapped(r_.rubric.steps[r.step].title + ". " + lack_sentence(r_, r.step), width_, "  " + std::to_string(++number) + ". ", "     ", out_);
      under("A question to ask: " + r_.rubric.steps[r.step].hint);
      quotes("Not clear enough yet:", r.vague);
      quotes("Better, from this class:", r.better);
      quotes("It can be said like this:", r.models);
    }
  }

  void quotes(std::string_view before, const std::vector<std::string>& quotes) {
    if (quotes.empty()) return;
    under(before);
    for (const std::string& quote : quotes) append_wrapped(in_quotes(printable(quote, 200)), width_, "        ", "         ", out_);
  }

  void groups() {
    const classroom::Grouping& g = p_.grouping;
    if (g.groups.empty() && g.alone.empty()) return;
    part("Groups to work together");
    say(kGroupRule);
    std::size_t number = 0;
    for (const classroom::Group& group : g.groups) {
      append_wrapped(in_quotes(r_.rubric.steps[group.step].title) + ": " + names(r_.drafts, group.drafts), width_,
                     "  " + std::to_string(++number) + ". ", "     ", out_);
      if (!group.also.empty()) under("all of them also lack " + titles(r_.rubric, group.also));
    }
    if (!g.alone.empty()) item("Each lacks something of their own: " + names(r_.drafts, g.alone));
    if (!g.complete.empty()) item("Lack none of these steps: " + names(r_.drafts, g.complete));
  }

  void sums() {
    part("Calculations");
    say(sums_sentence(p_.sums));
    for (const classroom::SlipTally& slip : p_.sums.slips) {
      item(slip_sentence(slip));
      if (slip.example.empty()) continue;
      under("for instance " + in_quotes(printable(slip.example, 200)) + (slip.correct.empty() ? "" : "; it should be " + slip.correct));
    }
  }

  void concerns() {
    if (p_.concerns.empty()) return;
    part("Look at these yourself");
    for (const classroom::Concern& c : p_.concerns) item(names(r_.drafts, c.drafts) + ": " + concern_sentence(c));
  }

  void closing() {
    if (!r_.rubric.cautions.empty()) {
      part("Before anyone does this practical");
      for (const std::string& caution : r_.rubric.cautions) item(caution);
    }
    say(kRiskAssessment);
  }

  const ClassReport& r_;
  const classroom::Picture& p_;
  std::size_t width_;
  std::string out_;
};

}  // namespace

std::string class_text(const ClassReport& report, std::size_t width) {
  return ClassText(report, width).run();
}

}  // namespace retort
