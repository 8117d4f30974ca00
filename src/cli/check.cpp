// retort check: each answer against a rubric.
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cstdio>
#include <cstring>

#include "base/messages.h"
#include "cli/ordered.h"
#include "cli/sink.h"
#include "cli/support.h"
#include "intake/answers.h"
#include "report/review_json.h"
#include "report/review_text.h"

namespace retort::cli {
namespace {

constexpr std::size_t kBatch = 64;  // answers handed to a thread at once

enum class Format { text, json, jsonl };

struct Batch {
  std::vector<Answer> answers;
  Findings findings;
  std::string out;
};

class Progress {
 public:
  explicit Progress(bool wanted) : wanted_(wanted && ::isatty(STDERR_FILENO) != 0) {}
  ~Progress() { clear(); }
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  void at(std::size_t count) {
    auto now = std::chrono::steady_clock::now();
    if (!wanted_ || now - last_ < std::chrono::milliseconds(500)) return;
    if (last_ != start_ || now - start_ > std::chrono::seconds(1)) {
      std::fprintf(stderr, "\r%zu answers checked", count);
      shown_ = true;
    }
    last_ = now;
  }
  void clear() {
    if (shown_) std::fprintf(stderr, "\r%*s\r", 40, "");
    shown_ = false;
  }

 private:
  bool wanted_;
  bool shown_ = false;
  std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
  std::chrono::steady_clock::time_point last_ = start_;
};

// What is odd about an answer's bytes, said beside its review.
void note_odd(const Answer& answer, const Review& review, Findings& findings) {
  std::string name = answer.origin == answer.id ? answer.id : answer.origin + ", " + answer.id;
  if (review.invalid_bytes > 0) findings.push_back(make_finding(Code::invalid_utf8, name, {std::to_string(review.invalid_bytes)}));
  if (review.nul_bytes > 0) findings.push_back(make_finding(Code::nul_bytes, name, {std::to_string(review.nul_bytes)}));
  if (review.words == 0) findings.push_back(make_finding(Code::answer_empty, name));
}

// What one thread does with a batch.
class Worker {
 public:
  Worker(const Checker& checker, Format format, std::size_t width)
      : checker_(checker), reviewer_(std::make_shared<Reviewer>(checker)), format_(format), width_(width) {}

  void operator()(Batch& batch) const {
    for (const Answer& answer : batch.answers) {
      Review review = reviewer_->review(answer.text);
      note_odd(answer, review, batch.findings);
      if (format_ == Format::text) {
        append_review_text(checker_.rubric(), answer, review, width_, batch.out);
        continue;
      }
      append_review_json(checker_.rubric(), answer, review, batch.out);
      batch.out += format_ == Format::jsonl ? "\n" : ",\n";
    }
  }

 private:
  const Checker& checker_;
  std::shared_ptr<Reviewer> reviewer_;
  Format format_;
  std::size_t width_;
};

void check_rubric_named(const Answer& answer, const Rubric& rubric, std::size_t number, Findings& findings) {
  if (answer.rubric.empty() || answer.rubric == rubric.id) return;
  findings.push_back(make_finding(Code::answer_other_rubric, answer.origin, {std::to_string(number), answer.rubric, rubric.id}));
}

int run(const Options& options, const Checker& checker, Format format) {
  std::size_t width = page_width(options);
  AnswerStream stream(options.inputs);
  Sink sink(options.output);
  if (!sink.good()) {
    print(sink.finding());
    return kWrong;
  }
  const Rubric& rubric = checker.rubric();
  Progress progress(!options.quiet);
  std::size_t count = 0;  // answers read; of the reading thread
  std::size_t done = 0;   // answers given out; of the writing thread
  bool first = true;
  if (format == Format::text) sink.write(review_text_heading(rubric, width));
  if (format == Format::json) sink.write("{\"format\":" + std::to_string(kReviewFormat) + ",\"rubric\":\"" + rubric.id + "\",\"answers\":[\n");

  auto fill = [&](Batch& batch) {
    do {
      Answer answer;
      if (!stream.next(answer, batch.findings)) return false;
      ++count;
      check_rubric_named(answer, rubric, count, batch.findings);
      batch.answers.push_back(std::move(answer));
    } while (batch.answers.size() < kBatch && stream.ready());
    return true;
  };
  auto drain = [&](Batch& batch) {
    if (!batch.findings.empty()) progress.clear();
    for (const Finding& finding : batch.findings) print(finding);
    std::string_view out = batch.out;
    if (format == Format::json && !out.empty()) {
      if (!first) sink.write(",\n");
      out.remove_suffix(2);
      first = false;
    }
    bool good = sink.write(out) && sink.flush();
    done += batch.answers.size();
    progress.at(done);
    return good;
  };
  unsigned threads = options.threads != 0 ? options.threads : std::max(1U, std::thread::hardware_concurrency());
  OrderedWork<Batch>().run(threads, fill, [&] { return Worker(checker, format, width); }, drain);
  progress.clear();

  if (format == Format::text) sink.write("\n" + review_text_closing(rubric, width));
  if (format == Format::json) sink.write("\n]}\n");
  if (!sink.close()) {
    print(sink.finding());
    return kSomeInputFailed;
  }
  return stream.failed() == 0 ? kDone : kSomeInputFailed;
}

}  // namespace

int run_check(const Options& options) {
  Format format = Format::text;
  if (options.format == "json") format = Format::json;
  if (options.format == "jsonl") format = Format::jsonl;
  std::unique_ptr<Ready> ready = make_ready(options.rubric);
  if (ready == nullptr) return kWrong;
  return run(options, *ready->checker, format);
}

}  // namespace retort::cli
