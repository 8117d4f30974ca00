#include "base/messages.h"

#include <array>
#include <cassert>

namespace retort {
namespace {

using enum Severity;

constexpr std::array kMessages = {
    Message{Code::file_missing, "file-missing", error, "there is no file or folder of this name",
            "check the name, or run the command from the folder that holds it"},
    Message{Code::file_unreadable, "file-unreadable", error, "this file cannot be read ({0})",
            "check who may read it, then try again"},
    Message{Code::file_too_large, "file-too-large", error, "this file has {0} bytes, more than the {1} allowed here",
            "split it into smaller files"},
    Message{Code::folder_empty, "folder-empty", error, "this folder holds no answers",
            "put answers in it: .docx, .odt, .pdf, .txt, .md, .csv or .jsonl files"},
    Message{Code::ending_unknown, "ending-unknown", error, "the ending '{0}' is not one that can be read",
            "use .docx, .odt, .pdf, .txt, .md, .csv, .jsonl or .zip, or - for standard input"},
    Message{Code::write_failed, "write-failed", error, "the output could not be written ({0})",
            "check the free space and who may write there; nothing was left half-written"},
    Message{Code::output_closed, "output-closed", error, "the reader of the output went away before the end", ""},
    Message{Code::rubric_not_found, "rubric-not-found", error, "there is no rubric '{0}'{1}",
            "'retort rubric list' shows the ones there are; or give the path of a rubric file"},
    Message{Code::rubrics_folder_missing, "rubrics-folder-missing", error,
            "the folder with the rubrics was not found (looked in {0})",
            "set RETORT_RUBRICS to the folder that holds 'vocabulary.json'"},
    Message{Code::invalid_utf8, "invalid-utf8", warning, "{0} bytes are not valid UTF-8 and were passed over",
            "save the text as UTF-8"},
    Message{Code::nul_bytes, "nul-bytes", warning, "{0} NUL bytes were read as spaces", "save it as plain text"},
    Message{Code::answer_too_long, "answer-too-long", error, "this answer has {0} bytes; an answer may have up to {1}",
            "check that this is one pupil's answer, and split it if not"},
    Message{Code::answer_empty, "answer-empty", note, "this answer has no words in it", ""},
    Message{Code::json_syntax, "json-syntax", error, "this is not valid JSON: {0}",
            "look for a missing comma, quote or bracket just before this place"},
    Message{Code::json_too_deep, "json-too-deep", error, "the JSON is nested more than {0} deep",
            "nothing here needs such depth; take out the extra brackets"},
    Message{Code::json_not_object, "json-not-object", error, "a JSON object { ... } is expected here", "write {\"...\": ...}"},
    Message{Code::json_duplicate_key, "json-duplicate-key", error, "the key '{0}' stands twice in the same object",
            "keep one of the two"},
    Message{Code::line_too_long, "line-too-long", error, "line {0} has more than {1} bytes and was not read",
            "check that the file has one answer a line"},
    Message{Code::answer_no_text, "answer-no-text", error, "line {0}: the object has no \"text\"",
            "give each line a \"text\" with the pupil's answer"},
    Message{Code::answer_text_not_string, "answer-text-not-string", error, "line {0}: \"{1}\" is not what is expected ({2})",
            "put text in quotes, and write marks as whole numbers"},
    Message{Code::answer_mark_bad, "answer-mark-bad", error, "line {0}: \"{1}\" is not a whole number from 0 to 100",
            "write the mark as a whole number, or leave it out"},
    Message{Code::answer_other_rubric, "answer-other-rubric", warning,
            "line {0}: this answer says it is for '{1}'; it was checked against '{2}'", "check that the right rubric was named"},
    Message{Code::key_unknown, "key-unknown", error, "'{0}' is not a key that is known here{1}", "known here: {2}"},
    Message{Code::key_missing, "key-missing", error, "{0} needs a '{1}'", "add \"{1}\": {2}"},
    Message{Code::wrong_type, "wrong-type", error, "'{0}' should be {1}", "write {2}"},
    Message{Code::format_unsupported, "format-unsupported", error, "format {0} is not one that this program reads (it reads {1})",
            "write \"format\": {1}, or use a newer program"},
    Message{Code::value_not_allowed, "value-not-allowed", error, "'{0}' is not allowed for '{1}'", "use one of: {2}"},
    Message{Code::id_repeated, "id-repeated", error, "the id '{0}' is used twice", "give each its own id"},
    Message{Code::id_bad, "id-bad", error, "'{0}' cannot be an id", "use small letters, digits and single hyphens, for instance 'loaded-reading'"},
    Message{Code::include_cycle, "include-cycle", error, "'{0}' includes itself ({1})", "take out one of the includes"},
    Message{Code::include_outside, "include-outside", error, "'{0}' lies outside the rubric's own folder", "include files of the same folder, by name"},
    Message{Code::include_missing, "include-missing", error, "the included file '{0}' cannot be read", "check its name"},
    Message{Code::set_unknown, "set-unknown", error, "there is no set of patterns called '{0}'{1}", "known sets: {2}"},
    Message{Code::step_unknown, "step-unknown", error, "there is no step '{0}' in this rubric{1}", "known steps: {2}"},
    Message{Code::step_cycle, "step-cycle", error, "the step '{0}' depends on itself", "let it depend on words instead"},
    Message{Code::concept_unknown, "concept-unknown", error, "the word list '{{0}}' is not in the vocabulary{1}",
            "add it under \"words\", or use one that 'retort rubric words' shows"},
    Message{Code::concept_cycle, "concept-cycle", error, "the word list '{0}' is made of itself", "take '{{0}}' out of its own wordings"},
    Message{Code::concept_empty, "concept-empty", error, "the word list '{0}' has no words", "add at least one wording"},
    Message{Code::concept_repeated_word, "concept-repeated-word", warning, "'{0}' stands twice in the word list '{1}'", "keep one of the two"},
    Message{Code::pattern_syntax, "pattern-syntax", error, "this pattern cannot be read: {0}", "{1}"},
    Message{Code::pattern_empty, "pattern-empty", error, "this pattern has no words", "write the words to look for"},
    Message{Code::pattern_too_wide, "pattern-too-wide", error, "this pattern would match nearly any answer (only {0})",
            "add the word or list that makes it special"},
    Message{Code::pattern_repeated, "pattern-repeated", warning, "this pattern stands twice in the step", "keep one of the two"},
    Message{Code::pattern_never, "pattern-never", error, "this pattern can never match: {0}", "{1}"},
    Message{Code::step_no_pattern, "step-no-pattern", error, "the step '{0}' can never be present: it has no pattern and no facet data",
            "add \"present\": [\"...\"]"},
    Message{Code::step_no_vague, "step-no-vague", note, "the step '{0}' can never be vague", "add \"vague\": [\"...\"] if a weak mention should be seen"},
    Message{Code::step_no_hint, "step-no-hint", error, "the step '{0}' has no hint", "add \"hint\": a short question that nudges"},
    Message{Code::step_no_example, "step-no-example", warning, "the step '{0}' has no '{1}' example", "add one under \"examples\""},
    Message{Code::hint_gives_answer, "hint-gives-answer", warning, "the hint for '{0}' gives the answer away: it would earn the step by itself",
            "ask a question that does not hold the answer's words"},
    Message{Code::values_missing, "values-missing", error, "the step '{0}' checks values, but the rubric's \"given\" has none",
            "add \"values\": {\"quantity\": \"force\", \"list\": [\"1.5 N\", ...]} under \"given\""},
    Message{Code::value_unreadable, "value-unreadable", error, "'{0}' is not a number with a known unit", "write it like \"1.5 N\" or \"15 min\""},
    Message{Code::unit_unknown, "unit-unknown", error, "'{0}' is not a unit that the program knows", "write it like \"N/m\", \"cm3\" or \"J/(kg °C)\"; \"1\" for none"},
    Message{Code::quantity_unknown, "quantity-unknown", error, "'{0}' is not a quantity of formulas.json", "use a name from there, or add it under \"quantities\""},
    Message{Code::formula_unreadable, "formula-unreadable", error, "the formula '{0}' cannot be read",
            "write it like \"speed = distance / time\", with names that stand under \"quantities\""},
    Message{Code::formulas_missing, "formulas-missing", error, "there is no '{0}' in the folder of the rubrics", "copy it there from the program's own rubrics"},
    Message{Code::example_fails, "example-fails", error, "this example of '{0}' should be {1} and comes out {2}{3}",
            "change the example, or the patterns of the step"},
    Message{Code::order_self, "order-self", error, "the order names the same step twice ('{0}')", "name two different steps"},
    Message{Code::slip_arithmetic, "slip-arithmetic", note, "The numbers do not give this result.", "Do the sum again on a calculator."},
    Message{Code::slip_power_of_ten, "slip-power-of-ten", note, "The result is out by a factor of ten, or a unit was not converted.",
            "Change every value to the unit you need before you put it in (cm to m, g to kg, mA to A, minutes to seconds)."},
    Message{Code::slip_upside_down, "slip-upside-down", note, "The division is the wrong way up.", "Write the formula first and check what goes on top."},
    Message{Code::slip_operation, "slip-operation", note, "Another operation is needed here than the one you used.", "Write the formula first: do the values multiply, divide, add or take away?"},
    Message{Code::slip_square, "slip-square", note, "A square, a square root or a half is left out, or put in where there is none.",
            "Write the formula first and look for the small 2 and for one half."},
    Message{Code::slip_rounding, "slip-rounding", note, "The last figure is not rounded the right way.", "Look at the next figure: 5 or more goes up."},
    Message{Code::slip_angle_mode, "slip-angle-mode", note, "The calculator was in radians.", "Set it to degrees: sin 30 must give 0.5."},
    Message{Code::slip_count, "slip-count", note, "The number you divided by is not the number of readings, waves or gaps.",
            "Count again what fits into the whole: the gaps between, not the marks; two loops make one wave."},
    Message{Code::slip_unit_wrong, "slip-unit-wrong", note, "The unit is one of another kind of quantity.", "Work the unit out in the same way as the number."},
    Message{Code::slip_chain, "slip-chain", note, "What stands on the two sides of an equals sign is not equal.", "Start a new line for each step instead of going on with another equals sign."},
    Message{Code::remark_unit_missing, "unit-missing", note, "The unit is missing.", "Write it behind the number."},
    Message{Code::remark_too_many_figures, "too-many-figures", note, "This has more figures than the readings allow.", "Give as many significant figures as the least precise reading has."},
    Message{Code::remark_too_few_figures, "too-few-figures", note, "This is rounded more than it needs to be.", "Give as many significant figures as the least precise reading has."},
    Message{Code::doubt_divides_by_zero, "divides-by-zero", note, "This divides by zero, which has no value.", "Check the number under the division."},
    Message{Code::doubt_no_value, "no-value", note, "This has no value (a root of less than nothing, or the angle of a sine above 1).", "Check the numbers that went in."},
    Message{Code::doubt_too_large, "too-large", note, "A number here is far larger or smaller than any measurement.", "Check its power of ten."},
    Message{Code::doubt_value_missing, "value-missing", note, "This cannot be checked: a value that it needs does not stand in the text.", "Write down every value that you use."},
    Message{Code::csv_not_text, "csv-not-text", error, "this is no CSV file in an encoding that can be read", "save the table as CSV (UTF-8)"},
    Message{Code::csv_not_utf8, "csv-not-utf8", note, "{0} bytes are not UTF-8 and were read as Windows-1252", "check the signs such as \u00B0 and \u00B2, or save it as UTF-8"},
    Message{Code::csv_quote_open, "csv-quote-open", warning, "the quote that opens here is never closed, so all that follows became one cell",
            "close the quote, or take it out"},
    Message{Code::csv_too_many_cells, "csv-too-many-cells", error, "the table has more than {0} cells", "split it into smaller files"},
    Message{Code::csv_syntax, "csv-syntax", error, "the table cannot be read from here on ({0})", "look for a stray quote just before this place"},
    Message{Code::results_no_headings, "results-no-headings", warning, "the table has no headings", "put a heading with the unit over each column, such as 'Force / N'"},
    Message{Code::results_no_column, "results-no-column", error, "there is no column '{0}' with numbers in it", "use one of these, or its number from the left: {1}"},
    Message{Code::results_same_column, "results-same-column", error, "'{0}' cannot be on both axes", "name two different columns"},
    Message{Code::results_too_few_columns, "results-too-few-columns", error, "results need two columns of numbers, and there are not two",
            "put the independent variable in the first column and the readings in the others"},
    Message{Code::results_too_many_columns, "results-too-many-columns", error, "the table has {0} columns, more than the {1} allowed here", "keep the columns of one experiment"},
    Message{Code::results_row_without_x, "results-row-without-x", warning, "there is no number for '{0}' in this row, so its readings were left out",
            "write the number in"},
    Message{Code::results_x_from_above, "results-x-from-above", note, "'{0}' is blank in this row and was taken to be the same as above", "write the number in if it is another one"},
    Message{Code::results_cell_blank, "results-cell-blank", note, "there is no reading for '{0}' here", "take the reading, or leave the cell blank if there is none"},
    Message{Code::results_cell_no_number, "results-cell-no-number", warning, "'{1}' under '{0}' is not a number that can be read, and was left out",
            "write one number, such as 12.5; minutes and seconds as seconds"},
    Message{Code::results_unit_in_cell, "results-unit-in-cell", note, "the unit {1} stands in the cells of '{0}'", "put it in the heading once, and only numbers in the cells"},
    Message{Code::results_unit_other, "results-unit-other", warning, "this cell of '{0}' is in {1}, which cannot be turned into {2}; it was left out",
            "check the unit"},
    Message{Code::results_unit_converted, "results-unit-converted", note, "'{1}' under '{0}' was read as {2} {3}", "use one unit for the whole column"},
    Message{Code::results_unit_unknown, "results-unit-unknown", note, "the {0} was not worked out: the unit of a column is missing or not known",
            "put the units in the headings, such as 'Force / N'"},
    Message{Code::results_unit_misfit, "results-unit-misfit", warning, "the {0} was not worked out: it is in {1}, and the gradient is in {2}",
            "check which column is on which axis, and the units in the headings"},
    Message{Code::results_columns_unused, "results-columns-unused", note, "these columns take no part: {0}", "name one with --x or --y to plot it"},
    Message{Code::results_guide_misfit, "results-guide-misfit", note, "the rubric speaks of {0} against {1}, and the table has no such columns",
            "name the columns with --x and --y; the gradient is given without its meaning"},
    Message{Code::results_more_findings, "results-more-findings", note, "{0} more remarks on cells are not shown", ""},
    Message{Code::document_other_format, "document-other-format", error, "'{0}' files cannot be read", "{1}"},
    Message{Code::document_macros, "document-macros", error, "'{0}' files can hold macros (small programs) and are not opened", "save it as .docx and try again"},
    Message{Code::document_picture, "document-picture", error, "this is a picture; only text can be read", "type the answer out, or ask for the file it was written in"},
    Message{Code::document_protected, "document-protected", error, "this file is locked with a password, or is an older kind of file under a new ending",
            "open it, take the password off and save it as .docx, .odt or .pdf"},
    Message{Code::document_damaged, "document-damaged", error, "this file is damaged or is not what its ending says ({0})",
            "open it in the program it was written with and save it again, or ask for another copy"},
    Message{Code::document_entities, "document-entities", error, "this file declares XML entities, which no word processor writes; it is not opened",
            "ask where it came from; open it in a word processor and save it again"},
    Message{Code::document_too_deep, "document-too-deep", error, "the inside of this file is nested more than {0} deep", "copy the text into a new document and save that"},
    Message{Code::document_no_text, "document-no-text", warning, "there is no text in this document, only pictures ({0})",
            "look at the pictures; type the answer out if it is in them"},
    Message{Code::archive_too_many, "archive-too-many", error, "this file holds {0} files, more than the {1} allowed here", "split it into smaller ones"},
    Message{Code::archive_too_large, "archive-too-large", error, "what is packed in this file unpacks to more than {0} bytes, or to far more than it takes up",
            "unpack it by hand if you trust where it came from, and name the folder"},
    Message{Code::archive_path_unsafe, "archive-path-unsafe", error, "the name of this entry leads out of its .zip file; it is not read", "ask where the .zip file came from"},
    Message{Code::archive_nested, "archive-nested", error, "a .zip file inside a .zip file is not opened", "unpack the outer one, and name the folder"},
    Message{Code::archive_empty, "archive-empty", error, "this .zip file holds no answers", "put answers in it"},
    Message{Code::pdf_reader_missing, "pdf-reader-missing", error, "reading PDF files needs the program '{0}', which is not there",
            "install the package poppler-utils, or save the answer as .docx, .odt or .txt"},
    Message{Code::pdf_failed, "pdf-failed", error, "this PDF file cannot be read ({0})", "open it in the program it was written with and save it again, or as .docx or .odt"},
    Message{Code::pdf_no_text, "pdf-no-text", error, "this PDF file holds no text, only pictures of pages (a scan or a photo)",
            "type the answer out, or ask for the file it was written in"},
    Message{Code::answers_no_column, "answers-no-column", error, "no column with answers was found", "name it with --answer-column; the columns are: {0}"},
    Message{Code::answers_column_missing, "answers-column-missing", error, "there is no column '{0}' (named with {1})", "use one of these, or its number from the left: {2}"},
    Message{Code::answers_column_twice, "answers-column-twice", error, "the column '{0}' is named for two things at once ({1} and {2})", "name two different columns"},
    Message{Code::answers_column_guessed, "answers-column-guessed", note, "the answers were taken from '{0}', the column with the longest texts", "if it is another one, name it with --answer-column: {1}"},
    Message{Code::answers_blank, "answers-blank", note, "row {0} ({1}) has no answer", ""},
    Message{Code::answers_more_blank, "answers-more-blank", note, "{0} more rows without an answer are not named", ""},
    Message{Code::answers_row_too_long, "answers-row-too-long", error, "row {0}, which begins in line {1}, has more than {2} bytes; it and what follows were not read",
            "look for a quote in that row that is opened and never closed"},
    Message{Code::key_file_bad, "key-file-bad", error, "line {0} of the key file is not a label and a code", "write it as label,code; or name a new file"},
    Message{Code::key_file_repeated, "key-file-repeated", error, "line {0} of the key file: '{1}' stands twice", "keep one of the two"},
    Message{Code::moderate_line_unknown, "moderate-line-unknown", error, "this is no checked answer, no answer and no tally",
            "give lines that 'retort check --format jsonl' or 'retort moderate --tally' wrote, or answers with \"text\""},
    Message{Code::moderate_no_rubric, "moderate-no-rubric", error, "this answer does not say which rubric it belongs to",
            "add \"rubric\", or name one with --rubric"},
    Message{Code::moderate_nothing, "moderate-nothing", error, "there is no answer to count", "check the names of the inputs"},
    Message{Code::checked_bad, "checked-bad", error, "'{0}' of this checked answer cannot be used",
            "write the line anew with 'retort check --format jsonl'"},
    Message{Code::tally_bad, "tally-bad", error, "'{0}' of this tally cannot be used", "write it anew with 'retort moderate --tally'"},
    Message{Code::tally_other_seed, "tally-other-seed", error, "this tally was made with seed {0}, and now the seed is {1}",
            "use --seed {0}, or make the tally anew"},
    Message{Code::tally_rubrics_cut, "tally-rubrics-cut", warning, "there are more than {0} rubrics; only the first by name are counted",
            "take one rubric at a time"},
    Message{Code::tally_groups_cut, "tally-groups-cut", warning, "'{1}' has more than {0} groups; the last by name are counted together",
            "check that \"group\" holds a class or school, not a pupil"},
    Message{Code::tally_steps_cut, "tally-steps-cut", warning, "'{1}' has more than {0} steps; the last by name are left out",
            "check that the lines come from one version of the rubric"},
    Message{Code::serve_address_bad, "serve-address-bad", error, "'{0}' is not an address of this machine in numbers", "write it like 127.0.0.1 or ::1"},
    Message{Code::serve_cannot_listen, "serve-cannot-listen", error, "nothing can listen on {0} ({1})", "choose another --port, or leave it out"},
    Message{Code::label_unknown_step, "label-unknown-step", error, "line {0}: the label '{1}' is not a step of this rubric", "check the step's id"},
    Message{Code::label_bad_status, "label-bad-status", error, "line {0}: '{1}' is not a status for '{2}'", "use present, vague or missing"},
    Message{Code::label_missing_step, "label-missing-step", warning, "line {0}: no label for the step '{1}'", "add one, or it is left out of the count"},
    Message{Code::points_none, "points-none", error, "there is no marking point in this file", "write one a line, such as: measure the starting length with a ruler"},
    Message{Code::points_too_many, "points-too-many", warning, "there are more than {0} marking points; this one is left out", "make two rubrics of them"},
    Message{Code::point_too_long, "point-too-long", warning, "a marking point has more than {0} bytes; it is left out", "write one idea a line"},
    Message{Code::point_not_placed, "point-not-placed", warning, "nothing in '{0}' can be looked for", "say it with the words a pupil would use, or write the patterns by hand"},
    Message{Code::point_word_new, "point-word-new", note, "no word list knows '{0}'; it now has one of its own in \"words\"", "add other words for it, and misspellings, there"},
    Message{Code::point_is_table, "point-is-table", warning, "the values of '{0}' can only be checked against a table", "add a line such as: Table: force 1.5 N, 3.0 N, 4.5 N"},
    Message{Code::class_too_many, "class-too-many", error, "there are more than {0} drafts, too many for one picture of a class",
            "give one class or one year group at a time"},
    Message{Code::class_empty, "class-empty", error, "there is no draft to make a picture of", "check the names of the files and folders"},
    Message{Code::class_slips_stdout, "class-slips-stdout", error, "the slips and the report cannot go to the same place ({0})",
            "give --slips and --output names of their own"},
    Message{Code::concern_no_words, "no-words", note, "There are no words in it.", "Ask for the draft again. It is not counted above."},
    Message{Code::concern_too_short, "too-short", note, "It has only {0} words.", "Read it yourself: there may be too little to go by."},
    Message{Code::concern_other_practical, "other-practical", note, "It seems to be about another practical: {0}.",
            "Check that it was handed in for the right one."},
    Message{Code::concern_nothing_found, "nothing-found", note, "None of the steps was recognised in it.",
            "Read it yourself: it may say things in words that are not known here."},
    Message{Code::concern_copied, "copied-from-question", note, "About {0} % of its words are the question's own.",
            "Ask the pupil to say it in their own words."},
    Message{Code::concern_near_copies, "near-copies", note, "They have much of their wording in common: at least {0} % of their runs of five words.",
            "Read them side by side before you decide what that means."},
    Message{Code::concern_invalid_bytes, "bytes-passed-over", note, "{0} bytes of it are not text that can be read and were passed over.",
            "Look at the file: it may be damaged, or saved in an unusual way."},
    Message{Code::concern_label_twice, "label-twice", note, "The same name stands on {0} drafts.", "Find out whose they are. Each is counted."},
};

std::string_view severity_word(Severity severity) {
  switch (severity) {
    case note: return "note";
    case warning: return "warning";
    case error: return "error";
  }
  return "error";
}

}  // namespace

const Message& message(Code code) {
  for (const Message& entry : kMessages) {
    if (entry.code == code) return entry;
  }
  assert(false && "every code has a message; see messages_test");
  return kMessages.front();
}

std::size_t message_count() { return kMessages.size(); }

std::string fill(std::string_view pattern, const std::vector<std::string>& notes) {
  std::string out;
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    bool slot = pattern[i] == '{' && i + 2 < pattern.size() && pattern[i + 2] == '}' &&
                pattern[i + 1] >= '0' && pattern[i + 1] <= '9';
    if (!slot) {
      out += pattern[i];
      continue;
    }
    std::size_t index = static_cast<std::size_t>(pattern[i + 1] - '0');
    if (index < notes.size()) out += notes[index];
    i += 2;
  }
  return out;
}

