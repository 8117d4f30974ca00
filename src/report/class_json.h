// A class report as JSON, as DEVELOPERS.md describes it (format 1).
#pragma once
#include <string>

#include "report/class_report.h"

namespace retort {

// One object and a line end.
std::string class_json(const ClassReport& report);

}  // namespace retort
