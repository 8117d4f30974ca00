// Text of doubtful encoding, as UTF-8.
#pragma once
#include <string>
#include <string_view>

namespace retort {

// `text` if it is UTF-8. Else each of its bytes as Windows-1252 has it (as the WHATWG Encoding Standard maps them), and
// the bytes that are not ASCII are added to `odd`.
std::string as_utf8(std::string_view text, std::size_t& odd);

}  // namespace retort
