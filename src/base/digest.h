// SHA-256 of bytes (FIPS 180-4), by Nettle: for naming content, and for drawing samples that do not depend on order.
// No state, any thread.
#pragma once
#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace retort {

using Digest = std::array<std::uint8_t, 32>;

Digest sha256(std::string_view bytes);
// 64 small hexadecimal digits.
std::string hex(const Digest& digest);
// 44 characters (RFC 4648, section 4), as Content-Security-Policy writes it.
std::string base64(const Digest& digest);

}  // namespace retort
