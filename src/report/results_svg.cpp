#include "report/results_svg.h"

#include <algorithm>
#include <cmath>

#include "report/axis.h"
#include "report/page.h"
#include "report/results_words.h"
#include "report/svg_writer.h"

namespace retort {
namespace {

using namespace results;

// The drawing, in its own units; a page of this size is readable from a phone's width on.
constexpr double kWidth = 640;
constexpr double kLeft = 96, kRight = 616, kTop = 62, kBottom = 500;
constexpr double kKeyRow = 30;
constexpr double kCross = 7;
constexpr double kLabelSize = 21;
constexpr int kMostSteps = 8;

constexpr std::string_view kStyle =
    ".page{fill:#fff}.ink{stroke:#111;stroke-width:2;fill:none}.fine{stroke:#e3e8ec;stroke-width:1}.grid{stroke:#c2ccd4;stroke-width:1.2}"
    ".best{stroke:#0b5cad;stroke-width:2.4;fill:none}.near{stroke:#0b5cad;stroke-width:2.4;stroke-dasharray:9 7;fill:none}"
    ".odd{stroke:#a3300a;stroke-width:2.2;fill:none}.bar{stroke:#111;stroke-width:1.4}"
    "text{font-family:system-ui,'Segoe UI','Liberation Sans','DejaVu Sans',sans-serif;font-size:19px;fill:#111}"
    ".title{font-weight:600}.word{font-size:18px;fill:#a3300a}"
    "@media (prefers-color-scheme:dark){.page{fill:#14181c}.ink,.bar{stroke:#f0f3f5}.fine{stroke:#252c33}.grid{stroke:#3d4852}"
    ".best,.near{stroke:#7db8ff}.odd{stroke:#ff9d76}text{fill:#f0f3f5}.word{fill:#ff9d76}}";

struct Point {
  double x = 0.0;
  double y = 0.0;
  double bar = 0.0;
  bool off = false;
};

std::vector<Point> points_of(const Analysis& a) {
  std::vector<Point> out;
  for (std::size_t g : a.plotted) {
    const Summary& s = a.summaries[g];
    out.push_back({to_double(a.readings.groups[g].x.value), to_double(s.mean), to_double(s.uncertainty), a.off_line(g)});
  }
  return out;
}

class Graph {
 public:
  explicit Graph(const Analysis& analysis) : a_(analysis), points_(points_of(analysis)), svg_(out_) { choose_axes(); }

  std::string run() {
    std::vector<std::string> key = key_words();
    double height = kBottom + 78 + kKeyRow * static_cast<double>(key.size());
    svg_.open("svg", {{"xmlns", "http://www.w3.org/2000/svg"}, {"viewBox", "0 0 " + svg_number(kWidth) + " " + svg_number(height)}, {"role", "img"},
                      {"aria-labelledby", "graph-title graph-desc"}, {"width", "100%"}, {"style", "max-width:900px"}});
    svg_.element("title", {{"id", "graph-title"}}, title());
    svg_.element("desc", {{"id", "graph-desc"}}, description());
    svg_.element("style", {}, kStyle);
    svg_.element("rect", {{"class", "page"}, {"width", svg_number(kWidth)}, {"height", svg_number(height)}});
    paper();
    labels();
    best_line();
    for (const Point& point : points_) draw(point);
    anomalies();
    draw_key(key);
    svg_.close("svg");
    return std::move(out_);
  }

 private:
  [[nodiscard]] bool proportion_is_the_question() const {
    return a_.line.state == LineState::fitted && a_.line.shape == Shape::straight && a_.line.origin == Origin::through;
  }

  void choose_axes() {
    double x_low = 0, x_high = 1, y_low = 0, y_high = 1;
    for (std::size_t i = 0; i < points_.size(); ++i) {
      const Point& p = points_[i];
      x_low = i == 0 ? p.x : std::min(x_low, p.x);
      x_high = i == 0 ? p.x : std::max(x_high, p.x);
      y_low = i == 0 ? p.y - p.bar : std::min(y_low, p.y - p.bar);
      y_high = i == 0 ? p.y + p.bar : std::max(y_high, p.y + p.bar);
    }
    Zero origin = proportion_is_the_question() ? Zero::show : Zero::if_room;
    x_axis_ = make_axis(x_low, x_high, origin, kMostSteps);
    y_axis_ = make_axis(y_low, y_high, origin, kMostSteps);
    show_intercept(y_low, y_high);
  }

