#include "report/moderation_html.h"

#include <cstdlib>
#include <set>

#include "report/html_page.h"
#include "report/html_writer.h"
#include "report/moderation_words.h"
#include "report/share_plot.h"

namespace retort {
namespace {

constexpr const char* kStyles = R"css(svg.share { display: block; max-width: none; }
svg.share text { font-size: 11px; fill: currentColor; }
svg.share .grid { stroke: var(--faint); stroke-width: 1; }
svg.share .range { stroke: currentColor; stroke-width: 2; }
svg.share .dot { fill: currentColor; stroke: currentColor; stroke-width: 1.5; }
svg.share .ring { fill: var(--page); stroke: currentColor; stroke-width: 1.5; }
td.plot, th.plot { padding: 0 .2rem; vertical-align: middle; }
tbody.step { border-top: 2px solid var(--line); }
tbody.step th[scope=rowgroup] { max-width: 16rem; min-width: 6.5rem; white-space: normal; }
td.share { white-space: nowrap; }
tr.all > * { font-weight: 600; }
td.same { font-weight: 700; background: var(--there); }
td.far { text-decoration: underline; background: var(--wrong); }
)css";

class Html {
 public:
  Html(const cohort::Moderation& moderation, std::string& out) : moderation_(moderation), html_(out) {}

  void page() {
    html_.element("h1", "Many answers together");
    html_.element("p",
                  "What the answers leave out, whether groups differ, how the markers agree, and which answers to look at again. The program does "
                  "not mark: people do.");
    for (const cohort::RubricPart& part : moderation_.rubrics) rubric(part);
  }

 private:
  void paragraph(const std::string& text) { html_.element("p", text).line(); }

  void sentences(const std::string& title, const std::vector<std::string>& lines) {
    if (lines.empty()) return;
    html_.element("h3", title).line();
    for (const std::string& line : lines) paragraph(line);
  }

  // A table that scrolls by itself where there is no room for it.
  void open_table(const std::string& label, const std::string& caption) {
    html_.open("div", {{"class", "scroll"}, {"role", "region"}, {"tabindex", "0"}, {"aria-label", label}}).open("table");
    html_.element("caption", caption).line();
  }
  void close_table() { html_.close().close().line(); }

  void column(const std::string& text, const char* kind = "") { html_.element("th", {{"scope", "col"}, {"class", kind}}, text); }
  void cell(const std::string& text) { html_.element("td", text); }
  void figure(const std::string& text) { html_.element("td", {{"class", "num"}}, text); }
  void figure(cohort::Count count) { figure(std::to_string(count)); }
  void plot(const cohort::Share& share, bool filled) { html_.open("td", {{"class", "plot"}}).foreign(share_plot(share, filled)).close(); }

  void rubric(const cohort::RubricPart& part) {
    name_ = moderation_.rubrics.size() > 1 ? part.names.title + ": " : "";
    html_.element("h2", part.names.title).line();
    paragraph(answers_words(part) + ".");
    omissions(part);
    if (part.comparisons > 0) sentences("Groups that differ", difference_words(part));
    sentences("Calculations", calculation_words(part.calculations));
    markers(part);
    again(part);
    sample(part);
  }

  void omissions(const cohort::RubricPart& part) {
    html_.element("h3", "Missing most often").line();
    paragraph(interval_words());
    std::size_t told = 0;
    html_.open("ol");
    for (const cohort::StepPart& step : part.steps) {
      if (told == 3 || step.counts.missing == 0) break;
      html_.element("li", omission_words(step)).line();
      ++told;
    }
    html_.close().line();
    bool grouped = part.comparisons > 0;
    open_table(name_ + "steps that are missing",
               "Share of answers without each step, and between which figures chance may have moved it. * is a core step.");
    html_.open("thead").open("tr");
    column("Step");
    if (grouped) column("Group");
    column("Missing", "num");
    column("Share");
    html_.open("th", {{"scope", "col"}, {"class", "plot"}});
    html_.element("span", {{"class", "hidden"}}, "Drawn from 0 to 100 %").foreign(share_scale()).close();
    column("Vague", "num");
    html_.close().close().line();
    for (const cohort::StepPart& each : part.steps) step(each, grouped);
    close_table();
  }

  void step(const cohort::StepPart& step, bool grouped) {
    html_.open("tbody", {{"class", "step"}}).open("tr", {{"class", "all"}});
    std::string title = step.title + (step.core ? "\u00A0*" : "");
    if (grouped)
      html_.element("th", {{"scope", "rowgroup"}, {"rowspan", std::to_string(step.groups.size() + 1)}}, title)
          .element("th", {{"scope", "row"}}, "All");
    else
      html_.element("th", {{"scope", "row"}}, title);
    shares(step.missing, step.counts.vague, "", true);
    html_.close().line();
    for (const cohort::StepGroup& group : step.groups) {
      html_.open("tr").element("th", {{"scope", "row"}}, group_name(group.group));
      shares(group.missing, group.counts.vague, differs(group.differs), false);
      html_.close().line();
    }
    html_.close().line();
  }

  static std::string differs(cohort::Differs differs) {
    if (differs == cohort::Differs::no) return "";
    return differs == cohort::Differs::more ? "\u25B2 more than elsewhere" : "\u25BC less than elsewhere";
  }

