// Typed reading of JSON objects, with a finding for every key that is unknown, missing or of a wrong type.
#pragma once
#include <functional>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "rubric/json.h"

namespace retort {

// " (did you mean 'x'?)" for the known word nearest to `word`, or nothing.
std::string did_you_mean(std::string_view word, const std::vector<std::string>& known);
// "a, b, c"
std::string joined(const std::vector<std::string>& words);

class Fields {
 public:
  // Reports the keys of `object` that are not in `known`.
  Fields(const json::Value& object, const std::string& file, Findings& findings, std::initializer_list<std::string_view> known);

  // A member of the given type; null (with a finding, if it is there but of another type).
  const json::Value* get(std::string_view key, json::Type type) const;
  // The same, and a finding if it is not there. `what` names the object, `sample` shows what to write.
  const json::Value* need(std::string_view key, json::Type type, std::string_view what, std::string_view sample) const;
  // A text; empty if it is not there.
  std::string text(std::string_view key) const;
  // A list of texts, each given to `each` with its span.
  void texts(std::string_view key, const std::function<void(const std::string&, Span)>& each) const;

  const json::Value& object() const { return object_; }
  void wrong_type(const json::Value& value, std::string_view name, std::string_view expected, std::string_view sample) const;

 private:
  const json::Value& object_;
  const std::string& file_;
  Findings& findings_;
};

}  // namespace retort
