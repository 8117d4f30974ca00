// A draft cut where its marks begin and end, for writers that put marks into the text itself.
#pragma once
#include <cstdint>
#include <string_view>
#include <vector>

#include "review/review.h"

namespace retort {

enum class PieceKind : std::uint8_t { plain, there, near, sum };

struct DraftPiece {
  Span span;  // bytes of the draft
  PieceKind kind = PieceKind::plain;
  std::vector<std::size_t> steps;  // whose evidence begins here, by index
};

// The pieces of `text` in order, all of it. Where marks lie over each other, a calculation that is wrong goes before a step that
// is there, and this before a vague one. Spans that are not within `text` are left out.
std::vector<DraftPiece> draft_pieces(std::string_view text, const Review& review);

}  // namespace retort
