#include "report/review_json.h"

#include "report/calc_json.h"
#include "report/json_writer.h"

namespace retort {
namespace {

void write_steps(const Rubric& rubric, const Answer& answer, const Review& review, JsonWriter& json) {
  json.key("steps").begin_array();
  for (std::size_t i = 0; i < review.steps.size(); ++i) {
    const StepReview& step = review.steps[i];
    json.begin_object();
    json.key("id").text(rubric.steps[i].id).key("facet").text(rubric.steps[i].facet);
    json.key("core").boolean(rubric.steps[i].core).key("status").text(status_word(step.status));
    json.key("evidence").begin_array();
    for (Span span : step.evidence) {
      json.begin_object().key("start").number(span.begin).key("end").number(span.end).key("text").text(span.of(answer.text)).end_object();
    }
    json.end_array();
    if (!step.note.empty()) json.key("note").text(step.note);
    json.end_object();
  }
  json.end_array();
}

void write_order(const Rubric& rubric, const Review& review, JsonWriter& json) {
  json.key("order").begin_array();
  for (std::size_t i = 0; i < review.order.size(); ++i) {
    const auto& [first, then] = rubric.order[i];
    json.begin_object().key("first").text(rubric.steps[first].id).key("then").text(rubric.steps[then].id);
    json.key("kept").boolean(review.order[i].kept).key("both").boolean(review.order[i].both).end_object();
  }
  json.end_array();
}

}  // namespace

void append_review_json(const Rubric& rubric, const Answer& answer, const Review& review, std::string& out) {
  JsonWriter json(out);
  json.begin_object().key("format").number(kReviewFormat).key("id").text(answer.id).key("rubric").text(rubric.id);
  if (!answer.group.empty()) json.key("group").text(answer.group);
  if (answer.mark >= 0) json.key("mark").number(answer.mark);
  if (answer.mark2 >= 0) json.key("mark2").number(answer.mark2);
  write_steps(rubric, answer, review, json);
  write_order(rubric, review, json);
  json.key("calculations");
  write_calculations(answer.text, review.calculations, json);
  json.key("next").begin_array();
  for (std::size_t i : review.next) json.text(rubric.steps[i].id);
  json.end_array();
  json.key("level").begin_object().key("low").number(review.level.low).key("high").number(review.level.high).key("of").number(review.level.of).end_object();
  if (!answer.extra.empty()) json.key("extra").raw(answer.extra);
  json.end_object();
}

}  // namespace retort
