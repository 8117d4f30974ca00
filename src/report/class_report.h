// What the writers of a class report are given. Nothing is owned: all must outlive the writing.
#pragma once
#include <vector>

#include "classroom/change.h"
#include "classroom/picture.h"

namespace retort {

inline constexpr int kClassFormat = 1;

struct ClassReport {
  const Rubric& rubric;
  const std::vector<classroom::Draft>& drafts;
  const classroom::Picture& picture;
  bool with_range = false;                                // the indicative range of marks is wanted
  const std::vector<classroom::Draft>* before = nullptr;  // first drafts; null if there are none to compare with
  const classroom::Change* change = nullptr;              // set with `before`
};

}  // namespace retort
