// retort rubric list and show.
#include <thread>

#include "base/messages.h"
#include "cli/support.h"
#include "report/page.h"
#include "report/rubric_text.h"
#include "review/shelf.h"

namespace retort::cli {

int run_rubric_list(const Options& options) {
  Result<RubricFolder> folder = open_rubrics();
  if (!folder) {
    print(folder.finding());
    return kWrong;
  }
  std::string out;
  std::string short_questions;
  int status = kDone;
  for (const Shelved& shelved : shelve(folder->files, folder->real_words, std::thread::hardware_concurrency())) {
    if (shelved.made.checker == nullptr) {
      print(shelved.made.findings, folder->files, folder->path);
      status = kSomeInputFailed;
      continue;
    }
    const Rubric& rubric = shelved.made.checker->rubric();
    std::string first = "  " + rubric.id;
    first.resize(std::max<std::size_t>(first.size() + 2, 26), ' ');
    append_wrapped(rubric.title, 80, first, std::string(26, ' '), rubric.kind == RubricKind::points ? short_questions : out);
  }
  if (!short_questions.empty()) out += "\nShort questions that follow a practical\n" + short_questions;
  int written = write_out(options, out);
  return written == kDone ? status : written;
}

int run_rubric_show(const Options& options) {
  std::unique_ptr<Ready> ready = make_ready(options.rubric);
  if (ready == nullptr) return kWrong;
  return write_out(options, rubric_text(ready->checker->rubric(), 80));
}

}  // namespace retort::cli
