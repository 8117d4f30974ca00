// retort moderate: tallies of checked answers, and what they mean.
#include <atomic>
#include <deque>

#include "cli/answers_run.h"
#include "cli/checkers.h"
#include "cli/ordered.h"
#include "cli/pile.h"
#include "cli/support.h"
#include "cohort/moderation.h"
#include "cohort/tally_read.h"
#include "report/moderation_csv.h"
#include "report/moderation_html.h"
#include "report/moderation_json.h"
#include "report/moderation_text.h"
#include "report/tally_json.h"

namespace retort::cli {
namespace {

constexpr std::size_t kBatchBytes = 1U << 18;
constexpr std::size_t kBatchPieces = 256;

struct Batch {
  std::vector<Piece> pieces;
  Findings findings;
};

// Adds pieces to a tally of its own; one for each thread.
class Counter {
 public:
  Counter(const Options& options, Checkers& checkers, cohort::Tally& tally, std::atomic<std::size_t>& failed)
      : in_order_(options.in_order), checkers_(checkers), tally_(tally), failed_(failed) {}

  void operator()(Batch& batch) {
    for (Piece& piece : batch.pieces) {
      bool good = piece.line.empty() ? answer(piece.answer, piece, batch.findings) : line(piece, batch.findings);
      if (!good) ++failed_;
    }
    batch.pieces.clear();
  }

 private:
  static std::string where(const Piece& piece) {
    return piece.line.empty() ? piece.answer.origin : piece.file + ", line " + std::to_string(piece.number);
  }

  bool line(const Piece& piece, Findings& findings) {
    Findings repeated;
    Result<json::Value> value = json::parse(piece.line, piece.file, repeated);
    if (!value || !value->is(json::Type::object)) {
      Finding fault = value ? make_finding(Code::json_not_object, "") : value.finding();
      findings.push_back(make_finding(fault.code, where(piece), fault.notes));
      return false;
    }
    for (Finding& finding : repeated) findings.push_back(make_finding(finding.code, where(piece), finding.notes));
    if (value->find("tally") != nullptr) return cohort::read_tally(*value, where(piece), tally_, findings);
    if (value->find("steps") != nullptr) {
      cohort::Entry entry;
      if (!cohort::read_checked(*value, where(piece), entry, findings)) return false;
      add(entry, piece);
      return true;
    }
    if (value->find("text") != nullptr) {
      Answer read;
      return read_answer_line(piece.line, piece.file, piece.number, read, findings) && answer(read, piece, findings, cohort::read_place(*value));
    }
    findings.push_back(make_finding(Code::moderate_line_unknown, where(piece)));
    return false;
  }

  bool answer(const Answer& answer, const Piece& piece, Findings& findings, std::int64_t place = -1) {
    const Checker* checker = checkers_.get(answer.rubric);
    if (checker == nullptr) {
      findings.push_back(answer.rubric.empty() ? make_finding(Code::moderate_no_rubric, where(piece))
                                               : make_finding(Code::rubric_not_found, where(piece), {cohort::short_name(answer.rubric), ""}));
      return false;
    }
    std::unique_ptr<Reviewer>& reviewer = reviewers_[checker];
    if (reviewer == nullptr) reviewer = std::make_unique<Reviewer>(*checker);
    cohort::Entry entry = cohort::entry_of(checker->rubric(), reviewer->review(answer.text));
    entry.id = cohort::short_name(answer.id);
    entry.group = cohort::short_name(answer.group);
    entry.mark = answer.mark;
    entry.mark2 = answer.mark2;
    entry.place = place;
    add(entry, piece);
    return true;
  }

  void add(cohort::Entry& entry, const Piece& piece) {
    if (entry.place < 0 && in_order_ && piece.place <= cohort::kMostPosition) entry.place = piece.place;
    tally_.add(entry);
  }

  bool in_order_;
  Checkers& checkers_;
  cohort::Tally& tally_;
  std::atomic<std::size_t>& failed_;
  std::map<const Checker*, std::unique_ptr<Reviewer>> reviewers_;
};

// All inputs as one tally. Prints what could not be used, and adds it to `failed`.
cohort::Tally tally_inputs(const Options& options, Checkers& checkers, std::size_t& failed) {
  Pile pile(options.inputs, intake_options(options, nullptr));
  std::deque<cohort::Tally> tallies;  // one for each thread; they stay put
  std::mutex mutex;
  std::atomic<std::size_t> unusable = 0;
  auto fill = [&](Batch& batch) {
    std::size_t bytes = 0;
    do {
      Piece piece;
      if (!pile.next(piece, batch.findings)) return false;
      bytes += piece.line.size() + piece.answer.text.size();
      batch.pieces.push_back(std::move(piece));
    } while (batch.pieces.size() < kBatchPieces && bytes < kBatchBytes && pile.ready());
    return true;
  };
  auto worker = [&]() -> OrderedWork<Batch>::Worker {
    std::lock_guard lock(mutex);
    auto counter = std::make_shared<Counter>(options, checkers, tallies.emplace_back(options.seed), unusable);
    return [counter](Batch& batch) { (*counter)(batch); };
  };
  auto drain = [](Batch& batch) {
    for (const Finding& finding : batch.findings) print(finding);
    return true;
  };
  unsigned threads = options.threads != 0 ? options.threads : std::max(1U, std::thread::hardware_concurrency());
  OrderedWork<Batch>().run(threads, fill, worker, drain);
  cohort::Tally out(options.seed);
  for (const cohort::Tally& tally : tallies) out.add(tally);
  failed = pile.failed() + unusable;
  return out;
}

std::string report(const Options& options, const cohort::Tally& tally, Checkers& checkers) {
  if (options.tally) return tally_json(tally);
  std::map<std::string, cohort::RubricNames> names;
  for (const auto& [id, part] : tally.rubrics()) names[id] = checkers.names(id);
  cohort::Moderation moderation = cohort::moderate(tally, names, options.sample);
  if (options.format == "json") return moderation_json(moderation);
  if (options.format == "csv") return moderation_csv(moderation);
  if (options.format == "html") return moderation_html(moderation);
  return moderation_text(moderation, page_width(options));
}

}  // namespace

int run_moderate(const Options& options) {
  Checkers checkers;
  if (!checkers.open(options.rubric)) return kWrong;
  std::size_t failed = 0;
  cohort::Tally tally = tally_inputs(options, checkers, failed);
  for (const Finding& finding : tally.limits_met()) print(finding);
  // An empty part of a pile has a tally like any other; a report on nothing is a mistake.
  if (tally.empty() && !options.tally) {
    print(make_finding(Code::moderate_nothing, ""));
    return kSomeInputFailed;
  }
  int status = write_out(options, report(options, tally, checkers));
  return status == kDone && failed > 0 ? kSomeInputFailed : status;
}

}  // namespace retort::cli
