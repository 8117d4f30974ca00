#include "report/results_words.h"

#include <cmath>

namespace retort {
namespace {

using namespace results;

std::string number(const Reading& reading) { return written_to_place(reading.value, reading.last_place); }

std::string times(std::size_t count, std::string_view one, std::string_view more) {
  return std::to_string(count) + " " + std::string(count == 1 ? one : more);
}

std::string lower_first(std::string text) {
  // "T" and "pH" stay as they are
  bool word = text.size() > 1 && text[0] >= 'A' && text[0] <= 'Z' && text[1] >= 'a' && text[1] <= 'z';
  if (word) text[0] = static_cast<char>(text[0] - 'A' + 'a');
  return text;
}

std::string upper_first(std::string text) {
  bool word = text.size() > 1 && text[0] >= 'a' && text[0] <= 'z' && ((text[1] >= 'a' && text[1] <= 'z') || text[1] == ' ');
  if (word) text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

// With as many nines as say something: 0.98, 0.9996.
std::string r_squared_text(const Exact& value) {
  int places = 2;
  while (places < 6 && rounded(value, -places) == 1 && value != 1) ++places;
  return written_to_place(value, -places);
}

std::string round_text(double value, int figures) { return std::isfinite(value) ? written(exact(value), figures) : std::string("?"); }

class Writer {
 public:
  explicit Writer(const Analysis& analysis) : a_(analysis), x_(lower_first(analysis.readings.x.name)), y_(lower_first(analysis.readings.y.name)) {}

  ResultsWords run() {
    readings();
    means();
    line();
    relation();
    constant();
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string y_unit(const std::string& text) const { return with_unit(text, a_.readings.y.unit); }
  [[nodiscard]] std::string x_unit(const std::string& text) const { return with_unit(text, a_.readings.x.unit); }
  [[nodiscard]] std::string at(std::size_t group) const { return "At " + x_ + " " + x_unit(number(a_.readings.groups[group].x)); }

  void readings() {
    if (!a_.repeats()) out_.readings.push_back("There are no repeats, so an anomaly cannot be told from a good reading, and there is no range. Take each reading at least three times.");
    for (std::size_t g = 0; g < a_.summaries.size(); ++g) {
      for (const Anomaly& anomaly : a_.summaries[g].anomalies) out_.readings.push_back(anomaly_words(g, anomaly));
      if (a_.summaries[g].disagree) out_.readings.push_back(disagreement(g));
      if (a_.summaries[g].kept == 0) out_.readings.push_back(at(g) + " there is no reading that can be used.");
    }
    rule();
    zero_uncertainty();
  }

  // Said once, below the anomalies it found.
  void rule() {
    bool used = false;
    for (const Summary& summary : a_.summaries) {
      for (const Anomaly& anomaly : summary.anomalies) used = used || anomaly.rule == AnomalyRule::usual_range;
    }
    if (used) out_.readings.push_back("The rule: too far is more than three times the usual range of the other rows, twice the range of the other readings in the row, and three steps of the scale.");
  }

  std::string anomaly_words(std::size_t g, const Anomaly& anomaly) const {
    const Summary& summary = a_.summaries[g];
    std::string reading = y_unit(number(a_.readings.groups[g].readings[anomaly.reading]));
    std::string out = at(g) + " the reading " + reading + " is an anomaly and was left out of the mean: it is " + y_unit(written_to_place(anomaly.gap, summary.place)) +
                      " away from the nearest other reading, and more than " + y_unit(limit_text(anomaly.limit, summary.place)) + " counts as too far";
    return anomaly.rule == AnomalyRule::dixon ? out + " (Dixon's test at 90 %, which goes by this row alone)." : out + ".";
  }

  static std::string limit_text(const Exact& limit, int place) { return written_to_place(limit, ends_by(limit, place) ? place : place - 1); }

  std::string disagreement(std::size_t g) const {
    const Summary& summary = a_.summaries[g];
    std::string range = y_unit(written_to_place(summary.range, summary.place));
    if (summary.kept == 2) return at(g) + " the two readings are " + range + " apart. With two nobody can say which one is wrong, so both stay in the mean: take a third.";
    return at(g) + " the readings are spread over " + range + ", much more than elsewhere, and none stands out as the wrong one: take them again.";
  }

  void zero_uncertainty() {
    for (const Summary& summary : a_.summaries) {
      if (summary.kept < 2 || summary.range != 0) continue;
      std::string half = y_unit(written_to_place(power_of_ten(summary.place) / 2, summary.place - 1));
      out_.readings.push_back("Where repeats are all the same, their half range is 0, but no reading is that good: the uncertainty is at least half a step of the scale, " + half + ".");
      return;
    }
  }

  void means() {
    std::size_t right = 0, judged = 0;
    for (std::size_t g = 0; g < a_.checks.size(); ++g) {
      if (!a_.checks[g]) continue;
      ++judged;
      if (a_.checks[g]->verdict == MeanVerdict::right) {
        ++right;
        continue;
      }
      out_.means.push_back(mean_words(g, *a_.checks[g]));
    }
    if (judged > 0 && right == judged) out_.means.push_back("All " + times(judged, "mean", "means") + " in the table are right.");
    else if (judged > 0) out_.means.push_back(std::to_string(right) + " of the " + times(judged, "mean", "means") + " in the table " + (right == 1 ? "is" : "are") + " right.");
  }

  std::string mean_words(std::size_t g, const MeanCheck& check) const {
    const Group& group = a_.readings.groups[g];
    const Summary& summary = a_.summaries[g];
    std::string own = y_unit(number(*group.pupil_mean));
    std::string should = y_unit(mean_text(summary));
    std::string wrong = at(g) + " the table's mean is " + own + "; it should be " + should + ": ";
    switch (check.verdict) {
      case MeanVerdict::right: return {};
      case MeanVerdict::more_places: return wrong + "it has more decimal places than the readings.";
      case MeanVerdict::fewer_places: return wrong + "it has fewer decimal places than the readings.";
      case MeanVerdict::rounding: return wrong + "it is not rounded in the right way.";
      case MeanVerdict::anomaly_left_in: return wrong + "the anomaly was left in.";
      case MeanVerdict::wrong_count: return wrong + "the sum was divided by " + std::to_string(check.divided_by) + ", and there are " + times(summary.kept, "reading", "readings") + " to count.";
      case MeanVerdict::reading_left_out:
        return wrong + "the reading " + y_unit(number(group.readings[*check.reading])) + " was left out, but it is not far enough from the others to be an anomaly.";
      case MeanVerdict::middle_reading: return wrong + "that is the reading in the middle, not the mean.";
      case MeanVerdict::other: return wrong + "add up the readings that count and divide by how many there are (" + std::to_string(summary.kept) + ").";
    }
    return wrong;
  }

  void line() {
    if (a_.line.state != LineState::fitted) {
      out_.line.push_back(a_.plotted.empty() ? "There is no point to plot."
                                             : "All readings were taken at one " + x_ + ", so there is no line: measure at more values of " + x_ + ", five or more.");
      return;
    }
    for (std::size_t point : a_.line.left_out) {
      std::size_t g = a_.plotted[point];
      bool last = point + 1 == a_.plotted.size() || point == 0;
      out_.line.push_back("The point at " + x_ + " " + x_unit(number(a_.readings.groups[g].x)) + " lies off the line through the others, farther than chance allows, and was left out of the line of best fit: measure it again." +
                          (last ? " If it stays there, the graph bends at that end." : ""));
    }
    const Gradient& g = *a_.gradient;
    bool below = g.intercept.text.starts_with("\u2212");
    std::string sign = below ? " \u2212 " : " + ";
    std::string size = below ? g.intercept.text.substr(3) : g.intercept.text;
    out_.line.push_back("Line of best fit: " + y_ + " = " + g.gradient.with_unit() + " \u00D7 " + x_ + sign + y_unit(size) + ".");
    out_.line.push_back("Gradient " + g.gradient.with_unit() + uncertainty(g.gradient_uncertainty, g.gradient.unit) + "; intercept " + g.intercept.with_unit() +
                        uncertainty(g.intercept_uncertainty, g.intercept.unit) + r_squared() + ".");
    if (!g.from_points.empty()) out_.line.push_back(two_points(g));
  }

  static std::string uncertainty(const std::string& text, const std::string& unit) { return text.empty() ? "" : " (\u00B1 " + with_unit(text, unit) + ")"; }

  std::string r_squared() const {
    if (!a_.line.fit.r_squared || a_.line.fit.freedom == 0) return {};
    return "; R\u00B2 = " + r_squared_text(to_exact(*a_.line.fit.r_squared));
  }

  std::string two_points(const Gradient& g) const {
    auto bracket = [](const std::string& text) { return text.starts_with("\u2212") ? "(" + text + ")" : text; };
    return "To read it from the graph, take two points on the line, far apart, such as (" + x_unit(g.low.x) + ", " + y_unit(g.low.y) + ") and (" + x_unit(g.high.x) + ", " +
           y_unit(g.high.y) + "): (" + g.high.y + " \u2212 " + bracket(g.low.y) + ") \u00F7 (" + g.high.x + " \u2212 " + bracket(g.low.x) + ") = " + with_unit(g.from_points, g.gradient.unit) + ".";
  }

  void relation() {
    if (a_.line.state != LineState::fitted) return;
    const Line& line = a_.line;
    const std::string y = upper_first(y_);
    if (a_.sines) {
      out_.relation.push_back("In refraction the sines of the angles are proportional, not the angles themselves, even where a few angles look like it: see below.");
      return;
    }
    if (line.curved()) return curved(y);
    if (line.fit.freedom == 0) {
      out_.relation.push_back("Two points always lie on a straight line, so they cannot show whether " + y_ + " is proportional to " + x_ + ": measure at five values or more.");
      return;
    }
    if (line.flat) {
      out_.relation.push_back(y + " does not change with " + x_ + " by more than the readings scatter.");
      return;
    }
    const Gradient& g = *a_.gradient;
    std::string intercept = y_unit(g.intercept.text);
    std::string limit = y_unit(g.intercept_uncertainty);
    if (line.shape == Shape::unknown) {
      out_.relation.push_back("Three points are too few to tell a straight line from a curve: measure at five values or more before saying whether " + y_ + " is proportional to " + x_ + ".");
      return;
    }
    if (line.origin == Origin::through) {
      out_.relation.push_back(y + " is directly proportional to " + x_ + ": the points lie on a straight line, and it goes through the origin (the intercept " + intercept +
                              " is within its uncertainty of " + limit + ").");
    } else if (line.origin == Origin::misses) {
      out_.relation.push_back(y + " grows with " + x_ + " in a straight line, but is not directly proportional to it: the line does not go through the origin (the intercept " +
                              intercept + " is more than its uncertainty of " + limit + ").");
      if (line.gradient().high < 0) out_.relation.back() = y + " falls as " + x_ + " rises, in a straight line; that is not direct proportion, which goes up from the origin.";
    } else {
      out_.relation.push_back("The points lie on a straight line, but they are too scattered or too far from the origin to say whether it goes through it (the uncertainty of the intercept is " + limit +
                              "): measure again, also at small values of " + x_ + ".");
    }
  }

  void curved(const std::string& y) {
    switch (a_.line.shape) {
      case Shape::steeper: out_.relation.push_back(y + " is not proportional to " + x_ + ": the points lie on a curve that gets steeper."); break;
      case Shape::shallower: out_.relation.push_back(y + " is not proportional to " + x_ + ": the points lie on a curve that gets less steep."); break;
      default: out_.relation.push_back(y + " is not proportional to " + x_ + ": the points lie above the line in one stretch and below it in another, so they do not follow a straight line."); break;
    }
    out_.relation.push_back("Draw a smooth curve through the points; the gradient given here is only that of the straight line that comes nearest.");
    if (!a_.line.suggestion) return;
    const Suggestion& s = *a_.line.suggestion;
    std::string what = s.plot == Plot::x_squared ? x_ + " squared" : s.plot == Plot::root_x ? "the square root of " + x_ : "1 \u00F7 " + x_;
    out_.relation.push_back("A suggestion: plot " + y_ + " against " + what + ". These points would lie on a straight line there (R\u00B2 = " + r_squared_text(exact(s.r_squared)) + ")" +
                            (s.through_origin ? ", through the origin." : "."));
  }

  void constant() {
    if (a_.sines) sines(*a_.sines);
    if (!a_.constant || a_.constant->from == ConstantFrom::sines) return;
    const Constant& c = *a_.constant;
    std::string value = c.value.with_unit();
    if (c.from == ConstantFrom::inverse) {
      out_.constant.push_back("The gradient stands for " + c.stands_for + ": gradient = " + a_.gradient->gradient.with_unit() + ", so the " + c.name + " is " + value + ".");
      return;
    }
    bool same = value == a_.gradient->gradient.with_unit();
    out_.constant.push_back("The gradient is the " + c.name + ": " + value + (same ? "." : " (" + a_.gradient->gradient.with_unit() + ")."));
  }

  void sines(const Sines& s) {
    std::string n = "Plot sin(" + x_ + ") against sin(" + y_ + "): the gradient is the refractive index, n = " + s.index.text + (s.uncertainty.empty() ? "" : " (\u00B1 " + s.uncertainty + ")") + ".";
    if (s.line.curved()) n += " But these points bend: check the angles, which are measured from the normal.";
    out_.constant.push_back(n);
    if (s.mean_ratio) out_.constant.push_back("The mean of the single ratios sin(" + x_ + ") \u00F7 sin(" + y_ + ") is " + written(to_exact(*s.mean_ratio), s.index.figures) + ".");
    if (s.critical) out_.constant.push_back("A ray going out of the block has a critical angle of about " + s.critical->with_unit() + " (sin c = 1 \u00F7 n).");
  }

  const Analysis& a_;
  std::string x_;
  std::string y_;
  ResultsWords out_;
};

}  // namespace

ResultsWords results_words(const Analysis& analysis) { return Writer(analysis).run(); }

std::string graph_title(const Analysis& analysis) { return upper_first(analysis.readings.y.name) + " against " + lower_first(analysis.readings.x.name); }

std::string_view verdict_name(MeanVerdict verdict) {
  switch (verdict) {
    case MeanVerdict::right: return "right";
    case MeanVerdict::more_places: return "more-places";
    case MeanVerdict::fewer_places: return "fewer-places";
    case MeanVerdict::rounding: return "rounding";
    case MeanVerdict::anomaly_left_in: return "anomaly-left-in";
    case MeanVerdict::wrong_count: return "wrong-count";
    case MeanVerdict::reading_left_out: return "reading-left-out";
    case MeanVerdict::middle_reading: return "middle-reading";
    case MeanVerdict::other: return "other";
  }
  return "other";
}

std::string_view shape_name(Shape shape) {
  switch (shape) {
    case Shape::straight: return "straight";
    case Shape::steeper: return "steeper";
    case Shape::shallower: return "shallower";
    case Shape::uneven: return "uneven";
    case Shape::unknown: return "unknown";
  }
  return "unknown";
}

std::string_view origin_name(Origin origin) { return origin == Origin::through ? "through" : origin == Origin::misses ? "misses" : "unsure"; }

std::string_view plot_name(Plot plot) { return plot == Plot::x_squared ? "x-squared" : plot == Plot::root_x ? "root-x" : "one-over-x"; }

std::string mean_text(const Summary& summary) { return written_to_place(summary.mean, summary.place); }

std::string uncertainty_text(const Summary& summary) {
  if (summary.kept < 2) return {};
  return written_to_place(summary.uncertainty, ends_by(summary.uncertainty, summary.place) ? summary.place : summary.place - 1);
}

std::string percent_text(const Summary& summary) { return summary.percent ? round_text(*summary.percent, 2) : std::string(); }

}  // namespace retort
