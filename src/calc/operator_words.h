// Operators, functions, signs of equality and numbers that stand in words.
#pragma once
#include <string_view>

#include "calc/token.h"

namespace retort::calc {

// "sin", "Cos", "sqrt" → the kind; `word` for anything else.
TokenKind function_word(std::string_view letters);
TokenKind inverse_of(TokenKind function);

// What a word with these first letters may begin: an operator (1), a number (2). Most words may neither.
std::uint8_t hint_of(std::string_view folded);

// Turns words that are operators ("divided by", "take away", "squared") or numbers ("eight", "two point
// five" beside an operator or a unit) into such tokens, in place. A word is an operator only where it can be one.
void read_operator_words(Tokens& tokens);

}  // namespace retort::calc
