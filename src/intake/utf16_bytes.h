// UTF-16 as it comes from a file, piece by piece, as UTF-8.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>

namespace retort {

class Utf16Bytes {
 public:
  explicit Utf16Bytes(bool big_endian) : big_endian_(big_endian) {}
  // Appends `bytes` to `out`. A unit or pair cut off at the end is kept for the next call; half a pair becomes U+FFFD.
  void append(std::string_view bytes, std::string& out);
  // Appends what was cut off at the very end.
  void finish(std::string& out);

 private:
  void unit(std::uint32_t value, std::string& out);

  bool big_endian_;
  int first_byte_ = -1;     // of a unit; -1: none
  std::uint32_t lead_ = 0;  // of a surrogate pair; 0: none
};

enum class Utf16Order { none, little, big };

// Whether `head` is UTF-16: it begins with a byte order mark, or every other byte of it is mostly NUL.
Utf16Order utf16_order(std::string_view head);

// `text` as UTF-8 if it is UTF-16 with a byte order mark; else as it stands.
std::string from_utf16(std::string text);

}  // namespace retort
