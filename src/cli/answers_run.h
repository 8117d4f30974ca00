// The way of answers through a command: read in batches, worked on by several threads, given out in order.
#pragma once
#include <functional>
#include <string>

#include "cli/command.h"
#include "intake/answers.h"

namespace retort::cli {

enum class Format { text, json, jsonl };

Format format_of(const Options& options);
// The columns of text output: as asked for, or the terminal's, or 80.
std::size_t page_width(const Options& options);

// How the inputs are read, as the options say. `codes` may be none, and must outlive the stream.
IntakeOptions intake_options(const Options& options, Pseudonyms* codes);

// Appends what there is to say about one answer to `out` (no line end for JSON), and findings on it.
using Writer = std::function<void(const Answer& answer, std::string& out, Findings& findings)>;

struct AnswersRun {
  std::string heading;  // of text
  std::string closing;
  std::string json_opening;             // of --format json, up to the array's bracket
  std::function<Writer()> make_writer;  // called once in each thread
  // Called for each answer in order while it is read; may add findings.
  std::function<void(const Answer& answer, std::size_t number, Findings& findings)> look;
};

// Runs all inputs of `options`; the exit status. The key file of --pseudonyms is written before the output takes its name.
int run_answers(const Options& options, const AnswersRun& run);

}  // namespace retort::cli
