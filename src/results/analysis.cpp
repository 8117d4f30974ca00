#include "results/analysis.h"

#include <algorithm>

#include "base/messages.h"
#include "results/statistics.h"

namespace retort::results {
namespace {

constexpr std::size_t kMostFindings = 100;

bool is_error(const Finding& finding) { return message(finding.code).severity == Severity::error; }

// The finest place that a mean is written to.
int finest_place(const Analysis& analysis) {
  int place = 0;
  bool first = true;
  for (std::size_t i : analysis.plotted) {
    if (first || analysis.summaries[i].place < place) place = analysis.summaries[i].place;
    first = false;
  }
  return place;
}

Points points_of(const Analysis& analysis) {
  Points out;
  Column half_ranges;
  for (std::size_t i : analysis.plotted) {
    const Summary& summary = analysis.summaries[i];
    out.x.push_back(to_twofold(analysis.readings.groups[i].x.value));
    out.y.push_back(to_twofold(summary.mean));
    if (summary.kept > 1) half_ranges.push_back(to_twofold(summary.uncertainty));
  }
  out.step = to_double(power_of_ten(finest_place(analysis)));
  if (!half_ranges.empty()) out.half_range = median(half_ranges).value();
  return out;
}

// Significant figures of each mean, as it is written to its place.
std::vector<int> mean_figures(const Analysis& analysis) {
  std::vector<int> out;
  for (std::size_t i : analysis.plotted) {
    const Summary& summary = analysis.summaries[i];
    Exact mean = rounded(summary.mean, summary.place);
    out.push_back(mean == 0 ? 1 : std::max(1, first_place(mean) - summary.place + 1));
  }
  return out;
}

std::string first_of(const std::vector<std::string>& names) { return names.empty() ? std::string("?") : names.front(); }

bool fits(const Quantity& quantity, const std::vector<std::string>& names) {
  return names.empty() || std::any_of(names.begin(), names.end(), [&](const std::string& name) {
           return folded(quantity.name) == folded(name) || has_words(quantity.name, name);
         });
}

// The graph has the rubric's axes the other way round, so the gradient is the inverse.
void add_swapped(GradientMeaning meaning, const std::string& file, Analysis& out) {
  bool inverse = meaning.from == ConstantFrom::inverse;
  meaning.from = inverse ? ConstantFrom::gradient : ConstantFrom::inverse;
  meaning.stands_for = inverse ? meaning.name : "1 / " + meaning.name;
  out.constant = find_constant(meaning, out.gradient->gradient, gradient_unit(out.readings.x, out.readings.y), file, out.findings);
}

void add_constant(const Guide& guide, const std::string& file, int figures, Analysis& out) {
  if (!guide.gradient) return;
  bool of_sines = guide.gradient->from == ConstantFrom::sines;
  if (of_sines ? !out.sines || out.sines->line.curved() : out.line.curved()) return;  // a curve has no one gradient
  bool swapped = fits(out.readings.x, guide.y) && fits(out.readings.y, guide.x);
  if (swapped && !of_sines) return add_swapped(*guide.gradient, file, out);
  if (!fits(out.readings.x, guide.x) || !fits(out.readings.y, guide.y)) {
    out.findings.push_back(make_finding(Code::results_guide_misfit, file, {first_of(guide.y), first_of(guide.x)}));
    return;
  }
  if (of_sines) {
    Written index = out.sines->index;
    index.figures = figures;
    out.constant = find_constant(*guide.gradient, index, CompoundUnit{}, file, out.findings);
    return;
  }
  out.constant = find_constant(*guide.gradient, out.gradient->gradient, gradient_unit(out.readings.x, out.readings.y), file, out.findings);
}

void report_unused(const Layout& layout, const std::string& file, Findings& findings) {
  std::string names;
  std::string last;
  for (std::size_t column : layout.unused) {
    std::string name = column_name(layout, column);
    if (name != last) names += (names.empty() ? "'" : ", '") + name + "'";
    last = name;
  }
  if (!names.empty()) findings.push_back(make_finding(Code::results_columns_unused, file, {names}));
}

void keep_some(const std::string& file, Findings& findings) {
  if (findings.size() <= kMostFindings) return;
  std::size_t more = findings.size() - kMostFindings;
  findings.resize(kMostFindings);
  findings.push_back(make_finding(Code::results_more_findings, file, {std::to_string(more)}));
}

}  // namespace

bool Analysis::off_line(std::size_t group) const {
  return std::any_of(line.left_out.begin(), line.left_out.end(), [&](std::size_t point) { return plotted[point] == group; });
}

bool Analysis::repeats() const {
  return std::any_of(readings.groups.begin(), readings.groups.end(), [](const Group& group) { return group.readings.size() > 1; });
}

Result<Analysis> analyse(const Table& table, const std::string& file, const Wanted& wanted) {
  Analysis out;
  std::optional<Layout> layout = find_layout(table, wanted, file, out.findings);
  if (!layout) return *std::find_if(out.findings.begin(), out.findings.end(), is_error);
  out.readings = read_readings(table, *layout, file, out.findings);
  out.summaries = summarise(out.readings.groups);
  for (std::size_t i = 0; i < out.summaries.size(); ++i) {
    const Group& group = out.readings.groups[i];
    bool both = group.pupil_mean && out.summaries[i].kept > 0;
    out.checks.push_back(both ? std::optional(check_mean(group, out.summaries[i])) : std::nullopt);
    if (out.summaries[i].kept > 0) out.plotted.push_back(i);
  }
  report_unused(*layout, file, out.findings);
  out.line = fit_line(points_of(out));
  if (out.line.state == LineState::fitted) {
    int figures = figures_of(out.readings.groups, mean_figures(out));
    out.gradient = describe_gradient(out.line, out.readings, figures, finest_place(out));
    if (are_refraction_angles(out.readings.x, out.readings.y)) out.sines = fit_sines(out.readings, out.summaries, figures);
    if (wanted.guide != nullptr) add_constant(*wanted.guide, file, figures, out);
  }
  keep_some(file, out.findings);
  return out;
}

}  // namespace retort::results
