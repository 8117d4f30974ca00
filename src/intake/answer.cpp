#include "intake/answer.h"

#include "intake/pseudonyms.h"
#include "rubric/json.h"

namespace retort {

using json::Type;

namespace {

bool read_text(const json::Value& object, std::string_view key, const std::string& file, std::size_t number, std::string& out, Findings& findings) {
  const json::Value* value = object.find(key);
  if (value == nullptr) return true;
  if (value->is(Type::string)) {
    out = value->text;
    return true;
  }
  findings.push_back(make_finding(Code::answer_text_not_string, file, {std::to_string(number), std::string(key), "text in quotes"}));
  return false;
}

void read_mark(const json::Value& object, std::string_view key, const std::string& file, std::size_t number, int& out, Findings& findings) {
  const json::Value* value = object.find(key);
  if (value == nullptr || value->is(Type::null)) return;
  bool good = value->is(Type::integer) && value->integer >= 0 && value->integer <= 100;
  if (good) {
    out = static_cast<int>(value->integer);
  } else {
    findings.push_back(make_finding(Code::answer_mark_bad, file, {std::to_string(number), std::string(key)}));
  }
}

bool is_known(std::string_view key) {
  return key == "id" || key == "text" || key == "rubric" || key == "group" || key == "mark" || key == "mark2";
}

}  // namespace

void disguise(Answer& answer, Pseudonyms* codes) {
  if (codes == nullptr) return;
  if (answer.labelled) answer.id = codes->code(answer.id);
  answer.extra.clear();
}

bool read_answer_line(std::string_view line, const std::string& file, std::size_t number, Answer& out, Findings& findings) {
  out = Answer{};
  out.origin = file;
  auto where = [&] { return file + ", line " + std::to_string(number); };
  Findings repeated;
  Result<json::Value> value = json::parse(line, file, repeated);
  for (Finding& finding : repeated) findings.push_back(make_finding(finding.code, where(), finding.notes));
  if (!value) {
    findings.push_back(make_finding(value.finding().code, where(), value.finding().notes));
    return false;
  }
  if (!value->is(Type::object)) {
    findings.push_back(make_finding(Code::json_not_object, where()));
    return false;
  }
  if (value->find("text") == nullptr) {
    findings.push_back(make_finding(Code::answer_no_text, file, {std::to_string(number)}));
    return false;
  }
  bool good = read_text(*value, "text", file, number, out.text, findings);
  const json::Value* id = value->find("id");
  if (id != nullptr && id->is(Type::integer)) {
    out.id = std::to_string(id->integer);
  } else {
    good = read_text(*value, "id", file, number, out.id, findings) && good;
  }
  out.labelled = !out.id.empty();
  if (!out.labelled) out.id = "line " + std::to_string(number);
  read_text(*value, "rubric", file, number, out.rubric, findings);
  read_text(*value, "group", file, number, out.group, findings);
  read_mark(*value, "mark", file, number, out.mark, findings);
  read_mark(*value, "mark2", file, number, out.mark2, findings);
  for (const json::Member& member : value->members) {
    if (is_known(member.key)) continue;
    out.extra += out.extra.empty() ? "{" : ",";
    out.extra += std::string(member.key_span.of(line)) + ":" + std::string(member.value.span.of(line));
  }
  if (!out.extra.empty()) out.extra += "}";
  if (good && out.text.size() > kLongestAnswer) {
    findings.push_back(make_finding(Code::answer_too_long, where(), {std::to_string(out.text.size()), std::to_string(kLongestAnswer)}));
    return false;
  }
  return good;
}

}  // namespace retort
