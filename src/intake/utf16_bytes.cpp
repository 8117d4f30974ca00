#include "intake/utf16_bytes.h"

#include <algorithm>
#include <array>

#include "document/utf8.h"

namespace retort {
namespace {
constexpr std::uint32_t kReplacement = 0xFFFD;
constexpr std::size_t kLookedAt = 4096;
}  // namespace

void Utf16Bytes::unit(std::uint32_t value, std::string& out) {
  bool second = value >= 0xDC00 && value <= 0xDFFF;
  if (lead_ != 0 && second) {
    append_utf8(0x10000U + ((lead_ - 0xD800U) << 10U) + (value - 0xDC00U), out);
    lead_ = 0;
    return;
  }
  if (lead_ != 0) append_utf8(kReplacement, out);
  lead_ = value >= 0xD800 && value <= 0xDBFF ? value : 0;
  if (lead_ == 0) append_utf8(value, out);
}

void Utf16Bytes::append(std::string_view bytes, std::string& out) {
  for (char c : bytes) {
    int byte = static_cast<unsigned char>(c);
    if (first_byte_ < 0) {
      first_byte_ = byte;
      continue;
    }
    int value = big_endian_ ? first_byte_ * 256 + byte : byte * 256 + first_byte_;
    first_byte_ = -1;
    unit(static_cast<std::uint32_t>(value), out);
  }
}

void Utf16Bytes::finish(std::string& out) {
  if (lead_ != 0 || first_byte_ >= 0) append_utf8(kReplacement, out);
  lead_ = 0;
  first_byte_ = -1;
}

Utf16Order utf16_order(std::string_view head) {
  if (head.starts_with("\xFF\xFE")) return Utf16Order::little;
  if (head.starts_with("\xFE\xFF")) return Utf16Order::big;
  std::size_t size = std::min(head.size(), kLookedAt) & ~std::size_t{1};
  std::array<std::size_t, 2> nul{};
  for (std::size_t i = 0; i < size; ++i) nul[i % 2] += head[i] == '\0' ? 1 : 0;
  if (size < 8) return Utf16Order::none;
  if (nul[1] > size / 4 && nul[0] < size / 20) return Utf16Order::little;
  if (nul[0] > size / 4 && nul[1] < size / 20) return Utf16Order::big;
  return Utf16Order::none;
}

std::string from_utf16(std::string text) {
  bool marked = text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF");
  if (!marked) return text;
  Utf16Bytes decoder(text.front() == '\xFE');
  std::string out;
  decoder.append(std::string_view(text).substr(2), out);
  decoder.finish(out);
  return out;
}

}  // namespace retort
