// Cuts one of ICU's word segments into our tokens: "1.5N" is a number and a unit, "15,25,35" three
// numbers, "weights.Then" two words, "cm3" and "t1" stay whole.
#pragma once
#include <cstdint>
#include <string_view>
#include <vector>

#include "text/document.h"

namespace retort {

struct Piece {
  std::int32_t begin = 0;  // UTF-16 index within the segment
  std::int32_t end = 0;
  TokenKind kind = TokenKind::word;
  Break before = Break::none;
};

// Appends the pieces of `segment` to `out`.
void split_segment(std::u16string_view segment, std::vector<Piece>& out);

}  // namespace retort
