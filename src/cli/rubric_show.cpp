// retort rubric list and show.
#include <thread>

#include "base/messages.h"
#include "cli/support.h"
#include "report/page.h"
#include "report/rubric_text.h"
#include "review/shelf.h"

namespace retort::cli {
namespace {

struct Row {
  std::string id;
  std::string title;
};

// Ids under each other, and the titles beside them.
std::string rows_text(const std::vector<Row>& rows) {
  std::size_t widest = 0;
  for (const Row& row : rows) widest = std::max(widest, row.id.size());
  std::string out;
  for (const Row& row : rows)
    append_wrapped(row.title, 100, "  " + row.id + std::string(widest + 2 - row.id.size(), ' '), std::string(widest + 4, ' '), out);
  return out;
}

}  // namespace

int run_rubric_list(const Options& options) {
  Result<RubricFolder> folder = open_rubrics();
  if (!folder) {
    print(folder.finding());
    return kWrong;
  }
  std::vector<Row> investigations;
  std::vector<Row> short_questions;
  int status = kDone;
  for (const Shelved& shelved : shelve(folder->files, folder->real_words, std::thread::hardware_concurrency())) {
    if (shelved.made.checker == nullptr) {
      print(shelved.made.findings, folder->files, folder->path);
      status = kSomeInputFailed;
      continue;
    }
    const Rubric& rubric = shelved.made.checker->rubric();
    (rubric.kind == RubricKind::points ? short_questions : investigations).push_back({rubric.id, rubric.title});
  }
  std::string out = rows_text(investigations);
  if (!short_questions.empty()) out += "\nShort questions that follow a practical\n" + rows_text(short_questions);
  int written = write_out(options, out);
  return written == kDone ? status : written;
}

int run_rubric_show(const Options& options) {
  std::unique_ptr<Ready> ready = make_ready(options.rubric);
  if (ready == nullptr) return kWrong;
  return write_out(options, rubric_text(ready->checker->rubric(), 80));
}

}  // namespace retort::cli
