#include "serve/findings_json.h"

#include <array>

#include "base/messages.h"

namespace retort::serve {

void write_findings(const Findings& findings, std::string_view source, JsonWriter& json) {
  constexpr std::array<std::string_view, 3> kSeverity = {"note", "warning", "error"};
  json.key("findings").begin_array();
  for (const Finding& finding : findings) {
    const Message& entry = message(finding.code);
    json.begin_object().key("code").text(entry.name).key("severity").text(kSeverity.at(static_cast<std::size_t>(entry.severity)));
    if (!finding.file.empty()) json.key("file").text(finding.file);
    json.key("text").text(fill(entry.what, finding.notes)).key("todo").text(fill(entry.todo, finding.notes));
    if (finding.located && finding.span.begin <= source.size() && !source.empty()) {
      LineColumn at = locate(source, finding.span.begin);
      json.key("line").number(static_cast<std::int64_t>(at.line)).key("column").number(static_cast<std::int64_t>(at.column));
    }
    json.end_object();
  }
  json.end_array();
}

}  // namespace retort::serve
