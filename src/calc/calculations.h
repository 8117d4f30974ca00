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

class Calculator {
 public:
  // `book` must outlive the Calculator.
  explicit Calculator(const FormulaBook& book) : book_(book), speller_(book.words()) {}

  // The calculations of `text`, in its order. `given`: what the question states besides (the values of its
  // table, with unit and name), for numbers that the text leaves without a unit.
  std::vector<Calculation> check(std::string_view text, const std::vector<Fact>& given = {});

 private:
  const FormulaBook& book_;
  NameSpeller speller_;
  Tokens tokens_;
  std::vector<Fact> facts_;
};

}  // namespace retort::calc
