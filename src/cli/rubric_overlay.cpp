// retort rubric overlay: a rubric with another question's table, apparatus and hypothesis.
#include "base/messages.h"
#include "cli/support.h"
#include "intake/files.h"
#include "rubric/load.h"
#include "rubric/rubric_edits.h"

namespace retort::cli {
namespace {

constexpr std::size_t kLargestChanges = 1U << 20;

bool read_changes(const std::string& path, RubricEdits& out) {
  Result<std::string> content = read_file(path, kLargestChanges);
  if (!content) {
    print(content.finding());
    return false;
  }
  Findings findings;
  Result<json::Value> value = json::parse(*content, path, findings);
  if (value) out = read_edits(*value, findings, path);
  else findings.push_back(value.finding());
  print(findings, {{path, *content}}, "");
  return !has_error(findings);
}

}  // namespace

int run_rubric_overlay(const Options& options) {
  Result<RubricChoice> choice = choose_rubric(options.rubric);
  if (!choice) {
    print(choice.finding());
    return kWrong;
  }
  RubricEdits edits;
  if (!read_changes(options.inputs.at(0), edits)) return kWrong;
  SourceFiles files = choice->folder.files;
  Result<std::string> edited = edited_rubric(files[choice->name], choice->name, edits);
  if (!edited) {
    print({edited.finding()}, files, choice->folder.path);
    return kWrong;
  }
  files[choice->name] = *edited;
  Checker::Made made = Checker::make(choice->name, files, choice->folder.real_words);
  print(made.findings, files, choice->folder.path);
  if (made.checker == nullptr) return kWrong;
  return write_out(options, *edited);
}

}  // namespace retort::cli
