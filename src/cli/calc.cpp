// retort calc: the calculations of each answer, found and checked.
#include "calc/calculations.h"
#include "cli/answers_run.h"
#include "cli/support.h"
#include "report/calc_json.h"
#include "report/calc_text.h"
#include "rubric/formulas.h"

namespace retort::cli {
namespace {

Writer make_writer(const calc::FormulaBook& book, Format format, std::size_t width) {
  auto calculator = std::make_shared<calc::Calculator>(book);
  return [calculator, format, width](const Answer& answer, std::string& out, Findings&) {
    std::vector<calc::Calculation> found = calculator->check(answer.text);
    if (format == Format::text)
      append_calculations_text(answer, found, width, out);
    else
      append_calculations_json(answer, found, out);
  };
}

}  // namespace

int run_calc(const Options& options) {
  Result<RubricFolder> folder = open_rubrics();
  if (!folder) {
    print(folder.finding());
    return kWrong;
  }
  Findings findings;
  if (!folder->files.contains(std::string(kFormulasFile))) findings.push_back(make_finding(Code::formulas_missing, "", {std::string(kFormulasFile)}));
  std::shared_ptr<const calc::FormulaBook> book = open_formulas(folder->files, findings);
  if (!findings.empty()) {
    print(findings, folder->files, folder->path);
    return kWrong;
  }
  std::size_t width = page_width(options);
  Format format = format_of(options);
  AnswersRun run;
  run.json_opening = "{\"format\":" + std::to_string(kCalcFormat) + ",\"answers\":";
  run.make_writer = [&] { return make_writer(*book, format, width); };
  return run_answers(options, run);
}

}  // namespace retort::cli
