// The readings of a table, gathered by the value of the independent variable.
#pragma once
#include <string>
#include <vector>

#include "results/layout.h"

namespace retort::results {

// A number from a cell, in the unit of its column.
struct Reading {
  Exact value;
  int last_place = 0;  // power of ten of the last digit
  int figures = 1;     // significant figures
  Span span;           // of the cell
  std::uint32_t line = 1;
  std::size_t column = 0;
  bool kept = true;    // false: an anomaly, left out of the mean
};

// All readings taken at one value of the independent variable.
struct Group {
  Reading x;
  std::vector<Reading> readings;
  std::optional<Reading> pupil_mean;
};

// A quantity of the graph: what its axis is called.
struct Quantity {
  std::string name;  // "Force"; "x" or "y" if the table does not say
  std::string unit;  // symbol; empty if there is none
  std::optional<CompoundUnit> compound;

  [[nodiscard]] std::string label() const { return unit.empty() ? name : name + " / " + unit; }
};

struct Readings {
  Quantity x;
  Quantity y;
  std::vector<Group> groups;  // in the order of the table
};

// Reads the cells that `layout` names. A blank cell, a word or a bad number is a finding with its place; the rest goes on.
// A cell with a unit of its own is converted to its column's, exactly.
Readings read_readings(const Table& table, const Layout& layout, const std::string& file, Findings& findings);

// "Force" in column 1, "column 2" if it has no heading.
std::string column_name(const Layout& layout, std::size_t column);

}  // namespace retort::results
