// Numbers that only count readings: "time 1 = 22 s, time 2 = 25 s".
#pragma once
#include "calc/token.h"

namespace retort::calc {

// Makes them words without letters, in place: what follows is the reading.
void settle_labels(Tokens& tokens);

// Whether the sign at `i` stands behind such a number.
bool is_label_sign(const Tokens& tokens, std::size_t i);

}  // namespace retort::calc
