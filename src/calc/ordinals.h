// Counting in words: "from the first crest to the sixth"; readings that were listed.
#pragma once
#include <vector>

#include "calc/facts.h"

namespace retort::calc {

constexpr long kToTheLast = -1;

// The number of the last one in "(the) first ... (the) sixth"; kToTheLast for "the first
// ... the last"; 0 if
// tokens [from, to) have no such words.
long last_of_a_row(const Tokens& tokens, std::size_t from, std::size_t to);

// How many listed readings add up to `sum`; 0 if none do. Numbers inside `own` do not count.
long readings_with_sum(const Tokens& tokens, const std::vector<Fact>& facts, const Exact& sum, Span own);

}  // namespace retort::calc
