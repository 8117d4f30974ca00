// Findings: what is wrong with some content (a rubric, an input file, a command line), as data.
// The words for each code live in messages.cpp; printing is a client (see describe()).
// A Finding owns everything it holds and may be copied between threads.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/span.h"

namespace retort {

enum class Severity : std::uint8_t { note, warning, error };

// One code per kind of fault. Add the words for a new code in messages.cpp; a test checks that
// every code has them.
enum class Code : std::uint16_t {
  // files and commands
  file_missing,
  file_unreadable,
  file_too_large,
  folder_empty,
  ending_unknown,
  write_failed,
  output_closed,
  rubric_not_found,
  rubrics_folder_missing,
  // text
  invalid_utf8,
  nul_bytes,
  answer_too_long,
  answer_empty,
  // JSON
  json_syntax,
  json_too_deep,
  json_not_object,
  json_duplicate_key,
  line_too_long,
  // answers
  answer_no_text,
  answer_text_not_string,
  answer_mark_bad,
  answer_other_rubric,
  // rubrics and vocabulary
  key_unknown,
  key_missing,
  wrong_type,
  format_unsupported,
  value_not_allowed,
  id_repeated,
  id_bad,
  include_cycle,
  include_outside,
  include_missing,
  set_unknown,
  step_unknown,
  step_cycle,
  concept_unknown,
  concept_cycle,
  concept_empty,
  concept_repeated_word,
  pattern_syntax,
  pattern_empty,
  pattern_too_wide,
  pattern_repeated,
  pattern_never,
  step_no_pattern,
  step_no_vague,
  step_no_hint,
  step_no_example,
  hint_gives_answer,
  values_missing,
  value_unreadable,
  unit_unknown,
  quantity_unknown,
  formula_unreadable,
  formulas_missing,
  example_fails,
  order_self,
  // calculations
  slip_arithmetic,
  slip_power_of_ten,
  slip_upside_down,
  slip_operation,
  slip_square,
  slip_rounding,
  slip_angle_mode,
  slip_count,
  slip_unit_wrong,
  slip_chain,
  remark_unit_missing,
  remark_too_many_figures,
  remark_too_few_figures,
  doubt_divides_by_zero,
  doubt_no_value,
  doubt_too_large,
  doubt_value_missing,
  // CSV files
  csv_not_text,
  csv_not_utf8,
  csv_quote_open,
  csv_too_many_cells,
  csv_syntax,
  // results tables
  results_no_headings,
  results_no_column,
  results_same_column,
  results_too_few_columns,
  results_too_many_columns,
  results_row_without_x,
  results_x_from_above,
  results_cell_blank,
  results_cell_no_number,
  results_unit_in_cell,
  results_unit_other,
  results_unit_converted,
  results_unit_unknown,
  results_unit_misfit,
  results_columns_unused,
  results_guide_misfit,
  results_more_findings,
  // documents, archives
  document_other_format,
  document_macros,
  document_picture,
  document_protected,
  document_damaged,
  document_entities,
  document_too_deep,
  document_no_text,
  archive_too_many,
  archive_too_large,
  archive_path_unsafe,
  archive_nested,
  archive_empty,
  pdf_reader_missing,
  pdf_failed,
  pdf_no_text,
  // answers in CSV files
  answers_no_column,
  answers_column_missing,
  answers_column_twice,
  answers_column_guessed,
  answers_blank,
  answers_more_blank,
  answers_row_too_long,
  // key files
  key_file_bad,
  key_file_repeated,
  // checked answers and tallies
  moderate_line_unknown,
  moderate_no_rubric,
  moderate_nothing,
  checked_bad,
  tally_bad,
  tally_other_seed,
  tally_rubrics_cut,
  tally_groups_cut,
  tally_steps_cut,
  // the local page
  serve_address_bad,
  serve_cannot_listen,
  // labelled files
  label_unknown_step,
  label_bad_status,
  label_missing_step,
  // classes
  class_too_many,
  // marking points for a new rubric
  points_none,
  points_too_many,
  point_too_long,
  point_not_placed,
  point_word_new,
  point_is_table,
  class_empty,
  class_slips_stdout,
  concern_no_words,
  concern_too_short,
  concern_other_practical,
  concern_nothing_found,
  concern_copied,
  concern_near_copies,
  concern_invalid_bytes,
  concern_label_twice,
};

struct Finding {
  Code code{};
  std::string file;                // as the user named it; empty when there is none
  Span span;                       // bytes in that file; empty span at 0 when unknown
  bool located = false;            // whether `span` means anything
  std::vector<std::string> notes;  // fill {0}, {1}, ... of the message
};

using Findings = std::vector<Finding>;

inline Finding make_finding(Code code, std::string_view file, std::vector<std::string> notes = {}) {
  return {code, std::string(file), {}, false, std::move(notes)};
}
inline Finding make_finding(Code code, std::string_view file, Span span,
                            std::vector<std::string> notes = {}) {
  return {code, std::string(file), span, true, std::move(notes)};
}

}  // namespace retort
