#include "report/advice.h"

#include "base/messages.h"

namespace retort {
namespace {

Code code(calc::Remark remark) {
  switch (remark) {
    case calc::Remark::too_many_figures:
      return Code::remark_too_many_figures;
    case calc::Remark::too_few_figures:
      return Code::remark_too_few_figures;
    case calc::Remark::unit_missing:
      break;
  }
  return Code::remark_unit_missing;
}

Code code(calc::Doubt doubt) {
  switch (doubt) {
    case calc::Doubt::divides_by_zero:
      return Code::doubt_divides_by_zero;
    case calc::Doubt::no_value:
      return Code::doubt_no_value;
    case calc::Doubt::too_large:
      return Code::doubt_too_large;
    case calc::Doubt::value_missing:
    case calc::Doubt::none:
      break;
  }
  return Code::doubt_value_missing;
}

std::string sentence(Code which) {
  const Message& words = message(which);
  return std::string(words.what) + " " + std::string(words.todo);
}

}  // namespace

Code slip_code(calc::Slip slip) {
  switch (slip) {
    case calc::Slip::power_of_ten:
      return Code::slip_power_of_ten;
    case calc::Slip::upside_down:
      return Code::slip_upside_down;
    case calc::Slip::operation:
      return Code::slip_operation;
    case calc::Slip::square:
      return Code::slip_square;
    case calc::Slip::rounding:
      return Code::slip_rounding;
    case calc::Slip::angle_mode:
      return Code::slip_angle_mode;
    case calc::Slip::count:
      return Code::slip_count;
    case calc::Slip::unit_wrong:
      return Code::slip_unit_wrong;
    case calc::Slip::chain:
      return Code::slip_chain;
    case calc::Slip::arithmetic:
      break;
  }
  return Code::slip_arithmetic;
}

std::string advice(const calc::Calculation& c) {
  std::string out;
  auto add = [&](Code which) { out += (out.empty() ? "" : " ") + sentence(which); };
  if (c.verdict == calc::Verdict::unclear) add(code(c.doubt));
  for (calc::Slip slip : c.slips) add(slip_code(slip));
  for (calc::Remark remark : c.remarks) add(code(remark));
  return out;
}

std::string slip_words(std::string_view slip) {
  for (int i = 0; i <= static_cast<int>(calc::Slip::chain); ++i) {
    auto each = static_cast<calc::Slip>(i);
    if (slip == calc::name(each)) return std::string(message(slip_code(each)).what);
  }
  return std::string(slip);
}

}  // namespace retort
