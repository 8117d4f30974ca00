#include "report/share_plot.h"

#include "report/svg_writer.h"

namespace retort {
namespace {

constexpr double kLeft = 12;
constexpr double kLength = 160;
constexpr double kWidth = kLeft + kLength + kLeft;
constexpr double kHeight = 22;

double at(double share) {
  return kLeft + kLength * share;
}

void open(SvgWriter& svg, double height) {
  svg.open("svg", {{"class", "share"},
                   {"width", svg_number(kWidth)},
                   {"height", svg_number(height)},
                   {"viewBox", "0 0 " + svg_number(kWidth) + " " + svg_number(height)},
                   {"aria-hidden", "true"},
                   {"focusable", "false"}});
}

}  // namespace

std::string share_plot(const cohort::Share& share, bool filled) {
  std::string out;
  SvgWriter svg(out);
  open(svg, kHeight);
  double middle = kHeight / 2;
  for (double tick : {0.0, 0.5, 1.0}) svg.line(at(tick), 0, at(tick), kHeight, "grid");
  svg.line(at(share.interval.low), middle, at(share.interval.high), middle, "range");
  for (double end : {share.interval.low, share.interval.high}) svg.line(at(end), middle - 4, at(end), middle + 4, "range");
  svg.element("circle", {{"class", filled ? "dot" : "ring"}, {"cx", svg_number(at(share.value))}, {"cy", svg_number(middle)}, {"r", "4.5"}});
  svg.close("svg");
  return out;
}

std::string share_scale() {
  std::string out;
  SvgWriter svg(out);
  constexpr double kScaleHeight = 16;
  open(svg, kScaleHeight);
  for (int tick : {0, 50, 100}) {
    svg.element("text", {{"x", svg_number(at(tick / 100.0))}, {"y", "12"}, {"text-anchor", "middle"}}, std::to_string(tick));
  }
  svg.close("svg");
  return out;
}

}  // namespace retort
