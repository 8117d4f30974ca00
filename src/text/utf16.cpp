#include "text/utf16.h"

#include <unicode/utf16.h>
#include <unicode/utf8.h>

#include <algorithm>

namespace retort {

void Utf16Text::assign(std::string_view bytes) {
  invalid_ = nul_ = 0;
  ascii_ = std::none_of(bytes.begin(), bytes.end(),
                        [](char c) { return (static_cast<unsigned char>(c) & 0x80) != 0; });
  if (!ascii_) {
    assign_wide(bytes);
    return;
  }
  units_.resize(bytes.size());
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    units_[i] = bytes[i] == '\0' ? u' ' : static_cast<char16_t>(bytes[i]);
    nul_ += bytes[i] == '\0' ? 1U : 0U;
  }
}

void Utf16Text::assign_wide(std::string_view bytes) {
  units_.clear();
  bytes_.clear();
  const auto* data = reinterpret_cast<const std::uint8_t*>(bytes.data());
  auto length = static_cast<std::int32_t>(bytes.size());
  for (std::int32_t i = 0; i < length;) {
    std::int32_t start = i;
    UChar32 c = 0;
    U8_NEXT(data, i, length, c);
    if (c < 0) {
      invalid_ += static_cast<std::uint32_t>(i - start);
      c = 0xFFFD;
    } else if (c == 0) {
      ++nul_;
      c = ' ';
    }
    if (U_IS_BMP(c)) {
      units_ += static_cast<char16_t>(c);
    } else {
      units_ += static_cast<char16_t>(U16_LEAD(c));
      bytes_.push_back(static_cast<std::uint32_t>(start));
      units_ += static_cast<char16_t>(U16_TRAIL(c));
    }
    bytes_.push_back(static_cast<std::uint32_t>(start));
  }
  bytes_.push_back(static_cast<std::uint32_t>(length));
}

}  // namespace retort
