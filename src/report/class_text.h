// A class report for a terminal, at any width from 40 columns; no colour is needed to read it.
#pragma once
#include <string>

#include "report/class_report.h"

namespace retort {

std::string class_text(const ClassReport& report, std::size_t width);

}  // namespace retort
