// Characters that stand for others: raised and lowered ones, symbol fonts, letters made for mathematics.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>

namespace retort {

enum class Script { none, super, sub };

// How `text`, raised or lowered behind `before`, reads in a line: "⁻³" or "^(a+b)" if raised, but "°" for a raised o or 0
// behind a number that is not 10, and "st" of "1st" as it stands; lowered as it stands ("CO2", "v1").
std::string in_line(Script script, std::string_view text, std::string_view before);

// What the byte `code` of the font "Symbol" shows (Adobe's Symbol encoding, as in Unicode's mapping table SYMBOL.TXT, from
// memory); 0 for signs that no pupil's answer needs.
std::uint32_t symbol_font(std::uint32_t code);

// Appends `text` without soft hyphens and invisible signs; letters and digits of the block Mathematical Alphanumeric Symbols as
// plain ones; signs of the private use area as the font "Symbol" shows them; no-break hyphens as hyphens, line ends and tabs as spaces.
void append_plain(std::string_view text, std::string& out);

}  // namespace retort
