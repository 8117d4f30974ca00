#include "report/results_json.h"

#include "base/messages.h"
#include "report/json_writer.h"
#include "report/results_words.h"

namespace retort {
namespace {

using namespace results;

void write_quantity(std::string_view key, const Quantity& quantity, JsonWriter& json) {
  json.key(key).begin_object().key("name").text(quantity.name).key("unit").text(quantity.unit).end_object();
}

void write_reading(const Reading& reading, JsonWriter& json) {
  json.begin_object().key("value").real(to_double(reading.value)).key("text").text(written_to_place(reading.value, reading.last_place));
  json.key("line").number(reading.line).key("kept").boolean(reading.kept).end_object();
}

void write_anomalies(const Group& group, const Summary& summary, JsonWriter& json) {
  json.key("anomalies").begin_array();
  for (const Anomaly& anomaly : summary.anomalies) {
    json.begin_object().key("value").real(to_double(group.readings[anomaly.reading].value));
    json.key("rule").text(anomaly.rule == AnomalyRule::dixon ? "dixon" : "usual-range");
    json.key("gap").real(to_double(anomaly.gap)).key("limit").real(to_double(anomaly.limit)).end_object();
  }
  json.end_array();
}

void write_group(const Analysis& a, std::size_t g, JsonWriter& json) {
  const Group& group = a.readings.groups[g];
  const Summary& summary = a.summaries[g];
  json.begin_object().key("x").real(to_double(group.x.value)).key("line").number(group.x.line);
  json.key("readings").begin_array();
  for (const Reading& reading : group.readings) write_reading(reading, json);
  json.end_array();
  if (summary.kept > 0) json.key("mean").real(to_double(summary.mean)).key("mean_text").text(mean_text(summary));
  if (summary.kept > 1) json.key("range").real(to_double(summary.range)).key("uncertainty").real(to_double(summary.uncertainty));
  if (summary.percent) json.key("percent").real(*summary.percent);
  write_anomalies(group, summary, json);
  json.key("disagree").boolean(summary.disagree).key("off_line").boolean(a.off_line(g));
  if (a.checks[g]) {
    json.key("own_mean").begin_object().key("value").real(to_double(group.pupil_mean->value)).key("verdict").text(verdict_name(a.checks[g]->verdict)).end_object();
  }
  json.end_object();
}

void write_number(std::string_view key, const Written& number, double error, double uncertainty, JsonWriter& json) {
  json.key(key).begin_object().key("value").real(number.value.value()).key("standard_error").real(error).key("uncertainty").real(uncertainty);
  json.key("text").text(number.text).key("unit").text(number.unit).end_object();
}

void write_point(const PointOnLine& point, JsonWriter& json) { json.begin_object().key("x").real(point.x_value).key("y").real(point.y_value).end_object(); }

void write_line(const Analysis& a, JsonWriter& json) {
  const Line& line = a.line;
  json.key("line").begin_object();
  json.key("state").text(line.state == LineState::fitted ? "fitted" : line.state == LineState::too_few_points ? "too-few-points" : "x-all-the-same");
  if (line.state == LineState::fitted) {
    const Gradient& g = *a.gradient;
    write_number("gradient", g.gradient, line.fit.standard_errors[1].value(), line.gradient_uncertainty, json);
    write_number("intercept", g.intercept, line.fit.standard_errors[0].value(), line.intercept_uncertainty, json);
    if (line.fit.r_squared) json.key("r_squared").real(line.fit.r_squared->value());
    json.key("residual_sd").real(line.fit.residual_sd.value()).key("points").number(static_cast<std::int64_t>(a.plotted.size() - line.left_out.size()));
    json.key("read_from").begin_array();
    write_point(g.low, json);
    write_point(g.high, json);
    json.end_array();
    json.key("shape").text(shape_name(line.shape)).key("origin").text(origin_name(line.origin)).key("flat").boolean(line.flat);
    json.key("proportional").boolean(a.proportional());
    if (line.suggestion) {
      json.key("suggestion").begin_object().key("plot").text(plot_name(line.suggestion->plot)).key("r_squared").real(line.suggestion->r_squared);
      json.key("through_origin").boolean(line.suggestion->through_origin).end_object();
    }
  }
  json.end_object();
}

void write_constants(const Analysis& a, JsonWriter& json) {
  if (a.sines) {
    json.key("refraction").begin_object().key("index").real(a.sines->index.value.value()).key("index_text").text(a.sines->index.text);
    if (a.sines->mean_ratio) json.key("mean_ratio").real(a.sines->mean_ratio->value());
    if (a.sines->critical) json.key("critical_angle").real(a.sines->critical->value.value());
    json.end_object();
  }
  if (!a.constant) return;
  json.key("constant").begin_object().key("name").text(a.constant->name).key("value").real(a.constant->value.value.value());
  json.key("text").text(a.constant->value.text).key("unit").text(a.constant->value.unit).end_object();
}

void write_say(const Analysis& a, JsonWriter& json) {
  ResultsWords words = results_words(a);
  json.key("say").begin_array();
  for (const auto* part : {&words.readings, &words.means, &words.line, &words.relation, &words.constant}) {
    for (const std::string& sentence : *part) json.text(sentence);
  }
  json.end_array();
}

void write_remarks(const Analysis& a, std::string_view source, JsonWriter& json) {
  json.key("remarks").begin_array();
  for (const Finding& finding : a.findings) {
    const Message& entry = message(finding.code);
    json.begin_object().key("code").text(entry.name);
    if (finding.located) {
      LineColumn at = locate(source, finding.span.begin);
      json.key("line").number(static_cast<std::int64_t>(at.line)).key("column").number(static_cast<std::int64_t>(at.column));
    }
    json.key("text").text(fill(entry.what, finding.notes)).end_object();
  }
  json.end_array();
}

}  // namespace

std::string results_json(const Analysis& analysis, std::string_view source) {
  std::string out;
  JsonWriter json(out);
  json.begin_object().key("format").number(kResultsFormat);
  write_quantity("x", analysis.readings.x, json);
  write_quantity("y", analysis.readings.y, json);
  json.key("rows").begin_array();
  for (std::size_t g = 0; g < analysis.readings.groups.size(); ++g) write_group(analysis, g, json);
  json.end_array();
  write_line(analysis, json);
  write_constants(analysis, json);
  write_say(analysis, json);
  write_remarks(analysis, source, json);
  json.end_object();
  return out + "\n";
}

}  // namespace retort
