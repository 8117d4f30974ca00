// Which column of a table of answers holds what.
#pragma once
#include <string>
#include <vector>

#include "base/result.h"
#include "intake/csv_rows.h"
#include "intake/options.h"

namespace retort {

struct AnswerColumns {
  static constexpr std::size_t kNone = static_cast<std::size_t>(-1);
  std::size_t answer = kNone;
  std::size_t label = kNone;
  std::size_t surname = kNone;  // where first name and surname stand apart: belongs behind the label
  std::size_t mark = kNone;
  std::size_t mark2 = kNone;
  std::size_t group = kNone;
  std::size_t rubric = kNone;
};

// Finds the columns by the options, else by headings that say it in so many words; the answers, failing that, are in the
// column with the longest texts that differ (a note says so). `rows` are the first ones below the headings. Fails if an
// option names no column, or there are no answers. The headings are common practice, no source.
Result<AnswerColumns> find_answer_columns(const std::vector<std::string>& headings, const std::vector<CsvRow>& rows, const IntakeOptions& options,
                                          const std::string& file, Findings& findings);

}  // namespace retort
