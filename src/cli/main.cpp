// retort: the program. The only file that knows CLI11.
#include <CLI/CLI.hpp>
#include <csignal>

#include "cli/command.h"

namespace {

using retort::cli::Options;

struct Command {
  CLI::App* app;
  int (*run)(const Options&);
};

void add_rubric(CLI::App& app, Options& options) {
  app.add_option("RUBRIC", options.rubric, "a rubric file, or the id of one that came with the program")->required();
}

void add_output(CLI::App& app, Options& options) {
  app.add_option("-o,--output", options.output, "write to this file, whole or not at all");
}

// Which columns of CSV files hold what: every command that takes pupils' answers has these.
void add_columns(CLI::App& app, Options& options) {
  app.add_option("--answer-column", options.answer_column, "the column of a .csv file that holds the answers, by heading or number");
  app.add_option("--label-column", options.label_column, "the column that says whose answer it is");
  app.add_option("--mark-column", options.mark_column, "the column with a mark");
  app.add_option("--mark2-column", options.mark2_column, "the column with a second person's mark");
  app.add_option("--group-column", options.group_column, "the column with the class or group");
}

void add_intake(CLI::App& app, Options& options) {
  app.add_option("INPUT", options.inputs, ".docx, .odt, .pdf, .txt, .md, .csv, .jsonl or .zip files, folders, or - for standard input (also when there is none)");
  add_columns(app, options);
  app.add_option("--pseudonyms", options.pseudonyms, "call pupils by codes, kept in this key file (label,code)");
}

void add_page(CLI::App& app, Options& options) {
  app.add_option("--threads", options.threads, "how many answers at once (0: as many as the machine has)")->check(CLI::Range(0U, 256U));
  app.add_option("--width", options.width, "columns of the text")->check(CLI::Range(40, 400));
  app.add_flag("-q,--quiet", options.quiet, "no progress on standard error");
  add_output(app, options);
}

void add_answers(CLI::App& app, Options& options) {
  add_intake(app, options);
  add_page(app, options);
}

void add_moderation(CLI::App& app, Options& options) {
  app.add_option("INPUT", options.inputs, "lines of 'check --format jsonl' or of 'moderate --tally', answers, or - for standard input (also when there is none)");
  app.add_option("--rubric", options.rubric, "the rubric of answers that were not checked yet and name none");
  app.add_option("--format", options.format, "text, json, csv or html")->check(CLI::IsMember({"text", "json", "csv", "html"}));
  app.add_flag("--tally", options.tally, "write the tally, which can be given to moderate again with others");
  app.add_option("--seed", options.seed, "a whole number that decides which answers are drawn (1)");
  app.add_option("--sample", options.sample, "how many answers to draw for marking again (20)")->check(CLI::Range(0U, 50U));
  app.add_flag("--in-order", options.in_order, "the answers stand in the order in which they were marked, so that drift can be seen");
  add_columns(app, options);
  app.add_option("--threads", options.threads, "how many lines at once (0: as many as the machine has)")->check(CLI::Range(0U, 256U));
  app.add_option("--width", options.width, "columns of the text")->check(CLI::Range(40, 400));
  add_output(app, options);
}

void add_class(CLI::App& app, Options& options) {
  add_rubric(app, options);
  add_intake(app, options);
  app.add_option("--format", options.format, "text, json, csv or html")->check(CLI::IsMember({"text", "json", "csv", "html"}));
  app.add_option("--slips", options.slips, "also write a slip for each pupil to this file, as HTML to print");
  app.add_option("--slips-per-sheet", options.slips_per_sheet, "how many slips on a sheet of A4: 1 or 2 (1)")->check(CLI::IsMember({1, 2}));
  app.add_option("--before", options.before, "a file or folder of first drafts, to show what has changed (may be given again)")->allow_extra_args(false);
  app.add_flag("--with-range", options.with_range, "also the indicative range of marks");
  add_page(app, options);
}

}  // namespace

