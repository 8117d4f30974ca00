#include "serve/api.h"

#include "base/messages.h"
#include "intake/answer.h"
#include "intake/csv.h"
#include "report/json_writer.h"
#include "report/results_json.h"
#include "report/results_svg.h"
#include "report/results_words.h"
#include "report/review_json.h"
#include "results/analysis.h"
#include "serve/findings_json.h"

namespace retort::serve {
namespace {

constexpr CsvLimits kTableLimits{1U << 20, 20'000};

void write_texts(std::string_view key, const std::vector<std::string>& texts, JsonWriter& json) {
  json.key(key).begin_array();
  for (const std::string& text : texts) json.text(text);
  json.end_array();
}

void write_step(const Step& step, JsonWriter& json) {
  json.begin_object().key("id").text(step.id).key("title").text(step.title).key("facet").text(step.facet).key("core").boolean(step.core);
  json.key("hint").text(step.hint).key("lacks").text(step.lacks);
  json.key("presentMeans").text(step.present_means).key("vagueMeans").text(step.vague_means).end_object();
}

void write_given(const Given& given, JsonWriter& json) {
  json.key("given").begin_object().key("quantity").text(given.quantity);
  write_texts("values", given.wordings, json);
  json.key("columns").begin_array();
  for (const Given::Column& column : given.data) {
    json.begin_object().key("quantity").text(column.quantity);
    write_texts("values", column.values, json);
    json.end_object();
  }
  json.end_array();
  write_texts("apparatus", given.apparatus, json);
  json.key("hypothesis").text(given.hypothesis).end_object();
}

}  // namespace

Response problem(int status, std::string_view sentence, const Findings& findings, std::string_view source) {
  std::string out;
  JsonWriter json(out);
  json.begin_object().key("error").text(sentence);
  write_findings(findings, source, json);
  json.end_object();
  return json_response(std::move(out), status);
}

const std::string* text_member(const json::Value& body, std::string_view key, std::size_t longest) {
  const json::Value* value = body.find(key);
  return value != nullptr && value->is(json::Type::string) && value->text.size() <= longest ? &value->text : nullptr;
}

Asked open_asked(Desks& desks, const json::Value& body) {
  Asked out;
  const std::string* id = text_member(body, "rubric", 100);
  const std::string* source = id == nullptr ? nullptr : desks.source(*id);
  if (source == nullptr) {
    out.why = problem(404, "There is no such investigation.", {}, {});
    return out;
  }
  const json::Value* given = body.find("edits");
  RubricEdits edits;
  if (given != nullptr && !given->is(json::Type::null)) edits = read_edits(*given, out.findings);
  if (!out.findings.empty()) {
    out.why = problem(400, "The changes to the rubric cannot be read.", out.findings, {});
    return out;
  }
  if (edits.empty()) {
    out.desk = desks.open(*id);
    if (!out.desk) out.why = problem(500, "This rubric cannot be used: 'retort rubric lint' says why.", {}, {});
    return out;
  }
  Result<std::string> edited = edited_rubric(*source, *id + ".json", edits);
  if (!edited) {
    out.why = problem(400, "The changes cannot be made.", {edited.finding()}, *source);
    return out;
  }
  out.source = std::move(*edited);
  out.desk = desks.open_edited(*id, out.source, out.findings);
  if (!out.desk) out.why = problem(422, "With these changes the rubric cannot be used.", out.findings, out.source);
  return out;
}

Response list_rubrics(const Desks& desks) {
  std::string out;
  JsonWriter json(out);
  json.begin_object().key("rubrics").begin_array();
  for (const Desks::Listed& rubric : desks.listed()) json.begin_object().key("id").text(rubric.id).key("title").text(rubric.title).key("points").boolean(rubric.points).end_object();
  json.end_array().end_object();
  return json_response(std::move(out));
}

Response show_rubric(Desks& desks, std::string_view id) {
  std::shared_ptr<Desk> desk = desks.open(id);
  if (!desk) return problem(404, "There is no such investigation.", {}, {});
  const Rubric& rubric = desk->rubric();
  std::string out;
  JsonWriter json(out);
  json.begin_object().key("id").text(rubric.id).key("title").text(rubric.title).key("question").text(rubric.question);
  json.key("points").boolean(rubric.kind == RubricKind::points);
  write_given(rubric.given, json);
  write_texts("cautions", rubric.cautions, json);
  json.key("steps").begin_array();
  for (const Step& step : rubric.steps) write_step(step, json);
  json.end_array().end_object();
  return json_response(std::move(out));
}

Response check_draft(Desks& desks, const json::Value& body) {
  Asked asked = open_asked(desks, body);
  if (!asked.desk) return asked.why;
  const std::string* text = text_member(body, "text", kLongestAnswer);
  if (text == nullptr) return problem(400, "\"text\" with the draft is missing, or too long.", {}, {});
  Answer answer;
  answer.id = "draft";
  answer.text = *text;
  std::string out;
  append_review_json(asked.desk->rubric(), answer, asked.desk->review(*text), out);
  return json_response(std::move(out));
}

Response work_results(Desks& desks, const json::Value& body) {
  const std::string* table_text = text_member(body, "table", kTableLimits.bytes);
  if (table_text == nullptr) return problem(400, "\"table\" is missing, or too long.", {}, {});
  std::shared_ptr<Desk> desk;
  if (const std::string* id = text_member(body, "rubric", 100); id != nullptr && !id->empty()) {
    desk = desks.open(*id);
    if (!desk) return problem(404, "There is no such investigation.", {}, {});
  }
  Findings findings;
  Result<Table> table = read_csv(*table_text, "table", findings, kTableLimits);
  if (!table) return problem(422, "This table cannot be read.", {table.finding()}, *table_text);
  const results::Guide* guide = desk && desk->rubric().results ? &*desk->rubric().results : nullptr;
  const std::string* x = text_member(body, "x", 200);
  const std::string* y = text_member(body, "y", 200);
  results::Wanted wanted{x == nullptr ? "" : *x, y == nullptr ? "" : *y, guide};
  Result<results::Analysis> analysis = results::analyse(*table, "table", wanted);
  if (!analysis) return problem(422, "This table cannot be worked through yet.", {analysis.finding()}, *table_text);
  std::string out;
  JsonWriter json(out);
  json.begin_object().key("title").text(graph_title(*analysis));
  std::string inner = results_json(*analysis, *table_text);
  inner.pop_back();  // its line end
  json.key("results").raw(inner).key("svg").text(results_svg(*analysis));
  write_findings(findings, *table_text, json);
  json.end_object();
  return json_response(std::move(out));
}

Response edit_rubric(Desks& desks, const json::Value& body) {
  Asked asked = open_asked(desks, body);
  if (!asked.desk) return asked.why;
  std::string out;
  JsonWriter json(out);
  json.begin_object().key("name").text(asked.desk->rubric().id + ".json");
  json.key("file").text(asked.source.empty() ? *desks.source(asked.desk->rubric().id) : asked.source);
  write_findings(asked.findings, asked.source, json);
  json.end_object();
  return json_response(std::move(out));
}

}  // namespace retort::serve
