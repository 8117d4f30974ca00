// The normal form of words: NFC, default case folding, no apostrophes, superscript digits as digits.
// NFKC is not used: it would turn "10⁻³" into "10−3" and "½" into "1⁄2" without a trace.
#pragma once
#include <string>
#include <string_view>

namespace retort {

// The digit that a superscript digit stands for; 0 for any other character.
char16_t superscript_digit(char16_t c);

// Appends the normal form of `word` (UTF-16) to `out` (UTF-8).
void append_normal_form(std::u16string_view word, std::string& out);

}  // namespace retort
