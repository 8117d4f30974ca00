// Calculations in prose: found, and judged. The one entry point of this folder.
//
// What counts as a calculation, and what right and wrong mean, is in calculation.h. Time is linear in the
// text. Threads: one Calculator for each thread; the FormulaBook is shared.
#pragma once
#include <string_view>
#include <vector>

#include "calc/calculation.h"
#include "calc/facts.h"

namespace retort::calc {

// A final result that can be worked out from the question.
struct Expected {
  QuantityId quantity = kNoQuantity;
  Exact value;          // in SI base units
  CompoundUnit unit;    // as the question would state it
  Exact within;         // the part of it that a pupil's result may be off
  std::string written;  // "40 N/m"
};

// What the question states.
struct Given {
  std::vector<Fact> facts;  // values of its table, with unit and name
  std::vector<Expected> expected;
};

class Calculator {
 public:
  // `book` must outlive the Calculator.
  explicit Calculator(const FormulaBook& book) : book_(book), speller_(book.words()) {}

  // The calculations of `text`, in its order. What is `given` gives numbers that the text leaves without a unit
  // theirs, and final results something to be held against.
  std::vector<Calculation> check(std::string_view text, const Given& given = {});

 private:
  const FormulaBook& book_;
  NameSpeller speller_;
  Tokens tokens_;
  std::vector<Fact> facts_;
};

}  // namespace retort::calc
