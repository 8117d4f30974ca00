// Numbers written in words: "fifteen", "twenty five", "half", "a quarter of".
#pragma once
#include <cstddef>
#include <string_view>

namespace retort {

enum class NumberWord { none, unit, teen, ten, hundred, half, quarter, point };

struct WordValue {
  NumberWord kind = NumberWord::none;
  double value = 0.0;
};

// What a folded word means as part of a number; plural forms ("fives", "tens") are known too.
WordValue number_word(std::string_view folded);

}  // namespace retort
