// Calculations as JSON: the format that other programs rely on.
#pragma once
#include <string>
#include <vector>

#include "calc/calculation.h"
#include "intake/answer.h"
#include "report/json_writer.h"

namespace retort {

constexpr int kCalcFormat = 1;

// Writes the array of calculations; `text` is the answer they were found in.
void write_calculations(std::string_view text, const std::vector<calc::Calculation>& calculations, JsonWriter& json);

// Appends {"format": 1, "id": ..., "calculations": [...]} for one answer, without a line end.
void append_calculations_json(const Answer& answer, const std::vector<calc::Calculation>& calculations, std::string& out);

}  // namespace retort
