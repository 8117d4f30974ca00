#include "calc/calculation.h"

namespace retort::calc {

std::string_view name(Verdict verdict) {
  switch (verdict) {
    case Verdict::right:
      return "right";
    case Verdict::wrong:
      return "wrong";
    case Verdict::unclear:
      break;
  }
  return "unclear";
}

std::string_view name(Slip slip) {
  switch (slip) {
    case Slip::power_of_ten:
      return "power-of-ten";
    case Slip::upside_down:
      return "upside-down";
    case Slip::operation:
      return "operation";
    case Slip::square:
      return "square";
    case Slip::rounding:
      return "rounding";
    case Slip::angle_mode:
      return "angle-mode";
    case Slip::count:
      return "count";
    case Slip::unit_wrong:
      return "unit-wrong";
    case Slip::chain:
      return "chain";
    case Slip::arithmetic:
      break;
  }
  return "arithmetic";
}

std::string_view name(Remark remark) {
  switch (remark) {
    case Remark::too_many_figures:
      return "too-many-figures";
    case Remark::too_few_figures:
      return "too-few-figures";
    case Remark::unit_missing:
      break;
  }
  return "unit-missing";
}

}  // namespace retort::calc
