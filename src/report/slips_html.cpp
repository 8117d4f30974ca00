#include "report/slips_html.h"

#include <algorithm>

#include "report/advice.h"
#include "report/class_words.h"
#include "report/draft_pieces.h"
#include "report/html_page.h"
#include "report/html_writer.h"

namespace retort {
namespace {

using classroom::Draft;

class Slip {
 public:
  Slip(const Rubric& rubric, const Draft& draft, const SlipOptions& options, HtmlWriter& html)
      : rubric_(rubric), draft_(draft), options_(options), html_(html) {}

  void write(const classroom::PupilChange* change, std::size_t number) {
    std::string id = "slip-" + std::to_string(number);
    html_.open("article", {{"class", options_.per_sheet == 2 ? "slip half" : "slip"}, {"aria-labelledby", id}}).line();
    html_.element("h2", {{"id", id}}, draft_.label).line();
    html_.element("p", {{"class", "soft"}}, rubric_.title).line();
    if (change != nullptr) since(*change);
    the_draft();
    html_.open("div", {{"class", "parts"}}).line();
    next();
    near();
    there();
    sums();
    html_.close().line();
    foot();
    html_.close().line();
  }

 private:
  [[nodiscard]] const Review& review() const { return draft_.review; }

  void since(const classroom::PupilChange& change) {
    std::string words = "Since your first draft: ";
    if (change.gained.empty() && change.lost.empty() && change.nearer.empty()) words += "no step gained or lost.";
    if (!change.gained.empty()) words += "you have gained " + titles(rubric_, change.gained) + ". ";
    if (!change.nearer.empty()) words += "You are nearer to " + titles(rubric_, change.nearer) + ". ";
    if (!change.lost.empty()) words += "You no longer have " + titles(rubric_, change.lost) + ".";
    html_.element("p", {{"class", "aside"}}, words).line();
  }

  void the_draft() {
    html_.element("h3", "Your draft").line();
    if (draft_.text.find_first_not_of(" \t\r\n") == std::string::npos) {
      html_.element("p", "There are no words in it.").line();
      return;
    }
    html_.open("div", {{"class", "draft"}});
    for (const DraftPiece& piece : draft_pieces(draft_.text, review())) write(piece);
    html_.close().line();
  }

  void write(const DraftPiece& piece) {
    std::string_view words = piece.span.of(draft_.text);
    if (piece.kind == PieceKind::plain) {
      html_.text(words);
      return;
    }
    html_.open("span", {{"class", piece.kind == PieceKind::there ? "e" : piece.kind == PieceKind::near ? "e near" : "e sum"}});
    for (std::size_t step : piece.steps) {
      bool vague = review().steps[step].status == StepStatus::vague;
      html_.open("sup").element("span", {{"class", "hidden"}}, "step ").text(std::to_string(step + 1) + (vague ? "?" : ""));
      html_.element("span", {{"class", "hidden"}}, ": ").close();
    }
    html_.text(words).close();
  }

  void next() {
    if (review().next.empty()) return;
    html_.open("section").element("h3", "What to do next").open("ol");
    for (std::size_t step : review().next) html_.element("li", rubric_.steps[step].hint);
    html_.close().close().line();
  }

  void near() {
    auto vague = [&](std::size_t i) { return review().steps[i].status == StepStatus::vague; };
    std::size_t i = 0;
    while (i < rubric_.steps.size() && !vague(i)) ++i;
    if (i == rubric_.steps.size()) return;
    html_.open("section").element("h3", "Not clear enough yet").open("ul", {{"class", "plain"}});
    for (; i < rubric_.steps.size(); ++i) {
      if (!vague(i)) continue;
      html_.open("li").element("strong", std::to_string(i + 1) + "? " + rubric_.steps[i].title);
      if (!review().steps[i].note.empty()) html_.text(": " + review().steps[i].note);
      html_.close();
    }
    html_.close().close().line();
  }

  void there() {
    html_.open("section").element("h3", "There, in your own words");
    bool any = false;
    for (std::size_t i = 0; i < rubric_.steps.size(); ++i) {
      if (review().steps[i].status != StepStatus::present) continue;
      if (!any) html_.open("ul", {{"class", "plain"}});
      any = true;
      html_.element("li", std::to_string(i + 1) + " " + rubric_.steps[i].title);
    }
    if (any)
      html_.close();
    else
      html_.element("p", "None of the steps was found yet.");
    html_.close().line();
  }

