// Ways to earn a status.
#include "rubric/loader.h"

namespace retort {

using json::Type;
using json::Value;

std::vector<Way> Loader::read_ways(const Value& list, const std::string& file) {
  std::vector<Way> ways;
  for (const Value& item : list.items) ways.push_back(read_way(item, file));
  return ways;
}

void Loader::read_patterns(const Fields& fields, std::string_view key, const std::string& file, std::vector<Pattern>& out) {
  fields.texts(key, [&](const std::string& text, Span span) { out.push_back(parse_pattern(text, span, file, findings)); });
}

void Loader::read_need(const Value& value, const std::string& file, Way& way) {
  Need need;
  if (value.is(Type::string)) {
    need.pattern = parse_pattern(value.text, value.span, file, findings);
    way.all.push_back(std::move(need));
    return;
  }
  if (!value.is(Type::object)) {
    findings.push_back(make_finding(Code::wrong_type, file, value.span, {"all", "a list of patterns", "[\"{measure} {length}\", ...]"}));
    return;
  }
  Fields fields(value, file, findings, {"step", "at-least", "say", "unless"});
  if (const Value* say = fields.get("say", Type::string)) {
    need.pattern = parse_pattern(say->text, say->span, file, findings);
    read_patterns(fields, "unless", file, need.unless);
    way.all.push_back(std::move(need));
    return;
  }
  if (const Value* step = fields.need("step", Type::string, "this", "\"loaded-reading\"")) {
    need.step = step->text;
    need.pattern.span = step->span;
  }
  if (const Value* status = fields.get("at-least", Type::string)) {
    if (!read_status(status->text, need.at_least) || need.at_least == StepStatus::missing) {
      findings.push_back(make_finding(Code::value_not_allowed, file, status->span, {status->text, "at-least", "vague, present"}));
    }
  }
  way.all.push_back(std::move(need));
}

Way Loader::read_way(const Value& value, const std::string& file) {
  Way way;
  way.file = keep(file);
  way.span = value.span;
  if (value.is(Type::string)) {
    read_need(value, file, way);
    return way;
  }
  if (!value.is(Type::object)) {
    findings.push_back(make_finding(Code::wrong_type, file, value.span, {"pattern", "text or an object", "\"{measure} {length}\""}));
    return way;
  }
  if (value.find("step") != nullptr) {
    read_need(value, file, way);
    return way;
  }
  Fields fields(value, file, findings, {"say", "all", "unless", "unless-anywhere"});
  if (const Value* say = fields.get("say", Type::string)) read_need(*say, file, way);
  if (const Value* all = fields.get("all", Type::array)) {
    for (const Value& item : all->items) read_need(item, file, way);
  }
  std::vector<Pattern> unless;
  read_patterns(fields, "unless", file, unless);
  for (Need& need : way.all) need.unless.insert(need.unless.end(), unless.begin(), unless.end());
  read_patterns(fields, "unless-anywhere", file, way.unless_anywhere);
  if (way.all.empty()) findings.push_back(make_finding(Code::pattern_empty, file, value.span));
  return way;
}

// An instrument tied to what it measures: named is present, what it measures without it is vague.
void Loader::read_instrument(const Value& object, const std::string& file, Step& step) {
  Fields fields(object, file, findings, {"names", "measures", "tied"});
  const Value* names = fields.need("names", Type::string, "the instrument", "\"{thermometer}\"");
  const Value* measures = fields.need("measures", Type::string, "the instrument", "\"{temperature}\"");
  const Value* tied = fields.get("tied", Type::boolean);
  if (names == nullptr || measures == nullptr) return;
  auto way = [&](const std::string& text, Span span) {
    Way out;
    out.file = keep(file);
    out.span = span;
    Need need;
    need.pattern = parse_pattern(text, span, file, findings);
    out.all.push_back(std::move(need));
    return out;
  };
  bool both = tied != nullptr && tied->boolean;
  if (both) {
    step.present.push_back(way(names->text + " & " + measures->text, names->span));
    step.vague.push_back(way(names->text, names->span));
  } else {
    step.present.push_back(way(names->text, names->span));
  }
  step.vague.push_back(way("{measure} & " + measures->text, measures->span));
}

}  // namespace retort
