#include "document/utf8.h"

namespace retort {
namespace {
constexpr std::uint32_t kReplacement = 0xFFFD;
}

void append_utf8(std::uint32_t c, std::string& out) {
  if (c > 0x10FFFF || (c >= 0xD800 && c <= 0xDFFF)) c = kReplacement;
  auto put = [&](std::uint32_t byte) { out += static_cast<char>(byte); };
  auto tail = [&](unsigned shift) { put(0x80U | ((c >> shift) & 0x3FU)); };
  if (c < 0x80) {
    put(c);
  } else if (c < 0x800) {
    put(0xC0U | (c >> 6U)), tail(0);
  } else if (c < 0x10000) {
    put(0xE0U | (c >> 12U)), tail(6), tail(0);
  } else {
    put(0xF0U | (c >> 18U)), tail(12), tail(6), tail(0);
  }
}

std::uint32_t next_code_point(std::string_view text, std::size_t& at) {
  auto lead = static_cast<unsigned char>(text[at++]);
  if (lead < 0x80) return lead;
  std::size_t more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : lead >= 0xC0 ? 1 : 0;
  if (more == 0 || at + more > text.size()) return kReplacement;
  std::uint32_t c = lead & (0x3FU >> more);
  for (std::size_t i = 0; i < more; ++i) {
    auto byte = static_cast<unsigned char>(text[at + i]);
    if ((byte & 0xC0U) != 0x80U) return kReplacement;
    c = (c << 6U) | (byte & 0x3FU);
  }
  at += more;
  return c;
}

}  // namespace retort