int main(int argc, char** argv) {
  std::signal(SIGPIPE, SIG_IGN);  // a closed pipe is answered with a message
  CLI::App app{"Retort reads pupils' written answers on science practicals and shows, in their own words,\n"
               "which expected steps are there, vague or missing. It never decides a mark: a person does."};
  app.name("retort");
  app.require_subcommand(1);
  Options options;
  std::vector<Command> commands;
  auto add = [&](CLI::App& parent, const char* name, const char* about, int (*run)(const Options&)) -> CLI::App& {
    CLI::App* sub = parent.add_subcommand(name, about);
    commands.push_back({sub, run});
    return *sub;
  };

  CLI::App& check = add(app, "check", "check answers against a rubric, step by step", retort::cli::run_check);
  add_rubric(check, options);
  add_answers(check, options);
  check.add_option("--format", options.format, "text, json, jsonl or html")->check(CLI::IsMember({"text", "json", "jsonl", "html"}));
  check.add_flag("--with-range", options.with_range, "in HTML also the indicative range of marks");

  add_class(add(app, "class", "a class at a glance: what is missing, what to teach again, who could work together", retort::cli::run_class), options);

  CLI::App& calc = add(app, "calc", "find and check the calculations alone", retort::cli::run_calc);
  add_answers(calc, options);
  calc.add_option("--format", options.format, "text, json or jsonl")->check(CLI::IsMember({"text", "json", "jsonl"}));

  CLI::App& results = add(app, "results", "work through a results table: means, anomalies, uncertainty, line of best fit", retort::cli::run_results);
  results.add_option("FILE", options.inputs, "a .csv file, or - for standard input (also when there is none)")->expected(0, 1);
  results.add_option("--format", options.format, "text, json or svg (the graph)")->check(CLI::IsMember({"text", "json", "svg"}));
  results.add_option("--x", options.x_column, "the column of the independent variable, by heading or number (the first)");
  results.add_option("--y", options.y_column, "the column of the dependent variable (the repeats, or the last)");
  results.add_option("--rubric", options.rubric, "the investigation, which says what the gradient stands for");
  results.add_option("--width", options.width, "columns of the text")->check(CLI::Range(40, 400));
  add_output(results, options);

  CLI::App& moderate = add(app, "moderate", "many checked answers together: what is missing, groups that differ, markers, what to look at again", retort::cli::run_moderate);
  add_moderation(moderate, options);

  CLI::App& serve = add(app, "serve", "a page in the browser, on this machine alone", retort::cli::run_serve);
  serve.add_option("--port", options.port, "the port (a free one)");
  serve.add_option("--address", options.address, "an address of this machine other than 127.0.0.1; needs the token that is then printed");
  serve.add_option("--threads", options.threads, "how many requests at once (0: as many as the machine has)")->check(CLI::Range(0U, 64U));

  CLI::App* rubric = app.add_subcommand("rubric", "the rubrics: list, show, lint, test, hear, new, suggest, overlay");
  rubric->require_subcommand(1);
  CLI::App& list = add(*rubric, "list", "the rubrics that came with the program", retort::cli::run_rubric_list);
  add_output(list, options);
  CLI::App& show = add(*rubric, "show", "a rubric in plain words", retort::cli::run_rubric_show);
  add_rubric(show, options);
  add_output(show, options);
  CLI::App& lint = add(*rubric, "lint", "report every fault of rubrics, with line and column", retort::cli::run_rubric_lint);
  lint.add_option("RUBRIC", options.inputs, "rubric files or ids")->required();
  CLI::App& test = add(*rubric, "test", "run a rubric's own examples, or compare it with labelled answers", retort::cli::run_rubric_test);
  add_rubric(test, options);
  test.add_option("--labelled", options.labelled, "answers with labels, one JSON object a line");
  add_output(test, options);
  CLI::App& hear = add(*rubric, "hear", "show which word lists a text touches", retort::cli::run_rubric_hear);
  add_rubric(hear, options);
  hear.add_option("TEXT", options.inputs, "the text in quotes; or - for standard input");

  CLI::App& fresh = add(*rubric, "new", "a working rubric from plain marking points, one a line", retort::cli::run_rubric_new);
  fresh.add_option("POINTS", options.inputs, "a text file: a marking point a line; also lines that begin Title:, Question: and Table:")->required()->expected(1);
  fresh.add_option("--id", options.rubric, "the new rubric's id (the file's name)");
  add_output(fresh, options);

  CLI::App& suggest = add(*rubric, "suggest", "words to add to a rubric, from drafts that nearly match", retort::cli::run_rubric_suggest);
  add_rubric(suggest, options);
  add_intake(suggest, options);
  suggest.add_option("--width", options.width, "columns of the text")->check(CLI::Range(40, 400));
  add_output(suggest, options);

  CLI::App& overlay = add(*rubric, "overlay", "the same investigation with another question's table, apparatus and hypothesis", retort::cli::run_rubric_overlay);
  add_rubric(overlay, options);
  overlay.add_option("CHANGES", options.inputs, "a .json file with what is other: question, values, apparatus, hypothesis, steps")->required()->expected(1);
  add_output(overlay, options);

  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    int status = app.exit(error);
    return status == 0 ? retort::cli::kDone : retort::cli::kWrong;
  }
  for (const Command& command : commands) {
    if (command.app->parsed()) return command.run(options);
  }
  return retort::cli::kWrong;
}
