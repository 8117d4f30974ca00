#include "intake/windows_text.h"

#include <array>
#include <cstdint>

namespace retort {
namespace {

// What the bytes 0x80 to 0x9F stand for; the others above 0x7F are the code points of the same number.
constexpr std::array<std::uint16_t, 32> kWindows = {0x20AC, 0x81,   0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
                                                    0x2039, 0x0152, 0x8D,   0x017D, 0x8F,   0x90,   0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
                                                    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D,   0x017E, 0x0178};

// The length of the UTF-8 sequence at `at`, 0 if there is none (Unicode 15.0, table 3-7).
std::size_t sequence(std::string_view text, std::size_t at) {
  auto byte = [&](std::size_t i) { return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U; };
  unsigned lead = byte(0);
  if (lead < 0x80) return 1;
  std::size_t length = lead >= 0xC2 && lead <= 0xDF ? 2 : lead >= 0xE0 && lead <= 0xEF ? 3 : lead >= 0xF0 && lead <= 0xF4 ? 4 : 0;
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0U) != 0x80U) return 0;
  }
  bool wrong = (lead == 0xE0 && byte(1) < 0xA0) || (lead == 0xED && byte(1) >= 0xA0) || (lead == 0xF0 && byte(1) < 0x90) || (lead == 0xF4 && byte(1) >= 0x90);
  return wrong ? 0 : length;
}

void append(std::uint32_t c, std::string& out) {
  auto put = [&](std::uint32_t byte) { out += static_cast<char>(byte); };
  if (c < 0x800) {
    put(0xC0U | (c >> 6U)), put(0x80U | (c & 0x3FU));
  } else {
    put(0xE0U | (c >> 12U)), put(0x80U | ((c >> 6U) & 0x3FU)), put(0x80U | (c & 0x3FU));
  }
}

}  // namespace

std::string as_utf8(std::string_view text, std::size_t& odd) {
  bool good = true;
  for (std::size_t i = 0; good && i < text.size();) {
    std::size_t length = sequence(text, i);
    good = length > 0;
    i += length;
  }
  if (good) return std::string(text);
  std::string out;
  for (char c : text) {
    auto byte = static_cast<unsigned char>(c);
    if (byte < 0x80) {
      out += c;
      continue;
    }
    ++odd;
    append(byte < 0xA0 ? kWindows[byte - 0x80U] : byte, out);
  }
  return out;
}

}  // namespace retort
