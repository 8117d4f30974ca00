// Result<T>: a value, or the one Finding that says why there is none.
// Use it where an operation as a whole can fail; faults inside content are collected as Findings.
#pragma once
#include <cassert>
#include <utility>
#include <variant>

#include "base/finding.h"

namespace retort {

template <typename T>
class [[nodiscard]] Result {
 public:
  Result(T value) : state_(std::in_place_index<0>, std::move(value)) {}          // NOLINT: implicit
  Result(Finding finding) : state_(std::in_place_index<1>, std::move(finding)) {}  // NOLINT

  [[nodiscard]] bool ok() const { return state_.index() == 0; }
  explicit operator bool() const { return ok(); }

  // Requires ok().
  T& value() & { assert(ok()); return *std::get_if<0>(&state_); }
  const T& value() const& { assert(ok()); return *std::get_if<0>(&state_); }
  T&& value() && { assert(ok()); return std::move(*std::get_if<0>(&state_)); }
  T& operator*() & { return value(); }
  const T& operator*() const& { return value(); }
  T* operator->() { return &value(); }
  const T* operator->() const { return &value(); }

  // Requires !ok().
  const Finding& finding() const { assert(!ok()); return *std::get_if<1>(&state_); }

 private:
  std::variant<T, Finding> state_;
};

struct Done {};
using Status = Result<Done>;

}  // namespace retort
