#include "report/utf8.h"

namespace retort {

std::size_t utf8_sequence(std::string_view text, std::size_t at) {
  auto byte = [&](std::size_t i) { return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U; };
  auto tail = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
  unsigned lead = byte(0);
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead <= 0xDF) return tail(1) ? 2 : 0;
  if (lead >= 0xE0 && lead <= 0xEF) {
    bool second = tail(1) && (lead != 0xE0 || byte(1) >= 0xA0) && (lead != 0xED || byte(1) < 0xA0);
    return second && tail(2) ? 3 : 0;
  }
  if (lead >= 0xF0 && lead <= 0xF4) {
    bool second = tail(1) && (lead != 0xF0 || byte(1) >= 0x90) && (lead != 0xF4 || byte(1) < 0x90);
    return second && tail(2) && tail(3) ? 4 : 0;
  }
  return 0;
}

}  // namespace retort
