// The list of real English words, so that spelling tolerance never turns one word into another.
#pragma once
#include <string_view>

namespace retort {

// A view of a sorted list, one folded word a line. Lifetime: the bytes must outlive it.
class RealWords {
 public:
  RealWords() = default;
  explicit RealWords(std::string_view sorted_lines) : lines_(sorted_lines) {}

  [[nodiscard]] bool contains(std::string_view folded) const;
  [[nodiscard]] bool empty() const { return lines_.empty(); }

 private:
  std::string_view lines_;
};

}  // namespace retort
