#include "cli/answers_run.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>

#include "base/messages.h"
#include "cli/ordered.h"
#include "cli/sink.h"
#include "cli/support.h"

namespace retort::cli {
namespace {

constexpr std::size_t kBatch = 64;  // answers handed to a thread at once

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

// Gives finished batches out, in order.
class Drain {
 public:
  Drain(Sink& sink, Format format, Progress& progress) : sink_(sink), format_(format), progress_(progress) {}

  bool operator()(Batch& batch) {
    if (!batch.findings.empty()) progress_.clear();
    for (const Finding& finding : batch.findings) print(finding);
    std::string_view out = batch.out;
    if (format_ == Format::json && !out.empty()) {
      if (!first_) sink_.write(",\n");
      out.remove_suffix(2);
      first_ = false;
    }
    bool good = sink_.write(out) && sink_.flush();
    done_ += batch.answers.size();
    progress_.at(done_);
    return good;
  }

 private:
  Sink& sink_;
  Format format_;
  Progress& progress_;
  std::size_t done_ = 0;
  bool first_ = true;
};

}  // namespace

Format format_of(const Options& options) {
  if (options.format == "json") return Format::json;
  return options.format == "jsonl" ? Format::jsonl : Format::text;
}

std::size_t page_width(const Options& options) {
  if (options.width > 0) return static_cast<std::size_t>(std::clamp(options.width, 40, 400));
  winsize size{};
  bool terminal = options.output.empty() && ::isatty(STDOUT_FILENO) != 0 && ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0;
  return terminal ? std::clamp<std::size_t>(size.ws_col, 40, 100) : 80;
}

IntakeOptions intake_options(const Options& options, Pseudonyms* codes) {
  IntakeOptions out;
  out.answer_column = options.answer_column;
  out.label_column = options.label_column;
  out.mark_column = options.mark_column;
  out.mark2_column = options.mark2_column;
  out.group_column = options.group_column;
  out.pseudonyms = codes;
  return out;
}

int run_answers(const Options& options, const AnswersRun& run) {
  Format format = format_of(options);
  Keyed keyed;
  if (!keyed.open(options.pseudonyms)) return kWrong;
  AnswerStream stream(options.inputs, intake_options(options, keyed.get()));
  Sink sink(options.output);
  if (!sink.good()) {
    print(sink.finding());
    return kWrong;
  }
  Progress progress(!options.quiet);
  if (format == Format::text) sink.write(run.heading);
  if (format == Format::json) sink.write(run.json_opening + "[\n");

  std::size_t count = 0;
  auto fill = [&](Batch& batch) {
    do {
      Answer answer;
      if (!stream.next(answer, batch.findings)) return false;
      ++count;
      if (run.look) run.look(answer, count, batch.findings);
      batch.answers.push_back(std::move(answer));
    } while (batch.answers.size() < kBatch && stream.ready());
    return true;
  };
  auto worker = [&]() -> OrderedWork<Batch>::Worker {
    return [write = run.make_writer(), format](Batch& batch) {
      for (const Answer& answer : batch.answers) {
        write(answer, batch.out, batch.findings);
        if (format != Format::text) batch.out += format == Format::jsonl ? "\n" : ",\n";
      }
    };
  };
  Drain drain(sink, format, progress);
  unsigned threads = options.threads != 0 ? options.threads : std::max(1U, std::thread::hardware_concurrency());
  OrderedWork<Batch>().run(threads, fill, worker, [&](Batch& batch) { return drain(batch); });
  progress.clear();

  if (!keyed.save()) return kSomeInputFailed;
  if (format == Format::text) sink.write(run.closing);
  if (format == Format::json) sink.write("\n]}\n");
  if (!sink.close()) {
    print(sink.finding());
    return kSomeInputFailed;
  }
  return stream.failed() == 0 ? kDone : kSomeInputFailed;
}

}  // namespace retort::cli