  // A line that misses the origin shows where, if the points still fill more than half of the paper.
  void show_intercept(double y_low, double y_high) {
    bool question = a_.line.state == LineState::fitted && a_.line.shape == Shape::straight && a_.line.origin == Origin::misses && x_axis_.low <= 0 && x_axis_.high >= 0;
    if (!question) return;
    double intercept = a_.line.intercept().value();
    Axis wider = make_axis(std::min(y_low, intercept), std::max(y_high, intercept), Zero::as_comes, kMostSteps);
    if (wider.at(y_high) - wider.at(y_low) > 0.5) y_axis_ = wider;
  }

  [[nodiscard]] double x(double value) const { return kLeft + x_axis_.at(value) * (kRight - kLeft); }
  [[nodiscard]] double y(double value) const { return kBottom - y_axis_.at(value) * (kBottom - kTop); }

  [[nodiscard]] std::string title() const { return graph_title(a_); }

  [[nodiscard]] std::string description() const {
    ResultsWords words = results_words(a_);
    std::string out = "Graph of " + std::to_string(points_.size()) + (points_.size() == 1 ? " point: " : " points: ") + a_.readings.y.label() + " up, " + a_.readings.x.label() + " along.";
    for (const auto* part : {&words.line, &words.relation, &words.constant}) {
      for (const std::string& sentence : *part) out += " " + sentence;
    }
    return out;
  }

  // Lines at every tick, finer ones between them as on graph paper.
  void paper() {
    auto lines = [&](const Axis& axis, auto draw_line) {
      double first = axis.step / std::pow(10.0, axis.place);
      int parts = std::lround(first) == 2 ? 4 : 5;
      std::vector<double> ticks = axis.ticks();
      for (std::size_t i = 0; i + 1 < ticks.size(); ++i) {
        for (int k = 1; k < parts; ++k) draw_line(ticks[i] + axis.step * k / parts, "fine");
      }
      for (double tick : ticks) draw_line(tick, "grid");
    };
    lines(x_axis_, [&](double v, std::string_view style) { svg_.line(x(v), kTop, x(v), kBottom, style); });
    lines(y_axis_, [&](double v, std::string_view style) { svg_.line(kLeft, y(v), kRight, y(v), style); });
    svg_.line(kLeft, kBottom, kRight, kBottom, "ink");
    svg_.line(kLeft, kTop, kLeft, kBottom, "ink");
  }

  // A size at which `text` fits in `room`.
  static std::string fitting(const std::string& text, double room) {
    constexpr double kOfSize = 0.56;  // the width of a letter, about
    double width = static_cast<double>(std::max<std::size_t>(columns(text), 1)) * kOfSize;
    return "font-size:" + svg_number(std::min(kLabelSize, room / width)) + "px";
  }

  void labels() {
    for (double tick : x_axis_.ticks()) svg_.element("text", {{"x", svg_number(x(tick))}, {"y", svg_number(kBottom + 25)}, {"text-anchor", "middle"}}, x_axis_.label(tick));
    for (double tick : y_axis_.ticks()) svg_.element("text", {{"x", svg_number(kLeft - 9)}, {"y", svg_number(y(tick) + 6)}, {"text-anchor", "end"}}, y_axis_.label(tick));
    std::string along = a_.readings.x.label();
    std::string up = a_.readings.y.label();
    svg_.element("text", {{"x", svg_number((kLeft + kRight) / 2)}, {"y", svg_number(kBottom + 55)}, {"text-anchor", "middle"}, {"style", fitting(along, kRight - kLeft)}}, along);
    std::string turn = "rotate(-90 24 " + svg_number((kTop + kBottom) / 2) + ")";
    svg_.element("text", {{"x", "24"}, {"y", svg_number((kTop + kBottom) / 2)}, {"text-anchor", "middle"}, {"transform", turn}, {"style", fitting(up, kBottom - kTop)}}, up);
    svg_.element("text", {{"class", "title"}, {"x", svg_number(kWidth / 2)}, {"y", "36"}, {"text-anchor", "middle"}, {"style", fitting(title(), kWidth - 40)}}, title());
  }

  // The part of the line that lies on the paper.
  void best_line() {
    if (a_.line.state != LineState::fitted) return;
    double gradient = a_.line.gradient().value();
    double intercept = a_.line.intercept().value();
    double from = x_axis_.low, to = x_axis_.high;
    auto cut = [&](double limit) {
      if (gradient == 0) return;
      double at = (limit - intercept) / gradient;
      bool rising_out = (limit == y_axis_.high) == (gradient > 0);
      if (rising_out) to = std::min(to, at);
      else from = std::max(from, at);
    };
    cut(y_axis_.low);
    cut(y_axis_.high);
    if (from >= to) return;
    svg_.line(x(from), y(intercept + gradient * from), x(to), y(intercept + gradient * to), a_.line.curved() ? "near" : "best");
  }

