#include "serve/api_class.h"

#include "classroom/picture.h"
#include "intake/answers.h"
#include "report/class_csv.h"
#include "report/class_html.h"
#include "report/class_json.h"
#include "report/json_writer.h"
#include "report/slips_html.h"
#include "serve/class_request.h"
#include "serve/findings_json.h"

namespace retort::serve {
namespace {

Response typed(std::string body, const char* type) {
  Response out;
  out.type = type;
  out.body = std::move(body);
  return out;
}

std::string_view word_of(StepStatus status) {
  if (status == StepStatus::present) return "present";
  return status == StepStatus::vague ? "vague" : "missing";
}

// Step by step, what the edits change in the drafts' reviews.
Response changes(Desks& desks, const SentClass& sent) {
  std::shared_ptr<Desk> plain = desks.open(sent.asked.desk->rubric().id);
  if (!plain) return problem(500, "This rubric cannot be used: 'retort rubric lint' says why.", {}, {});
  std::vector<classroom::Draft> drafts = sent.drafts;
  review_drafts(*plain, drafts);
  const Rubric& rubric = sent.asked.desk->rubric();
  std::string out;
  JsonWriter json(out);
  json.begin_object().key("drafts").number(static_cast<std::int64_t>(drafts.size())).key("changes").begin_array();
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    const std::vector<StepReview>& was = drafts[i].review.steps;
    const std::vector<StepReview>& is = sent.drafts[i].review.steps;
    for (std::size_t s = 0; s < std::min(was.size(), is.size()); ++s) {
      if (was[s].status == is[s].status) continue;
      json.begin_object().key("draft").text(drafts[i].label).key("step").text(rubric.steps[s].id).key("title").text(rubric.steps[s].title);
      json.key("was").text(word_of(was[s].status)).key("is").text(word_of(is[s].status)).end_object();
    }
  }
  json.end_array();
  write_findings(sent.asked.findings, sent.asked.source, json);
  json.end_object();
  return json_response(std::move(out));
}

}  // namespace

Response read_sent_file(const std::string& name, std::string body) {
  if (name.empty() || name.size() > 1000) return problem(400, "The file has no name, or one that is too long.", {}, {});
  AnswerStream stream(IntakeOptions{}, file_in_memory(name, std::move(body)));
  Findings findings;
  std::string out;
  JsonWriter json(out);
  json.begin_object().key("answers").begin_array();
  Answer answer;
  std::size_t count = 0;
  while (count < kMostSentDrafts && stream.next(answer, findings)) {
    json.begin_object().key("id").text(answer.id).key("text").text(answer.text);
    if (!answer.rubric.empty()) json.key("rubric").text(answer.rubric);
    json.end_object();
    ++count;
    answer = {};
  }
  json.end_array().key("cut").boolean(count == kMostSentDrafts);
  write_findings(findings, {}, json);
  json.end_object();
  return json_response(std::move(out));
}

Response class_report(Desks& desks, const json::Value& body) {
  const std::string* as = text_member(body, "as", 20);
  if (as == nullptr) return problem(400, "\"as\" must say html, csv, json, slips or changes.", {}, {});
  SentClass sent = read_class(desks, body);
  if (!sent.asked.desk) return std::move(sent.asked.why);
  const Rubric& rubric = sent.asked.desk->rubric();
  if (*as == "changes") return changes(desks, sent);
  classroom::Change change;
  if (!sent.before.empty()) change = classroom::compare(rubric.steps.size(), sent.before, sent.drafts);
  const classroom::Change* compared = sent.before.empty() ? nullptr : &change;
  if (*as == "slips") return typed(slips_html(rubric, sent.drafts, {sent.per_sheet, sent.with_range}, compared), "text/html; charset=utf-8");
  classroom::Picture picture = classroom::make_picture(rubric, sent.drafts);
  ClassReport report{rubric, sent.drafts, picture, sent.with_range};
  if (compared != nullptr) {
    report.before = &sent.before;
    report.change = compared;
  }
  if (*as == "html") return typed(class_html(report), "text/html; charset=utf-8");
  if (*as == "csv") return typed(class_csv(report), "text/csv; charset=utf-8");
  if (*as == "json") return json_response(class_json(report));
  return problem(400, "\"as\" must say html, csv, json, slips or changes.", {}, {});
}

}  // namespace retort::serve
