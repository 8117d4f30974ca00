#include "calc/compare.h"

#include <algorithm>

namespace retort::calc {
namespace {

const Exact kTolerance(1, 1000000000000);  // of values with a root or a sine in them

bool same(const Exact& a, const Exact& b, bool rough) {
  if (a == b) return true;
  if (!rough) return false;
  Exact gap = abs(a - b);
  return gap <= abs(b) * kTolerance;
}

}  // namespace

bool is_rounded(const Exact& value, bool rough, const Decimal& stated) {
  Exact size = abs(value);
  Exact said = abs(stated.value);
  if (said == 0) return size == 0;
  int loose = std::min(stated.trailing_zeros, stated.figures - 2);
  for (int zeros = 0; zeros <= std::max(0, loose); ++zeros) {
    int place = stated.last_place + zeros;
    if (rounded(size, place) == said) return true;
    // a value that is rough may lie a hair below the half
    if (rough && (same(size, said, true) || rounded(size + size * kTolerance, place) == said)) return true;
  }
  return false;
}

bool is_badly_rounded(const Exact& value, bool rough, const Decimal& stated) {
  if (rough && same(abs(value), abs(stated.value), true)) return false;
  Exact size = abs(value);
  Exact said = abs(stated.value);
  if (said == 0 || stated.figures < 1) return false;
  int loose = std::max(0, std::min(stated.trailing_zeros, stated.figures - 1));
  for (int zeros = 0; zeros <= loose; ++zeros) {
    int place = stated.last_place + zeros;
    if (ends_by(size, place) || size == 0 || place > first_place(size)) continue;  // 5 is not cut to 10
    Exact below = cut(size, place);
    if (said == below || said == below + power_of_ten(place)) return true;
  }
  return false;
}

int power_apart(const Exact& value, bool rough, const Decimal& stated) {
  if (stated.value == 0 || value == 0) return 0;
  int near = first_place(abs(value)) - first_place(abs(stated.value));
  for (int n = near - 1; n <= near + 1; ++n) {
    if (n == 0 || n > 12 || n < -12) continue;
    if (is_rounded(value * power_of_ten(-n), rough, stated)) return n;
  }
  return 0;
}

std::string sensible(const Exact& exact_value, const Expression& from, const Decimal* stated, const std::string& unit) {
  // what a root or a sine leaves behind the twelfth figure is no part of the value
  Exact value = exact_value == 0 ? exact_value : rounded(exact_value, first_place(exact_value) - 12);
  int figures = 9;
  for (const Leaf& leaf : from.leaves) {
    if (leaf.figures <= 0) continue;
    bool count = leaf.last_place == 0 && !leaf.unit;  // a whole number without a unit may be exact
    if (!count) figures = std::min(figures, leaf.figures);
  }
  if (figures == 9) figures = 3;
  if (stated != nullptr) figures = std::max(figures, std::min(stated->figures, 4));
  figures = std::clamp(figures, 2, 4);
  std::string out;
  if (value != 0) {
    int place = first_place(abs(value)) - figures + 1;
    // what ends by itself is written whole; no zeros are added behind it
    int whole = place;
    while (whole > place - 4 && !ends_by(value, whole)) --whole;
    bool ends = ends_by(value, whole) && first_place(abs(value)) - whole < 6;
    if (ends) {
      while (whole < 0 && ends_by(value, whole + 1)) ++whole;
      if (whole > 0) whole = 0;
      if (first_place(abs(value)) < 6 && first_place(abs(value)) >= -3) out = written_to_place(value, whole);
    }
    if (out.empty()) out = written(value, figures);
  } else {
    out = "0";
  }
  if (unit.empty()) return out;
  return unit == "%" || unit == "\u00B0" ? out + (unit == "%" ? " %" : unit) : out + " " + unit;
}

}  // namespace retort::calc
