#include "rubric/fields.h"

#include <algorithm>

#include "vocabulary/spelling.h"

namespace retort {

std::string did_you_mean(std::string_view word, const std::vector<std::string>& known) {
  const std::string* best = nullptr;
  int least = 3;
  for (const std::string& candidate : known) {
    int distance = edit_distance(word, candidate, least);
    if (distance < least) {
      least = distance;
      best = &candidate;
    }
  }
  return best == nullptr ? "" : " (did you mean '" + *best + "'?)";
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

namespace {

std::string_view sample_of(json::Type type) {
  switch (type) {
    case json::Type::string: return "\"...\"";
    case json::Type::array: return "[\"...\", \"...\"]";
    case json::Type::object: return "{\"...\": ...}";
    case json::Type::boolean: return "true or false";
    case json::Type::integer: return "a number such as 1";
    default: return "another value";
  }
}

}  // namespace

Fields::Fields(const json::Value& object, const std::string& file, Findings& findings, std::initializer_list<std::string_view> known)
    : object_(object), file_(file), findings_(findings) {
  for (const json::Member& member : object.members) {
    if (std::find(known.begin(), known.end(), member.key) != known.end()) continue;
    std::vector<std::string> keys(known.begin(), known.end());
    findings.push_back(make_finding(Code::key_unknown, file, member.key_span, {member.key, did_you_mean(member.key, keys), joined(keys)}));
  }
}

void Fields::wrong_type(const json::Value& value, std::string_view name, std::string_view expected, std::string_view sample) const {
  findings_.push_back(make_finding(Code::wrong_type, file_, value.span, {std::string(name), std::string(expected), std::string(sample)}));
}

const json::Value* Fields::get(std::string_view key, json::Type type) const {
  const json::Value* value = object_.find(key);
  if (value == nullptr || value->type == type) return value;
  wrong_type(*value, key, json::type_words(type), sample_of(type));
  return nullptr;
}

const json::Value* Fields::need(std::string_view key, json::Type type, std::string_view what, std::string_view sample) const {
  if (object_.find(key) == nullptr) {
    findings_.push_back(make_finding(Code::key_missing, file_, object_.span, {std::string(what), std::string(key), std::string(sample)}));
    return nullptr;
  }
  return get(key, type);
}

std::string Fields::text(std::string_view key) const {
  const json::Value* value = get(key, json::Type::string);
  return value == nullptr ? std::string() : value->text;
}

void Fields::texts(std::string_view key, const std::function<void(const std::string&, Span)>& each) const {
  const json::Value* list = get(key, json::Type::array);
  if (list == nullptr) return;
  for (const json::Value& item : list->items) {
    if (item.is(json::Type::string)) {
      each(item.text, item.span);
    } else {
      wrong_type(item, key, "a list of texts", "[\"...\", \"...\"]");
    }
  }
}

}  // namespace retort
