#include "document/scripts.h"

#include <array>
#include <cctype>
#include <utility>

#include "document/utf8.h"

namespace retort {
namespace {

using Pair = std::pair<std::uint32_t, std::uint32_t>;

constexpr std::array<Pair, 12> kRaised = {{{'+', 0x207A},
                                           {'-', 0x207B},
                                           {0x2212, 0x207B},
                                           {0x2013, 0x207B},
                                           {'=', 0x207C},
                                           {'(', 0x207D},
                                           {')', 0x207E},
                                           {'n', 0x207F},
                                           {'1', 0xB9},
                                           {'2', 0xB2},
                                           {'3', 0xB3},
                                           {'0', 0x2070}}};

// Letters and signs of the font "Symbol" that physics uses.
constexpr std::array<Pair, 62> kSymbol = {
    {{0x2D, 0x2212}, {0x41, 0x391},  {0x42, 0x392},  {0x44, 0x394},  {0x46, 0x3A6},  {0x47, 0x393},  {0x4C, 0x39B},  {0x50, 0x3A0},  {0x51, 0x398},
     {0x53, 0x3A3},  {0x57, 0x3A9},  {0x58, 0x39E},  {0x59, 0x3A8},  {0x61, 0x3B1},  {0x62, 0x3B2},  {0x63, 0x3C7},  {0x64, 0x3B4},  {0x65, 0x3B5},
     {0x66, 0x3C6},  {0x67, 0x3B3},  {0x68, 0x3B7},  {0x69, 0x3B9},  {0x6A, 0x3D5},  {0x6B, 0x3BA},  {0x6C, 0x3BB},  {0x6D, 0x3BC},  {0x6E, 0x3BD},
     {0x6F, 0x3BF},  {0x70, 0x3C0},  {0x71, 0x3B8},  {0x72, 0x3C1},  {0x73, 0x3C3},  {0x74, 0x3C4},  {0x75, 0x3C5},  {0x77, 0x3C9},  {0x78, 0x3BE},
     {0x79, 0x3C8},  {0x7A, 0x3B6},  {0xA2, 0x2032}, {0xA3, 0x2264}, {0xA4, 0x2F},   {0xA5, 0x221E}, {0xAC, 0x2190}, {0xAD, 0x2191}, {0xAE, 0x2192},
     {0xAF, 0x2193}, {0xB0, 0xB0},   {0xB1, 0xB1},   {0xB2, 0x2033}, {0xB3, 0x2265}, {0xB4, 0xD7},   {0xB5, 0x221D}, {0xB7, 0x2022}, {0xB8, 0xF7},
     {0xB9, 0x2260}, {0xBA, 0x2261}, {0xBB, 0x2248}, {0xD0, 0x2220}, {0xD6, 0x221A}, {0xD7, 0x22C5}, {0xDE, 0x21D2}, {0xE5, 0x2211}}};

template <std::size_t n>
std::uint32_t look_up(const std::array<Pair, n>& table, std::uint32_t key) {
  for (const Pair& pair : table) {
    if (pair.first == key) return pair.second;
  }
  return 0;
}

std::uint32_t raised(std::uint32_t c) {
  if (c >= '4' && c <= '9') return 0x2070 + (c - '0');
  return look_up(kRaised, c);
}

// All of `text` raised; "" if some of it has no raised form.
std::string raise(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    std::uint32_t c = raised(next_code_point(text, at));
    if (c == 0) return "";
    append_utf8(c, out);
  }
  return out;
}

bool digit(char c) {
  return std::isdigit(static_cast<unsigned char>(c)) != 0;
}

// Whether a degree may follow: a number, other than the 10 of a power of ten.
bool behind_number(std::string_view before) {
  if (before.empty() || !digit(before.back())) return false;
  bool ten = before.ends_with("10") && (before.size() == 2 || (!digit(before[before.size() - 3]) && before[before.size() - 3] != '.'));
  return !ten;
}

bool ordinal(std::string_view text) {
  return text == "st" || text == "nd" || text == "rd" || text == "th";
}

std::string superscript(std::string_view text, std::string_view before) {
  bool ring = text == "o" || text == "O" || text == "\xC2\xB0" || text == "\xC2\xBA";
  if (ring || (text == "0" && behind_number(before))) return "\xC2\xB0";
  if (ordinal(text)) return std::string(text);
  std::string up = raise(text);
  if (!up.empty()) return up;
  bool odd = before.empty() || before.back() == ' ' || before.back() == '\n';
  if (odd) return std::string(text);  // raised, but over nothing: no power
  bool single = text.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.") == std::string_view::npos;
  return single ? "^" + std::string(text) : "^(" + std::string(text) + ")";
}

// Mathematical Alphanumeric Symbols: alphabets of 52 Latin letters, of 58 Greek ones, of ten digits, each in order.
std::uint32_t without_style(std::uint32_t c) {
  if (c == 0x210E) return 'h';  // the hole for italic h
  if (c < 0x1D400 || c > 0x1D7FF) return c;
  if (c >= 0x1D7CE) return '0' + (c - 0x1D7CE) % 10;
  if (c >= 0x1D6A8 && c <= 0x1D7C9) {
    std::uint32_t letter = (c - 0x1D6A8) % 58;
    if (letter < 25) return 0x391 + letter;
    if (letter == 25) return 0x2207;
    if (letter < 51) return 0x3B1 + (letter - 26);
    constexpr std::array<std::uint32_t, 7> kVariants = {0x2202, 0x3B5, 0x3B8, 0x3BA, 0x3C6, 0x3C1, 0x3C0};
    return kVariants[letter - 51];
  }
  if (c > 0x1D6A3) return c;
  std::uint32_t letter = (c - 0x1D400) % 52;
  return letter < 26 ? 'A' + letter : 'a' + (letter - 26);
}

bool invisible(std::uint32_t c) {
  return c == 0xAD || (c >= 0x200B && c <= 0x200D) || (c >= 0x2060 && c <= 0x2064) || c == 0xFEFF;
}

}  // namespace

std::string in_line(Script script, std::string_view text, std::string_view before) {
  if (script != Script::super) return std::string(text);
  constexpr std::string_view kAround = " ";
  constexpr std::string_view kBehind = " .,;:";
  std::size_t begin = text.find_first_not_of(kAround);
  std::size_t end = text.find_last_not_of(kBehind);
  if (begin == std::string_view::npos || end == std::string_view::npos || end < begin) return std::string(text);
  std::string head(text.substr(0, begin));
  std::string tail(text.substr(end + 1));
  return head + superscript(text.substr(begin, end + 1 - begin), head.empty() ? before : head) + tail;
}

std::uint32_t symbol_font(std::uint32_t code) {
  std::uint32_t sign = look_up(kSymbol, code);
  bool same = (code >= 0x20 && code <= 0x3F) || code == '[' || code == ']' || code == '{' || code == '|' || code == '}';
  return sign == 0 && same ? code : sign;
}

void append_plain(std::string_view text, std::string& out) {
  for (std::size_t at = 0; at < text.size();) {
    std::uint32_t c = next_code_point(text, at);
    if (invisible(c)) continue;
    if (c == 0x2011) c = '-';
    if (c < 0x20) c = ' ';
    if (c >= 0xF020 && c <= 0xF0FF) c = symbol_font(c - 0xF000);
    if (c != 0) append_utf8(without_style(c), out);
  }
}

}  // namespace retort
