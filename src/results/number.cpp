#include "results/number.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdio>

namespace retort {
namespace {

constexpr int kMostDigits = 30;
constexpr int kMostPower = 30;

bool digit(char c) { return c >= '0' && c <= '9'; }

constexpr std::string_view kMinus = "\xE2\x88\x92";
constexpr std::array<std::string_view, 10> kSuperscripts = {"\xE2\x81\xB0", "\xC2\xB9",     "\xC2\xB2",     "\xC2\xB3",     "\xE2\x81\xB4",
                                                            "\xE2\x81\xB5", "\xE2\x81\xB6", "\xE2\x81\xB7", "\xE2\x81\xB8", "\xE2\x81\xB9"};
constexpr std::string_view kSuperMinus = "\xE2\x81\xBB";

bool take(std::string_view& text, std::string_view word) {
  if (!text.starts_with(word)) return false;
  text.remove_prefix(word.size());
  return true;
}

void skip_spaces(std::string_view& text) {
  while (take(text, " ") || take(text, "\xC2\xA0") || take(text, "\xE2\x80\xAF")) {
  }
}

// A sign if there is one: -1 or 1.
int take_sign(std::string_view& text) {
  if (take(text, "-") || take(text, kMinus) || take(text, "\xE2\x80\x93")) return -1;
  take(text, "+");
  return 1;
}

// The digits of a number and its point, as written.
struct Digits {
  Twofold value;  // as a whole number
  int count = 0;
  int places = 0;
  int significant = 0;
  bool point = false;

