// A stretch of bytes in one source text, as a half-open range of byte offsets.
#pragma once
#include <cstddef>
#include <cstdint>
#include <string_view>

namespace retort {

struct Span {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;

  [[nodiscard]] std::uint32_t size() const { return end - begin; }
  [[nodiscard]] bool empty() const { return begin == end; }
  // The bytes of `source` under this span; `source` must be the text the span was made for.
  [[nodiscard]] std::string_view of(std::string_view source) const {
    return source.substr(begin, end - begin);
  }
  friend bool operator==(Span, Span) = default;
};

// The smallest span that covers both.
inline Span hull(Span a, Span b) {
  return {a.begin < b.begin ? a.begin : b.begin, a.end > b.end ? a.end : b.end};
}

}  // namespace retort