LineColumn locate(std::string_view source, std::size_t offset) {
  LineColumn at;
  std::size_t stop = offset < source.size() ? offset : source.size();
  for (std::size_t i = 0; i < stop; ++i) {
    unsigned char c = static_cast<unsigned char>(source[i]);
    if (c == '\n') {
      ++at.line;
      at.column = 1;
    } else if ((c & 0xC0) != 0x80) {
      ++at.column;
    }
  }
  return at;
}

std::string describe(const Finding& finding, std::string_view source) {
  const Message& entry = message(finding.code);
  std::string out;
  if (!finding.file.empty()) out += printable(finding.file, 400);
  if (finding.located && !source.empty()) {
    LineColumn at = locate(source, finding.span.begin);
    out += ":" + std::to_string(at.line) + ":" + std::to_string(at.column);
  }
  if (!out.empty()) out += ": ";
  out += severity_word(entry.severity);
  out += ": " + fill(entry.what, finding.notes);
  std::string todo = fill(entry.todo, finding.notes);
  if (!todo.empty()) out += "; to put it right: " + todo;
  return out;
}

std::string printable(std::string_view text, std::size_t limit) {
  bool cut = text.size() > limit;
  std::size_t end = cut ? limit : text.size();
  while (cut && end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  std::string out;
  for (char c : text.substr(0, end)) {
    unsigned char u = static_cast<unsigned char>(c);
    out += (u < 0x20 || u == 0x7F) ? '?' : c;
  }
  if (cut) out += "...";
  return out;
}

}  // namespace retort
