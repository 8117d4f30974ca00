// UTF-8 to UTF-16 with a way back, for ICU's iterators, which are fastest on UTF-16.
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace retort {

class Utf16Text {
 public:
  // Bytes that are not UTF-8 become U+FFFD, NUL becomes a space; both are counted.
  void assign(std::string_view bytes);

  [[nodiscard]] const std::u16string& units() const { return units_; }
  // The byte offset of UTF-16 index `index` (its end: units().size()).
  [[nodiscard]] std::uint32_t byte(std::int32_t index) const {
    auto i = static_cast<std::size_t>(index);
    return ascii_ ? static_cast<std::uint32_t>(i) : bytes_[i];
  }
  [[nodiscard]] bool ascii() const { return ascii_; }
  [[nodiscard]] std::uint32_t invalid_bytes() const { return invalid_; }
  [[nodiscard]] std::uint32_t nul_bytes() const { return nul_; }

 private:
  void assign_wide(std::string_view bytes);

  std::u16string units_;
  std::vector<std::uint32_t> bytes_;
  bool ascii_ = true;
  std::uint32_t invalid_ = 0;
  std::uint32_t nul_ = 0;
};

}  // namespace retort
