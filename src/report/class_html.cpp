#include "report/class_html.h"

#include "report/class_words.h"
#include "report/html_page.h"
#include "report/html_writer.h"
#include "report/slips_html.h"

namespace retort {
namespace {

std::string percent(std::size_t part, std::size_t whole) { return whole == 0 ? "" : std::to_string((200 * part + whole) / (2 * whole)) + " %"; }

class ClassHtml {
 public:
  ClassHtml(const ClassReport& report, std::string& out) : r_(report), p_(report.picture), html_(out) {}

  void write() {
    html_.element("h1", r_.rubric.title + ": the class").line();
    say(drafts_sentence(r_));
    if (r_.change != nullptr) change();
    omissions();
    reteach();
    groups();
    table();
    steps();
    sums();
    concerns();
    cautions();
  }

 private:
  void part(std::string_view title) { html_.element("h2", title).line(); }
  void say(std::string_view words) { html_.element("p", words).line(); }
  [[nodiscard]] std::string title(std::size_t step) const { return r_.rubric.steps[step].title + (r_.rubric.steps[step].core ? "\u00A0*" : ""); }

  void open_table(const std::string& label, const std::string& caption, const std::string& kind = "") {
    html_.open("div", {{"class", "scroll"}, {"role", "region"}, {"tabindex", "0"}, {"aria-label", label}}).open("table", {{"class", kind}});
    html_.element("caption", caption).line();
  }
  void head(std::initializer_list<std::string> titles) {
    html_.open("thead").open("tr");
    for (const std::string& each : titles) html_.element("th", {{"scope", "col"}}, each);
    html_.close().close().line();
  }
  void close_table() { html_.close().close().line(); }
  void number(std::size_t count) { html_.element("td", {{"class", "num"}}, std::to_string(count)); }

  void change() {
    part("Since the first drafts");
    say(change_sentence(*r_.change));
    open_table("Steps since the first drafts", "How many have each step, of those compared");
    head({"Step", "First draft", "Now", "Gained", "Lost"});
    html_.open("tbody");
    for (std::size_t step : p_.steps) {
      const classroom::StepChange& c = r_.change->steps[step];
      html_.open("tr").element("th", {{"scope", "row"}}, title(step));
      for (std::size_t count : {c.before, c.after, c.gained, c.lost}) number(count);
      html_.close().line();
    }
    html_.close();
    close_table();
    open_table("Pupils since the first drafts", "Each pupil: steps gained, nearer and lost");
    head({"Pupil", "Gained", "Nearer, not clear yet", "Lost"});
    html_.open("tbody");
    for (const classroom::PupilChange& pupil : r_.change->pupils) {
      html_.open("tr").element("th", {{"scope", "row"}}, r_.drafts[pupil.after].label);
      for (const auto* which : {&pupil.gained, &pupil.nearer, &pupil.lost}) html_.element("td", which->empty() ? "none" : titles(r_.rubric, *which));
      html_.close().line();
    }
    html_.close();
    close_table();
    unpaired("Only a first draft", *r_.before, r_.change->only_before);
    unpaired("Only a second draft", r_.drafts, r_.change->only_after);
    for (const std::string& label : r_.change->unsure) say(label + " stands on several drafts, so these are not compared.");
  }

  void unpaired(std::string_view words, const std::vector<classroom::Draft>& drafts, const std::vector<std::size_t>& who) {
    if (!who.empty()) say(std::string(words) + ": " + names(drafts, who) + ".");
  }

  void omissions() {
    if (p_.omissions.empty()) return;
    part("Left out most often");
    html_.open("ol");
    for (std::size_t i = 0; i < p_.omissions.size() && i < kOmissionsSaid; ++i) html_.element("li", omission_sentence(r_, p_.omissions[i])).line();
    html_.close().line();
  }

  void reteach() {
    if (p_.reteach.empty()) return;
    part("What to teach again");
    say(kReteachRule);
    std::size_t count = 0;
    for (const classroom::Reteach& r : p_.reteach) {
      html_.element("h3", std::to_string(++count) + ". " + r_.rubric.steps[r.step].title).line();
      say(lack_sentence(r_, r.step));
      say("A question to ask: " + r_.rubric.steps[r.step].hint);
      html_.open("div", {{"class", "cards"}});
      quotes("Not clear enough yet", r.vague);
      quotes("Better, from this class", r.better);
      quotes("It can be said like this", r.models);
      html_.close().line();
    }
  }

  void quotes(std::string_view before, const std::vector<std::string>& quotes) {
    if (quotes.empty()) return;
    html_.open("div").element("p", {{"class", "soft"}}, before);
    for (const std::string& quote : quotes) html_.element("blockquote", {{"class", "quote"}}, quote);
    html_.close().line();
  }