  // The first calculation that is wrong, in full; of the others, how many.
  void sums() {
    const auto& all = review().calculations;
    if (all.empty()) return;
    auto wrong = std::find_if(all.begin(), all.end(), [](const calc::Calculation& c) { return c.verdict == calc::Verdict::wrong; });
    auto count = [&](calc::Verdict verdict) {
      return static_cast<std::size_t>(std::count_if(all.begin(), all.end(), [&](const calc::Calculation& c) { return c.verdict == verdict; }));
    };
    html_.open("section").element("h3", "Your sums");
    std::string tally = "Right: " + std::to_string(count(calc::Verdict::right)) + ". Not right: " + std::to_string(count(calc::Verdict::wrong)) + ".";
    if (std::size_t unclear = count(calc::Verdict::unclear); unclear > 0) tally += " Could not be checked: " + std::to_string(unclear) + ".";
    html_.element("p", tally);
    if (wrong != all.end()) {
      html_.open("p").text("Look at this one first: ").element("span", {{"class", "e sum"}}, wrong->span.of(draft_.text)).close();
      html_.element("p", (wrong->correct.empty() ? "" : "It should be " + wrong->correct + ". ") + advice(*wrong));
    }
    html_.close().line();
  }

  void foot() {
    if (options_.with_range) {
      const Level& level = review().level;
      html_.element("p", "An indication only: " + std::to_string(level.low) + " to " + std::to_string(level.high) + " of " +
                             std::to_string(level.of) + " marks. A person decides the mark.");
    }
    std::string words;
    for (const std::string& caution : rubric_.cautions) words += caution + " ";
    if (!words.empty()) html_.element("p", {{"class", "soft small"}}, "Before anyone does this practical: " + words + std::string(kRiskAssessment));
  }

  const Rubric& rubric_;
  const Draft& draft_;
  const SlipOptions& options_;
  HtmlWriter& html_;
};

void explain(HtmlWriter& html) {
  html.open("p", {{"class", "screen"}})
      .text("In the drafts, ")
      .element("span", {{"class", "e"}}, "a line under words")
      .text(" means that a step is there, ");
  html.element("span", {{"class", "e near"}}, "a dashed line").text(" that it is not clear enough, ");
  html.element("span", {{"class", "e sum"}}, "a double line")
      .text(" a sum that is wrong. The small numbers are those of the steps. A program found these by looking for words; it can be mistaken.")
      .close()
      .line();
}

}  // namespace

std::string slips_html(const Rubric& rubric, const std::vector<Draft>& drafts, const SlipOptions& options, const classroom::Change* change) {
  HtmlPage page;
  page.title = rubric.title + ": " + (drafts.size() == 1 ? "a draft" : "a slip for each pupil");
  page.styles = class_styles();
  HtmlWriter html(page.body);
  html.element("h1", {{"class", "screen"}}, page.title).line();
  explain(html);
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    const classroom::PupilChange* own = nullptr;
    if (change != nullptr) {
      auto at = std::find_if(change->pupils.begin(), change->pupils.end(), [&](const classroom::PupilChange& c) { return c.after == i; });
      if (at != change->pupils.end()) own = &*at;
    }
    Slip(rubric, drafts[i], options, html).write(own, i + 1);
  }
  return html_page(page);
}

std::string_view class_styles() {
  return R"css(.draft { white-space: pre-wrap; border: 1px solid var(--faint); padding: .5rem .8rem; line-height: 1.8; max-width: 52rem; }
.e { text-decoration: underline solid 2px; text-underline-offset: .25em; text-decoration-skip-ink: none; }
.e.near { text-decoration-style: dashed; }
.e.sum { text-decoration-style: double; text-decoration-thickness: 1px; }
.e sup { font-size: .65em; font-weight: 700; line-height: 0; padding-right: .15em; }
.slip { border-top: 3px solid var(--line); margin-top: 2rem; padding-top: .3rem; }
.slip h2 { border: 0; padding: 0; margin: .2em 0; }
.slip h3 { margin: .9em 0 .2em; }
.slip > p { margin: .2em 0; }
.parts { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 18rem), 1fr)); gap: 0 2rem; }
.parts ul, .parts ol { margin: .2em 0; }
.parts .plain > li { margin: .15em 0; }
.small { font-size: .85em; }
th[scope=row] { min-width: 6.5rem; }
table.pupils th[scope=row] { position: sticky; left: 0; background: var(--page); max-width: 12rem; overflow-wrap: anywhere; }
table.pupils td, table.pupils thead th { text-align: center; min-width: 2.1rem; padding: .2rem; }
table.pupils thead th:first-child { text-align: left; }
@media print {
  .slip { border-top: 0; margin-top: 0; break-after: page; font-size: 10pt; }
  .slip:last-child { break-after: auto; }
  .slip.half { font-size: 8pt; line-height: 1.3; min-height: 130mm; break-after: auto; break-inside: avoid; border-bottom: 1px dashed var(--line); }
  .slip.half .draft { line-height: 1.5; }
  .slip.half .parts { grid-template-columns: 1fr 1fr; }
}
)css";
}

}  // namespace retort
