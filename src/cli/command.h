// The commands of the program: a table of names and functions, one file for each.
#pragma once
#include <cstdint>
#include <string>
#include <vector>

namespace retort::cli {

// The exit statuses that scripts rely on.
enum Exit : int { kDone = 0, kSomeInputFailed = 1, kWrong = 2 };

struct Options {
  std::string rubric;
  std::vector<std::string> inputs;
  std::string format;      // empty: text on a terminal and in files
  std::string output;      // empty: standard output
  std::string labelled;
  std::string x_column;    // of a results table; empty: the first
  std::string y_column;    // empty: the repeats, or the last
  std::string answer_column;  // of CSV files: a heading or a number; empty: found by its heading
  std::string label_column;
  std::string mark_column;
  std::string mark2_column;
  std::string group_column;
  std::vector<std::string> before;  // first drafts, to compare with
  std::string slips;       // a file for a slip for each pupil; empty: none
  int slips_per_sheet = 1;
  bool with_range = false;          // the indicative range of marks is wanted
  std::string pseudonyms;  // the key file; empty: labels stay
  std::string address;     // of the local page; empty: loopback
  std::uint16_t port = 0;  // 0: a free one
  unsigned threads = 0;    // 0: as many as the machine has
  bool quiet = false;
  bool tally = false;      // of moderate: write the tally itself
  bool in_order = false;   // of moderate: the inputs stand in the order they were marked
  std::uint64_t seed = 1;  // of the sample and of the bootstrap
  unsigned sample = 20;    // answers to mark again
  int width = 0;           // 0: the terminal's, or 80
};

int run_calc(const Options& options);
int run_class(const Options& options);
int run_check(const Options& options);
int run_moderate(const Options& options);
int run_results(const Options& options);
int run_serve(const Options& options);
int run_rubric_list(const Options& options);
int run_rubric_show(const Options& options);
int run_rubric_lint(const Options& options);
int run_rubric_test(const Options& options);
int run_rubric_hear(const Options& options);
int run_rubric_new(const Options& options);
int run_rubric_suggest(const Options& options);
int run_rubric_overlay(const Options& options);

}  // namespace retort::cli
