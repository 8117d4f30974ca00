#include "base/digest.h"

#include <nettle/base64.h>
#include <nettle/sha2.h>

namespace retort {

Digest sha256(std::string_view bytes) {
  sha256_ctx context;
  nettle_sha256_init(&context);
  nettle_sha256_update(&context, bytes.size(), reinterpret_cast<const std::uint8_t*>(bytes.data()));
  Digest out{};
  nettle_sha256_digest(&context, out.size(), out.data());
  return out;
}

std::string hex(const Digest& digest) {
  constexpr char kDigits[] = "0123456789abcdef";
  std::string out;
  for (std::uint8_t byte : digest) {
    out += kDigits[byte >> 4U];
    out += kDigits[byte & 15U];
  }
  return out;
}

std::string base64(const Digest& digest) {
  std::string out(BASE64_ENCODE_RAW_LENGTH(std::tuple_size_v<Digest>), '\0');
  nettle_base64_encode_raw(out.data(), digest.size(), digest.data());
  return out;
}

}  // namespace retort
