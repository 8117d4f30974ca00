// The numbers of list items ("1.", "(2)", "Step 3 -"), which are no values.
#pragma once
#include <cstdint>
#include <string_view>
#include <vector>

namespace retort {

// Byte offsets of the first digit of each list number in `source`, ascending.
void find_markers(std::string_view source, std::vector<std::uint32_t>& out);

}  // namespace retort