  void cross(double cx, double cy, std::string_view style) {
    svg_.line(cx - kCross, cy - kCross, cx + kCross, cy + kCross, style);
    svg_.line(cx - kCross, cy + kCross, cx + kCross, cy - kCross, style);
  }

  void bar(double cx, double top, double bottom) {
    svg_.line(cx, top, cx, bottom, "bar");
    svg_.line(cx - 5, top, cx + 5, top, "bar");
    svg_.line(cx - 5, bottom, cx + 5, bottom, "bar");
  }

  void ring(double cx, double cy) { svg_.element("circle", {{"class", "odd"}, {"cx", svg_number(cx)}, {"cy", svg_number(cy)}, {"r", "13"}}); }

  void diamond(double cx, double cy) {
    auto corner = [&](double dx, double dy) { return svg_number(cx + dx) + "," + svg_number(cy + dy) + " "; };
    svg_.element("polygon", {{"class", "odd"}, {"points", corner(0, -9) + corner(7, 0) + corner(0, 9) + corner(-7, 0)}});
  }

  // A word beside a place, on the side where there is room.
  void word(double cx, double cy, std::string_view text) {
    bool left = cx > (kLeft + kRight) / 2;
    svg_.element("text", {{"class", "word"}, {"x", svg_number(cx + (left ? -18 : 18))}, {"y", svg_number(cy + 6)}, {"text-anchor", left ? "end" : "start"}}, text);
  }

  void draw(const Point& point) {
    double cx = x(point.x);
    double cy = y(point.y);
    if (point.bar > 0) bar(cx, y(point.y + point.bar), y(point.y - point.bar));
    cross(cx, cy, point.off ? "odd" : "ink");
    if (!point.off) return;
    ring(cx, cy);
    word(cx, cy, "off the line");
  }

  [[nodiscard]] bool on_paper(double value) const { return value >= y_axis_.low && value <= y_axis_.high; }

  // Readings left out of a mean, where the paper reaches that far.
  void anomalies() {
    for (std::size_t g = 0; g < a_.summaries.size(); ++g) {
      for (const Anomaly& anomaly : a_.summaries[g].anomalies) {
        double value = to_double(a_.readings.groups[g].readings[anomaly.reading].value);
        if (!on_paper(value)) continue;
        double cx = x(to_double(a_.readings.groups[g].x.value));
        diamond(cx, y(value));
        word(cx, y(value), "anomaly");
      }
    }
  }

  // Which signs are on the paper, and so in the key.
  [[nodiscard]] std::vector<std::string> key_words() const {
    std::vector<std::string> out;
    out.emplace_back(a_.repeats() ? "mean of the readings" : "reading");
    if (std::any_of(points_.begin(), points_.end(), [](const Point& p) { return p.bar > 0; })) out.emplace_back("half the range of the readings, up and down");
    if (a_.line.state == LineState::fitted) out.emplace_back(a_.line.curved() ? "nearest straight line (the points bend)" : "line of best fit");
    if (!a_.line.left_out.empty()) out.emplace_back("off the line, left out of it");
    std::size_t shown = 0, hidden = 0;
    for (std::size_t g = 0; g < a_.summaries.size(); ++g) {
      for (const Anomaly& anomaly : a_.summaries[g].anomalies) (on_paper(to_double(a_.readings.groups[g].readings[anomaly.reading].value)) ? shown : hidden) += 1;
    }
    if (shown > 0) out.emplace_back("anomaly, left out of the mean");
    if (hidden > 0) out.emplace_back(std::to_string(hidden) + (hidden == 1 ? " anomaly lies" : " anomalies lie") + " off this paper");
    return out;
  }

  void draw_key(const std::vector<std::string>& key) {
    double cy = kBottom + 88;
    double cx = kLeft;
    for (const std::string& text : key) {
      if (text.starts_with("half")) bar(cx, cy - 10, cy + 10);
      else if (text.starts_with("line")) svg_.line(cx - 18, cy, cx + 18, cy, "best");
      else if (text.starts_with("nearest")) svg_.line(cx - 18, cy, cx + 18, cy, "near");
      else if (text.starts_with("off")) cross(cx, cy, "odd"), ring(cx, cy);
      else if (text.starts_with("anomaly")) diamond(cx, cy);
      else if (!text.ends_with("paper")) cross(cx, cy, "ink");
      svg_.element("text", {{"x", svg_number(cx + 32)}, {"y", svg_number(cy + 6)}}, text);
      cy += kKeyRow;
    }
  }

  const Analysis& a_;
  std::vector<Point> points_;
  Axis x_axis_;
  Axis y_axis_;
  std::string out_;
  SvgWriter svg_;
};

}  // namespace

std::string results_svg(const Analysis& analysis) { return Graph(analysis).run(); }

}  // namespace retort
