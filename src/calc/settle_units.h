// Units that mean another one by what the text is about.
#pragma once
#include "calc/token.h"

namespace retort::calc {

// "degrees" and "C" of heat are Celsius, "nm" of a moment is N m, "M" of a solution is mol/dm³.
void settle_units(Tokens& tokens);

}  // namespace retort::calc
