// Answers in the rows of a CSV file, as an online form or a spreadsheet exports them.
#pragma once
#include <memory>

#include "intake/source.h"

namespace retort {

// Reads from `file`; findings call it `name`. A row without an answer is named and is no failure; without a label the
// answer is called by its row ("row 7"). Marks are whole numbers from 0 to 100, also written "4.0" or "4 / 6".
std::unique_ptr<AnswerSource> open_csv_answers(Descriptor file, std::string name, const IntakeOptions& options);

}  // namespace retort
