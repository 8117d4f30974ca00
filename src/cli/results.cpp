// retort results: a results table worked through.
#include <cstdio>

#include "base/messages.h"
#include "cli/answers_run.h"
#include "cli/support.h"
#include "intake/csv.h"
#include "intake/files.h"
#include "report/results_json.h"
#include "report/results_svg.h"
#include "report/results_text.h"

namespace retort::cli {
namespace {

// A table of a practical has a few dozen cells.
constexpr CsvLimits kLimits{1U << 20, 20'000};

struct Source {
  std::string name;  // as findings name it
  std::string content;
};

Result<Source> read_source(const std::vector<std::string>& inputs) {
  bool standard = inputs.empty() || inputs[0] == "-";
  Result<std::string> content = read_file(standard ? "/dev/stdin" : inputs[0], kLimits.bytes);
  std::string name = standard ? "standard input" : inputs[0];
  if (content) return Source{name, std::move(*content)};
  Finding finding = content.finding();
  finding.file = name;
  return finding;
}

// What the rubric says about the results; `good` is false if the rubric cannot be used.
std::optional<results::Guide> read_guide(const Options& options, bool& good) {
  if (options.rubric.empty()) return std::nullopt;
  std::unique_ptr<Ready> ready = make_ready(options.rubric);
  good = ready != nullptr;
  return good ? ready->checker->rubric().results : std::nullopt;
}

void print_all(const Findings& findings, const Source& source) {
  for (const Finding& finding : findings) std::fprintf(stderr, "retort: %s\n", describe(finding, source.content).c_str());
}

std::string write(const Options& options, const results::Analysis& analysis, const Source& source) {
  if (options.format == "json") return results_json(analysis, source.content);
  if (options.format == "svg") return results_svg(analysis);
  return results_text(analysis, page_width(options));
}

}  // namespace

int run_results(const Options& options) {
  bool good = true;
  std::optional<results::Guide> guide = read_guide(options, good);
  if (!good) return kWrong;
  Result<Source> source = read_source(options.inputs);
  if (!source) {
    print(source.finding());
    return kSomeInputFailed;
  }
  Findings findings;
  Result<Table> table = read_csv(source->content, source->name, findings, kLimits);
  print_all(findings, *source);
  if (!table) {
    print_all({table.finding()}, *source);
    return kSomeInputFailed;
  }
  results::Wanted wanted{options.x_column, options.y_column, guide ? &*guide : nullptr};
  Result<results::Analysis> analysis = results::analyse(*table, source->name, wanted);
  if (!analysis) {
    print_all({analysis.finding()}, *source);
    return analysis.finding().code == Code::results_no_column || analysis.finding().code == Code::results_same_column ? kWrong : kSomeInputFailed;
  }
  print_all(analysis->findings, *source);
  return write_out(options, write(options, *analysis, *source));
}

}  // namespace retort::cli