  void add(char c) {
    ++count;
    if (point) ++places;
    if (c != '0' || significant > 0) ++significant;
    value = value * 10.0 + Twofold(c - '0');
  }
};

bool three_digits_follow(std::string_view text, std::size_t at) {
  return at + 3 <= text.size() && digit(text[at]) && digit(text[at + 1]) && digit(text[at + 2]) && (at + 3 == text.size() || !digit(text[at + 3]));
}

// A mark between thousands: its length, or 0.
std::size_t thousands_mark(std::string_view text, Comma comma) {
  for (std::string_view mark : {std::string_view(","), std::string_view(" "), std::string_view("\xC2\xA0"), std::string_view("\xE2\x80\xAF")}) {
    if (mark == "," && comma == Comma::decimal) continue;
    if (text.starts_with(mark) && three_digits_follow(text, mark.size())) return mark.size();
  }
  return 0;
}

bool read_digits_of(std::string_view& text, Comma comma, Digits& out) {
  while (!text.empty()) {
    bool point = text.front() == '.' || (text.front() == ',' && comma == Comma::decimal);
    if (digit(text.front())) {
      out.add(text.front());
      text.remove_prefix(1);
    } else if (point && !out.point) {
      out.point = true;
      text.remove_prefix(1);
    } else if (std::size_t mark = thousands_mark(text, comma); mark > 0 && !out.point && out.count > 0) {
      text.remove_prefix(mark);
    } else {
      break;
    }
    if (out.count > kMostDigits) return false;
  }
  return out.count > 0;
}

bool take_power_digit(std::string_view& text, int& power) {
  int value = -1;
  if (!text.empty() && digit(text.front())) {
    value = text.front() - '0';
    text.remove_prefix(1);
  }
  for (int i = 0; value < 0 && i < 10; ++i) {
    if (take(text, kSuperscripts[static_cast<std::size_t>(i)])) value = i;
  }
  if (value < 0) return false;
  power = std::min(power * 10 + value, 1000);
  return true;
}

// "e-3", "× 10^-3", "x 10⁸": the power of ten, 0 if there is none. Leaves `text` as it is then.
int read_power(std::string_view& text) {
  std::string_view rest = text;
  bool letter = take(rest, "e") || take(rest, "E");
  if (!letter) {
    skip_spaces(rest);
    if (!take(rest, "\xC3\x97") && !take(rest, "x") && !take(rest, "*") && !take(rest, "\xC2\xB7")) return 0;
    skip_spaces(rest);
    if (!take(rest, "10")) return 0;
    take(rest, "^");
  }
  int sign = take(rest, kSuperMinus) ? -1 : take_sign(rest);
  int power = 0;
  bool any = false;
  while (take_power_digit(rest, power)) any = true;
  if (!any) return 0;
  text = rest;
  return sign * power;
}

std::string superscript(int power) {
  std::string out = power < 0 ? std::string(kSuperMinus) : "";
  for (char c : std::to_string(power < 0 ? -power : power)) out += kSuperscripts[static_cast<std::size_t>(c - '0')];
  return out;
}

// The largest whole number that is not above `value`. Requires |value| < 1e30.
Twofold floor_of(Twofold value) {
  double high = std::floor(value.high);
  return high == value.high ? twofold::quick_sum(high, std::floor(value.low)) : Twofold(high);
}

std::string whole_text(Twofold value) {
  std::string out;
  constexpr double kChunk = 1e9;
  while (value.high >= kChunk) {
    Twofold left = floor_of(value / kChunk);
    char part[16];
    std::snprintf(part, sizeof part, "%09.0f", (value - left * kChunk).value());
    out.insert(0, part);
    value = left;
  }
  char part[16];
  std::snprintf(part, sizeof part, "%.0f", value.value());
  return part + out;
}

}  // namespace

std::optional<NumberReading> read_number(std::string_view text, Comma comma) {
  skip_spaces(text);
  int sign = take_sign(text);
  Digits digits;
  if (!read_digits_of(text, comma, digits)) return std::nullopt;
  int power = read_power(text);
  if (power > kMostPower || power < -kMostPower || digits.places > kMostDigits) return std::nullopt;
  Number number;
  number.places = digits.places - power;
  number.figures = digits.significant;
  Twofold scale = power_of_ten(number.places < 0 ? -number.places : number.places);
  number.value = (number.places < 0 ? digits.value * scale : digits.value / scale) * static_cast<double>(sign);
  if (number.value.high == 0) number.value = {};
  double size = std::fabs(number.value.value());
  if (size > 1e30 || (size != 0 && size < 1e-30)) return std::nullopt;
  skip_spaces(text);
  return NumberReading{number, text};
}

Twofold rounded(Twofold value, int places) {
  Twofold scale = power_of_ten(places < 0 ? -places : places);
  Twofold size = abs(value);
  size = places < 0 ? size / scale : size * scale;
  constexpr double kSlack = 1e-20;  // a mean such as 0.35 may come out a hair below its half
  Twofold whole = floor_of(size + Twofold(0.5) + size * kSlack);
  whole = places < 0 ? whole * scale : whole / scale;
  return value.high < 0 ? -whole : whole;
}

std::string fixed_text(Twofold value, int places) {
  Twofold kept = rounded(value, places);
  int shown = std::max(places, 0);
  constexpr double kMostShown = 1e25;  // beyond, a Twofold has not all the digits
  if (std::fabs(kept.value()) * power_of_ten(shown).value() > kMostShown) return figures_text(value, 15);
  Twofold whole = rounded(abs(kept) * power_of_ten(shown), 0);
  std::string digits = whole_text(whole);
  if (shown > 0) {
    if (digits.size() <= static_cast<std::size_t>(shown)) digits.insert(0, static_cast<std::size_t>(shown) + 1 - digits.size(), '0');
    digits.insert(digits.size() - static_cast<std::size_t>(shown), ".");
  }
  return (kept.high < 0 ? std::string(kMinus) : "") + digits;
}

int places_for(Twofold value, int figures) {
  double size = std::fabs(value.value());
  if (size == 0 || !std::isfinite(size)) return figures - 1;
  int places = figures - 1 - static_cast<int>(std::floor(std::log10(size)));
  // 9.96 to two figures is 10, which has one place fewer
  double up = std::fabs(rounded(value, places).value());
  int again = up == 0 ? places : figures - 1 - static_cast<int>(std::floor(std::log10(up * (1 + 1e-14))));
  return std::min(places, again);
}

std::string figures_text(Twofold value, int figures) {
  int places = places_for(value, figures);
  double size = std::fabs(value.value());
  if (size == 0) return "0";
  bool standard = size >= 1e5 || size < 1e-3;
  if (!standard) return fixed_text(value, places);
  int power = figures - 1 - places;
  Twofold scale = power_of_ten(power < 0 ? -power : power);
  return fixed_text(power < 0 ? value * scale : value / scale, figures - 1) + " \xC3\x97 10" + superscript(power);
}

Number scaled(const Number& number, Twofold factor) {
  Number out = number;
  out.value = number.value * factor;
  double ratio = std::log10(std::fabs(factor.value()));
  out.places = number.places - static_cast<int>(std::lround(std::floor(ratio + 1e-9)));
  return out;
}

}  // namespace retort
