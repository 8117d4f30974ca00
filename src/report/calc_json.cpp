#include "report/calc_json.h"

#include "report/advice.h"

namespace retort {

void write_calculations(std::string_view text, const std::vector<calc::Calculation>& calculations, JsonWriter& json) {
  json.begin_array();
  for (const calc::Calculation& c : calculations) {
    json.begin_object();
    json.key("start").number(c.span.begin).key("end").number(c.span.end).key("text").text(c.span.of(text));
    json.key("result").text(c.result.of(text)).key("verdict").text(name(c.verdict));
    json.key("slips").begin_array();
    for (calc::Slip slip : c.slips) json.text(name(slip));
    json.end_array().key("remarks").begin_array();
    for (calc::Remark remark : c.remarks) json.text(name(remark));
    json.end_array();
    if (!c.correct.empty()) json.key("correct").text(c.correct);
    if (!c.formula.empty()) json.key("formula").text(c.formula);
    if (std::string words = advice(c); !words.empty()) json.key("advice").text(words);
    json.end_object();
  }
  json.end_array();
}

void append_calculations_json(const Answer& answer, const std::vector<calc::Calculation>& calculations, std::string& out) {
  JsonWriter json(out);
  json.begin_object().key("format").number(kCalcFormat).key("id").text(answer.id).key("calculations");
  write_calculations(answer.text, calculations, json);
  if (!answer.extra.empty()) json.key("extra").raw(answer.extra);
  json.end_object();
}

}  // namespace retort
