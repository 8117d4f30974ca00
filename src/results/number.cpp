#include "results/number.h"

#include <algorithm>
#include <array>
#include <string>

namespace retort::results {
namespace {

constexpr std::size_t kLongestNumber = 30;  // digits
constexpr int kHighestPower = 30;

constexpr std::string_view kMinus = "\u2212";
constexpr std::array<std::string_view, 10> kSuperscripts = {"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074", "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
constexpr std::array<std::string_view, 3> kSpaces = {" ", "\u00A0", "\u202F"};

bool digit(char c) { return c >= '0' && c <= '9'; }

bool take(std::string_view& text, std::string_view word) {
  if (!text.starts_with(word)) return false;
  text.remove_prefix(word.size());
  return true;
}

bool take_space(std::string_view& text) {
  return std::any_of(kSpaces.begin(), kSpaces.end(), [&](std::string_view space) { return take(text, space); });
}

void skip_spaces(std::string_view& text) {
  while (take_space(text)) {
  }
}

bool take_minus(std::string_view& text) {
  if (take(text, "-") || take(text, kMinus) || take(text, "\u2013")) return true;
  take(text, "+");
  return false;
}

// A mark between thousands, with three digits after it: its length, or 0.
std::size_t thousands_mark(std::string_view text, Comma comma) {
  std::string_view rest = text;
  bool mark = (comma == Comma::thousands && take(rest, ",")) || take_space(rest);
  bool three = mark && rest.size() >= 3 && std::all_of(rest.begin(), rest.begin() + 3, digit) && (rest.size() == 3 || !digit(rest[3]));
  return three ? text.size() - rest.size() : 0;
}

// The digits and the point of a number, marks between thousands left out. Empty if there are too many.
std::string take_digits(std::string_view& text, Comma comma) {
  std::string out;
  bool point = false;
  while (!text.empty() && out.size() <= kLongestNumber + 1) {
    char c = text.front();
    bool mark = !point && (c == '.' || (c == ',' && comma == Comma::decimal)) && (text.size() == 1 || !(c == ',' && text[1] == ' '));
    std::size_t thousands = point || out.empty() ? 0 : thousands_mark(text, comma);
    if (digit(c)) {
      out += c;
    } else if (thousands > 0) {
      text.remove_prefix(thousands);
      continue;
    } else if (mark) {
      out += '.';
      point = true;
    } else {
      break;
    }
    text.remove_prefix(1);
  }
  if (out.ends_with('.')) out.pop_back();
  return out.size() > kLongestNumber + 1 ? std::string() : out;
}

// A digit of a power, raised or not; -1 if there is none.
int take_power_digit(std::string_view& text) {
  if (!text.empty() && digit(text.front())) {
    int value = text.front() - '0';
    text.remove_prefix(1);
    return value;
  }
  for (int i = 0; i < 10; ++i) {
    if (take(text, kSuperscripts[static_cast<std::size_t>(i)])) return i;
  }
  return -1;
}

// "e-3", "× 10^-3", "x 10⁸": the power of ten, 0 if there is none; `text` is left as it is then.
int take_power(std::string_view& text) {
  std::string_view rest = text;
  if (!take(rest, "e") && !take(rest, "E")) {
    skip_spaces(rest);
    if (!take(rest, "\u00D7") && !take(rest, "x") && !take(rest, "*") && !take(rest, "\u00B7")) return 0;
    skip_spaces(rest);
    if (!take(rest, "10")) return 0;
    take(rest, "^");
  }
  bool minus = take(rest, "\u207B") || take_minus(rest);
  int power = take_power_digit(rest);
  if (power < 0) return 0;
  for (int next = take_power_digit(rest); next >= 0; next = take_power_digit(rest)) power = std::min(power * 10 + next, 1000);
  text = rest;
  return minus ? -power : power;
}

bool sensible(const Exact& value) {
  Exact size = abs(value);
  return size == 0 || (size <= power_of_ten(kHighestPower) && size >= power_of_ten(-kHighestPower));
}

}  // namespace

std::optional<NumberReading> read_number(std::string_view text, Comma comma) {
  skip_spaces(text);
  bool minus = take_minus(text);
  std::optional<Decimal> digits = read_decimal(take_digits(text, comma));
  if (!digits) return std::nullopt;
  int power = take_power(text);
  std::optional<Decimal> number = power == 0 ? digits : scaled(*digits, power);
  if (!number || std::abs(power) > kHighestPower || !sensible(number->value)) return std::nullopt;
  if (minus) number->value = -number->value;
  skip_spaces(text);
  return NumberReading{std::move(*number), text};
}

Twofold to_twofold(const Exact& value) {
  double high = value.get_d();
  double low = Exact(value - exact(high)).get_d();
  return twofold::quick_sum(high, low);
}

double to_double(const Exact& value) { return to_twofold(value).value(); }

Exact to_exact(Twofold value) {
  constexpr int kDigits = 25;
  Exact all = exact(value.high) + exact(value.low);
  return all == 0 ? all : rounded(all, first_place(all) - kDigits + 1);
}

}  // namespace retort::results
