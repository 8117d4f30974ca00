// Readings that stand in a row: "14, 15 and 13 cm", "(in cm) 61, 64, 58".
#pragma once
#include <vector>

#include "calc/facts.h"

namespace retort::calc {

// All lists of readings, each as indices of facts.
std::vector<std::vector<std::size_t>> reading_lists(const Tokens& tokens, const std::vector<Fact>& facts);

// Indices of the facts of the last list of at least two readings before fact `result`, in order.
std::vector<std::size_t> readings_before(const Tokens& tokens, const std::vector<Fact>& facts, std::size_t result);

}  // namespace retort::calc
