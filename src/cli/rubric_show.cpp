// retort rubric list and show.
#include <cstdio>

#include "base/messages.h"
#include "cli/support.h"
#include "report/page.h"
#include "report/rubric_text.h"

namespace retort::cli {

int run_rubric_list(const Options& options) {
  Result<RubricFolder> folder = open_rubrics();
  if (!folder) {
    print(folder.finding());
    return kWrong;
  }
  std::string out;
  int status = kDone;
  ParsedFiles parsed;
  for (const auto& [name, content] : folder->files) {
    if (name == kVocabularyFile || name.ends_with(".schema.json") || content.find("\"steps\"") == std::string::npos) continue;
    Loaded loaded = load_rubric(name, folder->files, parsed);
    if (!loaded.rubric || has_error(loaded.findings)) {
      print(loaded.findings, folder->files, folder->path);
      status = kSomeInputFailed;
      continue;
    }
    std::string first = "  " + loaded.rubric->id;
    first.resize(std::max<std::size_t>(first.size() + 2, 26), ' ');
    append_wrapped(loaded.rubric->title, 80, first, std::string(26, ' '), out);
  }
  int written = write_out(options, out);
  return written == kDone ? status : written;
}

int run_rubric_show(const Options& options) {
  std::unique_ptr<Ready> ready = make_ready(options.rubric);
  if (ready == nullptr) return kWrong;
  return write_out(options, rubric_text(ready->checker->rubric(), 80));
}

}  // namespace retort::cli
