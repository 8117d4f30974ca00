// .jsonl files: one JSON object a line.
#pragma once
#include <memory>

#include "intake/line_reader.h"
#include "intake/source.h"

namespace retort {

// Reads the objects of `lines`, which reads from `file`; findings call the file `name`.
std::unique_ptr<AnswerSource> open_jsonl(Descriptor file, std::unique_ptr<LineReader> lines, std::string name, const IntakeOptions& options);

}  // namespace retort
