#include "vocabulary/real_words.h"

namespace retort {

bool RealWords::contains(std::string_view folded) const {
  std::size_t low = 0;
  std::size_t high = lines_.size();
  while (low < high) {
    std::size_t middle = low + (high - low) / 2;
    std::size_t begin = middle == 0 ? std::string_view::npos : lines_.rfind('\n', middle - 1);
    begin = begin == std::string_view::npos ? 0 : begin + 1;
    std::size_t end = lines_.find('\n', middle);
    if (end == std::string_view::npos) end = lines_.size();
    if (begin > end) begin = end;
    std::string_view line = lines_.substr(begin, end - begin);
    if (line == folded) return true;
    if (line < folded) {
      low = end + 1;
    } else {
      high = begin;
    }
  }
  return false;
}

}  // namespace retort
