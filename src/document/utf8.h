// Single code points of UTF-8 text.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>

namespace retort {

// Appends the code point `c` as UTF-8; a surrogate or anything past U+10FFFF becomes U+FFFD.
void append_utf8(std::uint32_t c, std::string& out);

// The code point at `at`, which is moved behind it. `text` must be UTF-8; of other bytes each is taken as U+FFFD.
std::uint32_t next_code_point(std::string_view text, std::size_t& at);

}  // namespace retort
