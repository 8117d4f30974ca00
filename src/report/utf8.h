// Valid UTF-8, sequence by sequence.
#pragma once
#include <cstddef>
#include <string_view>

namespace retort {

// The length of the valid UTF-8 sequence at `at`, 0 if there is none (Unicode 15.0, table 3-7).
std::size_t utf8_sequence(std::string_view text, std::size_t at);

}  // namespace retort
