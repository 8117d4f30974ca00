// A class report as one HTML page, for a teacher: what the text says, with the table of pupils by steps.
#pragma once
#include <string>

#include "report/class_report.h"

namespace retort {

std::string class_html(const ClassReport& report);

}  // namespace retort