  void groups() {
    const classroom::Grouping& g = p_.grouping;
    if (g.groups.empty() && g.alone.empty()) return;
    part("Groups to work together");
    say(kGroupRule);
    html_.open("ol");
    for (const classroom::Group& group : g.groups) {
      html_.open("li").element("strong", r_.rubric.steps[group.step].title).text(": " + names(r_.drafts, group.drafts));
      if (!group.also.empty()) html_.empty("br").text("All of them also lack " + titles(r_.rubric, group.also) + ".");
      html_.close().line();
    }
    html_.close().line();
    if (!g.alone.empty()) say("Each lacks something of their own: " + names(r_.drafts, g.alone) + ".");
    if (!g.complete.empty()) say("Lack none of these steps: " + names(r_.drafts, g.complete) + ".");
  }

  void table() {
    if (p_.drafts.empty()) return;
    part("Pupils by steps");
    open_table("Pupils by steps", std::string(kMarksMeaning) + ". The numbers are those of the steps below.", "pupils");
    html_.open("thead").open("tr").element("th", {{"scope", "col"}}, "Pupil");
    for (std::size_t step : p_.steps) {
      html_.open("th", {{"scope", "col"}}).text(std::to_string(step + 1)).element("span", {{"class", "hidden"}}, " " + r_.rubric.steps[step].title).close();
    }
    if (r_.with_range) html_.element("th", {{"scope", "col"}}, "Marks, an indication only");
    html_.close().close().line().open("tbody");
    for (std::size_t i : p_.drafts) row(r_.drafts[i]);
    html_.close();
    close_table();
  }

  void row(const classroom::Draft& draft) {
    html_.open("tr").element("th", {{"scope", "row"}}, draft.label);
    for (std::size_t step : p_.steps) {
      StepStatus status = draft.review.steps[step].status;
      bool there = status == StepStatus::present, vague = status == StepStatus::vague;
      html_.open("td", {{"class", there ? "there" : vague ? "unclear" : "missing"}}).element("span", {{"aria-hidden", "true"}}, status_mark(status));
      html_.element("span", {{"class", "hidden"}}, there ? "there" : vague ? "not clear" : "left out").close();
    }
    const Level& level = draft.review.level;
    if (r_.with_range) html_.element("td", std::to_string(level.low) + "\u2013" + std::to_string(level.high) + " of " + std::to_string(level.of));
    html_.close().line();
  }

  void steps() {
    part("Each step");
    open_table("Each step", "Those that most have first. * marks a step that the method cannot do without.");
    head({"Number", "Step", "There", "Not clear", "Left out"});
    html_.open("tbody");
    for (std::size_t step : p_.steps) {
      const classroom::Tally& t = p_.tallies[step];
      std::size_t all = t.present + t.vague + t.missing;
      html_.open("tr");
      number(step + 1);
      html_.element("th", {{"scope", "row"}}, title(step));
      for (std::size_t count : {t.present, t.vague, t.missing}) html_.element("td", {{"class", "num"}}, std::to_string(count) + " (" + percent(count, all) + ")");
      html_.close().line();
    }
    html_.close();
    close_table();
  }

  void sums() {
    part("Calculations");
    say(sums_sentence(p_.sums));
    if (p_.sums.slips.empty()) return;
    html_.open("ul");
    for (const classroom::SlipTally& slip : p_.sums.slips) {
      html_.open("li").text(slip_sentence(slip));
      if (!slip.example.empty()) {
        html_.element("blockquote", {{"class", "quote"}}, slip.example);
        if (!slip.correct.empty()) html_.element("p", "It should be " + slip.correct + ".");
      }
      html_.close().line();
    }
    html_.close().line();
  }

  void concerns() {
    if (p_.concerns.empty()) return;
    part("Look at these yourself");
    html_.open("ul");
    for (const classroom::Concern& c : p_.concerns) html_.open("li").element("strong", names(r_.drafts, c.drafts)).text(": " + concern_sentence(c)).close().line();
    html_.close().line();
  }

  void cautions() {
    part("Before anyone does this practical");
    html_.open("ul");
    for (const std::string& caution : r_.rubric.cautions) html_.element("li", caution);
    html_.element("li", kRiskAssessment).close().line();
    html_.element("p", {{"class", "soft"}}, "A program found all this by looking for words; it can be mistaken, and it gives no marks: people do.").line();
  }

  const ClassReport& r_;
  const classroom::Picture& p_;
  HtmlWriter html_;
};

}  // namespace

std::string class_html(const ClassReport& report) {
  HtmlPage page;
  page.title = report.rubric.title + ": the class";
  page.styles = class_styles();
  ClassHtml(report, page.body).write();
  return html_page(page);
}

}  // namespace retort
