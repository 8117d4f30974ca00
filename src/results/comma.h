// Whether a table writes 1,5 for one and a half.
#pragma once
#include "base/table.h"
#include "results/number.h"

namespace retort::results {

// Decimal commas: some cell has one comma with other than three digits behind it, or the file parts its cells by ; and
// uses commas at all.
Comma find_comma(const Table& table);

}  // namespace retort::results
