// Findings for the page: what is wrong, where, what to do.
#pragma once
#include <string_view>

#include "base/finding.h"
#include "report/json_writer.h"

namespace retort::serve {

// Writes "findings": [{"code", "severity", "text", "todo", "line"?, "column"?}]; `source` is what their places are in.
void write_findings(const Findings& findings, std::string_view source, JsonWriter& json);

}  // namespace retort::serve