  void shares(const cohort::Share& share, cohort::Count vague, const std::string& note, bool filled) {
    figure(std::to_string(share.count) + " of " + std::to_string(share.of));
    html_.open("td", {{"class", "share"}}).text(percent_range(share));
    if (!note.empty()) html_.empty("br").text(note);
    html_.close();
    plot(share, filled);
    figure(vague);
  }

  void markers(const cohort::RubricPart& part) {
    std::vector<std::string> agreement = agreement_words(part);
    sentences("Two markers", agreement);
    if (!agreement.empty()) crosstab(part);
    if (!part.group_agreement.empty()) group_agreement(part);
    for (std::size_t i = 0; i < part.markers.size(); ++i) {
      std::vector<std::string> words = marker_words(part, i);
      std::string name = marker_name(i);
      name[0] = i == 0 ? 'F' : 'S';
      sentences(name, words);
      if (!part.markers[i].groups.empty()) ranges(part.markers[i], name);
    }
  }

  void crosstab(const cohort::RubricPart& part) {
    std::set<int> first, second;
    for (const auto& [marks, count] : part.crosstab) {
      first.insert(marks.first);
      second.insert(marks.second);
    }
    open_table(name_ + "marks of the two markers",
               "Answers by the first marker's mark (rows) and the second's (columns). Bold: the same mark. Underlined: two marks or more apart.");
    html_.open("thead").open("tr");
    column("First marker");
    for (int mark : second) column("Second: " + std::to_string(mark), "num");
    html_.close().close().open("tbody").line();
    for (int row : first) {
      html_.open("tr").element("th", {{"scope", "row"}}, std::to_string(row));
      for (int column : second) {
        auto found = part.crosstab.find({row, column});
        int apart = std::abs(row - column);
        bool any = found != part.crosstab.end() && found->second > 0;
        std::string kind = apart == 0 ? "num same" : apart >= 2 && any ? "num far" : "num";
        html_.element("td", {{"class", kind}}, any ? std::to_string(found->second) : "0");
      }
      html_.close().line();
    }
    html_.close();
    close_table();
  }

  void group_agreement(const cohort::RubricPart& part) {
    open_table(name_ + "agreement by group", "Agreement of the two markers in each group");
    html_.open("thead").open("tr");
    for (const char* name : {"Group", "Answers", "Same mark", "Within one mark"}) column(name);
    html_.close().close().open("tbody").line();
    for (const cohort::GroupAgreement& group : part.group_agreement) {
      html_.open("tr").element("th", {{"scope", "row"}}, group_name(group.group));
      figure(group.answers);
      cell(percent_range(group.exact));
      cell(percent_range(group.within_one));
      html_.close().line();
    }
    html_.close();
    close_table();
  }

  void ranges(const cohort::MarkerPart& marker, const std::string& name) {
    open_table(name_ + name + " by group", name + ": marks of each group against the indicated range");
    html_.open("thead").open("tr");
    for (const char* title : {"Group", "Marks", "Mean mark", "Inside the range", "Below", "Above", "Distance"}) column(title);
    html_.close().close().open("tbody").line();
    for (const cohort::RangePart& group : marker.groups) {
      html_.open("tr").element("th", {{"scope", "row"}}, group_name(group.group));
      figure(group.marks);
      figure(decimals(group.mean, 2));
      cell(group.inside.of == 0 ? "no range" : percent_range(group.inside));
      figure(group.below.count);
      figure(group.above.count);
      figure(signed_marks(group.off));
      html_.close().line();
    }
    html_.close();
    close_table();
  }

  void script_columns() {
    for (const char* name : {"Answer", "Group", "Marks", "Range"}) column(name);
  }
  void script(const cohort::Script& script) {
    html_.element("th", {{"scope", "row"}}, script.id.empty() ? "(no name)" : script.id);
    cell(group_name(script.group));
    html_.element("td", {{"class", "share"}}, marks_words(script));
    html_.element("td", {{"class", "share"}}, range_words(script));
  }

  void again(const cohort::RubricPart& part) {
    html_.element("h3", "To look at again").line();
    paragraph(again_words(part));
    if (part.again.empty()) return;
    open_table(name_ + "answers to look at again", "Answers to look at again, and why");
    html_.open("thead").open("tr");
    script_columns();
    column("Why");
    html_.close().close().open("tbody").line();
    for (const cohort::Again& each : part.again) {
      html_.open("tr");
      script(each.script);
      cell(reason_words(each));
      html_.close().line();
    }
    html_.close();
    close_table();
  }

  void sample(const cohort::RubricPart& part) {
    html_.element("h3", "A sample to mark again").line();
    paragraph(sample_words(moderation_, part));
    if (part.sample.empty()) return;
    open_table(name_ + "answers drawn for marking again", "Answers drawn for marking again");
    html_.open("thead").open("tr");
    script_columns();
    html_.close().close().open("tbody").line();
    for (const cohort::Script& each : part.sample) {
      html_.open("tr");
      script(each);
      html_.close().line();
    }
    html_.close();
    close_table();
  }

  const cohort::Moderation& moderation_;
  HtmlWriter html_;
  std::string name_;  // before the labels of regions, where there are several rubrics
};

}  // namespace

std::string moderation_html(const cohort::Moderation& moderation) {
  HtmlPage page;
  page.title = "Many answers together";
  if (moderation.rubrics.size() == 1) page.title += ": " + moderation.rubrics[0].names.title;
  page.styles = kStyles;
  Html(moderation, page.body).page();
  return html_page(page);
}

}  // namespace retort
