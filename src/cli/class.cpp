// retort class: the drafts of a class at a glance, and what to do about them.
#include "cli/answers_run.h"
#include "cli/class_drafts.h"
#include "report/class_csv.h"
#include "report/class_html.h"
#include "report/class_json.h"
#include "report/class_text.h"
#include "report/slips_html.h"

namespace retort::cli {
namespace {

std::string written(const Options& options, const ClassReport& report) {
  if (options.format == "json") return class_json(report);
  if (options.format == "csv") return class_csv(report);
  if (options.format == "html") return class_html(report);
  return class_text(report, page_width(options));
}

// The slips in their own file, if they are wanted.
int write_slips(const Options& options, const ClassReport& report) {
  if (options.slips.empty()) return kDone;
  Options own = options;
  own.output = options.slips;
  return write_out(own, slips_html(report.rubric, report.drafts, {options.slips_per_sheet, options.with_range}, report.change));
}

}  // namespace

int run_class(const Options& options) {
  std::unique_ptr<Ready> ready = make_ready(options.rubric);
  if (ready == nullptr) return kWrong;
  const Rubric& rubric = ready->checker->rubric();
  Keyed keyed;
  if (!keyed.open(options.pseudonyms)) return kWrong;
  ClassDrafts now = read_drafts(options, options.inputs, *ready, keyed.get());
  if (!now.usable) return kSomeInputFailed;
  ClassDrafts before;
  if (!options.before.empty()) {
    before = read_drafts(options, options.before, *ready, keyed.get());
    if (!before.usable) return kSomeInputFailed;
  }
  classroom::Picture picture =
      classroom::make_picture(rubric, now.drafts, keyed.get() != nullptr ? keyed.get()->labels() : std::vector<std::string>());
  classroom::Change change;
  ClassReport report{rubric, now.drafts, picture, options.with_range};
  if (!options.before.empty()) {
    change = classroom::compare(rubric.steps.size(), before.drafts, now.drafts);
    report.before = &before.drafts;
    report.change = &change;
  }
  if (!keyed.save()) return kSomeInputFailed;
  int status = write_slips(options, report);
  if (status != kDone) return status;
  status = write_out(options, written(options, report));
  return status == kDone && (now.some_failed || before.some_failed) ? kSomeInputFailed : status;
}

}  // namespace retort::cli
