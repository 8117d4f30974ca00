#include "author/kinds.h"

#include "rubric/fields.h"

namespace retort::author {

Result<PointKinds> read_kinds(std::string_view content) {
  const std::string file(kKindsFile);
  Findings findings;
  Result<json::Value> root = json::parse(content, file, findings);
  if (!root) return root.finding();
  if (!root->is(json::Type::object)) return make_finding(Code::json_not_object, file);
  PointKinds out;
  Fields fields(*root, file, findings, {"about", "nothing", "actions", "qualifiers", "ignored-lists", "kinds"});
  fields.texts("nothing", [&](const std::string& word, Span) { out.nothing.insert(word); });
  fields.texts("actions", [&](const std::string& word, Span) { out.actions.insert(word); });
  fields.texts("qualifiers", [&](const std::string& word, Span) { out.qualifiers.insert(word); });
  fields.texts("ignored-lists", [&](const std::string& word, Span) { out.ignored_lists.insert(word); });
  if (const json::Value* list = fields.need("kinds", json::Type::array, "the file", "[{\"facet\": ...}]")) {
    for (const json::Value& item : list->items) {
      Fields kind(item, file, findings, {"facet", "words", "instrument", "hint"});
      PointKind one;
      one.facet = kind.text("facet");
      one.hint = kind.text("hint");
      const json::Value* instrument = kind.get("instrument", json::Type::boolean);
      one.instrument = instrument != nullptr && instrument->boolean;
      kind.texts("words", [&](const std::string& word, Span) { one.words.insert(word); });
      out.kinds.push_back(std::move(one));
    }
  }
  if (out.kinds.empty() && findings.empty()) findings.push_back(make_finding(Code::key_missing, file, {"the file", "kinds", "[{\"facet\": ...}]"}));
  if (!findings.empty()) return findings.front();
  return out;
}

}  // namespace retort::author
