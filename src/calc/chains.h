// Finds what is written as a calculation: expressions joined by signs of equality or by words ("and got"),
// conversions, and what the result is said to be.
#pragma once
#include <vector>

#include "calc/judge.h"

namespace retort::calc {

struct Chain {
  std::vector<Expression> parts;  // at least one; the last is the result, a single number
  std::vector<Stated> stated;     // by part: what it states, for parts that are single numbers (figures 0 otherwise)
  Named named;
  std::size_t second_token = 0;  // where the second part begins
  std::size_t first_token = 0;   // tokens [first_token, end_token)
  std::size_t end_token = 0;
  Span span;
  bool loose = false;        // joined by words that need not mean equality: believed only if the number fits
  bool raised = false;       // what is worked out is a square ("v² = ...")
  std::string_view unknown;  // "v" of "v² = ...", and how to get at it
  Op inverse = Op::leaf;
  bool backwards = false;  // the result stands before the expression
};

// All chains of the text, in order. Linear in the number of tokens.
std::vector<Chain> find_chains(const Tokens& tokens, const FormulaBook& book, const std::vector<Fact>& facts);

}  // namespace retort::calc
