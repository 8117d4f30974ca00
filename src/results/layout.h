// Where things stand in a table of results: which row the readings begin in, which column is the independent variable,
// which are the repeats of the dependent one, and which holds the pupil's own mean.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "base/finding.h"
#include "base/table.h"
#include "results/guide.h"
#include "results/heading.h"
#include "results/number.h"

namespace retort::results {

struct Layout {
  std::vector<Heading> headings;      // one for each column
  std::size_t first_row = 0;          // of the readings
  std::size_t x = 0;                  // column
  std::vector<std::size_t> y;         // columns, at least one
  std::optional<std::size_t> mean;    // the pupil's own
  std::vector<std::size_t> unused;    // columns with readings that take no part
  Comma comma = Comma::thousands;
};

// What was asked for on the command line; empty: not asked.
struct Wanted {
  std::string x;
  std::string y;
  const Guide* guide = nullptr;  // may be null; must outlive the call
};

// Finds the layout of `table`. Nothing, with a finding of severity error, if there are no two columns of numbers or a
// wanted column is not there. `file` names the table in findings.
std::optional<Layout> find_layout(const Table& table, const Wanted& wanted, const std::string& file, Findings& findings);

}  // namespace retort::results
