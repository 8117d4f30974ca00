// A .zip file, read entry by entry within limits. Word processors' files are .zip files as well.
//
// Nothing is ever unpacked to disk. An Archive may be moved, and is for one thread.
#pragma once
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "base/result.h"

namespace retort {

struct ArchiveLimits {
  std::uint64_t file_bytes = 512ULL << 20;  // of the file itself
  std::uint64_t entries = 10'000;
  std::uint64_t entry_bytes = 64ULL << 20;   // of one entry, unpacked
  std::uint64_t total_bytes = 512ULL << 20;  // of all that is read
  std::uint64_t ratio = 200;                 // unpacked to packed, of entries of more than a megabyte
};

class Archive {
 public:
  using Take = std::function<Status(std::string_view piece)>;

  // Reads from a copy of `fd`, which must be able to seek. `name` stands for the file in findings.
  static Result<Archive> open(int fd, const std::string& name, const ArchiveLimits& limits = {});

  [[nodiscard]] std::uint64_t size() const { return size_; }
  // The name of an entry as it stands in the file: untrusted bytes. "" if it has none.
  [[nodiscard]] std::string entry_name(std::uint64_t index) const;
  // The entry of this name, in any case of ASCII letters.
  [[nodiscard]] std::optional<std::uint64_t> find(const std::string& entry) const;
  // Unpacks an entry piece by piece. Fails as `take` does, or if the entry is damaged, locked or over a limit.
  Status read(std::uint64_t index, const Take& take);
  // The whole of an entry.
  Result<std::string> read(std::uint64_t index);

 private:
  struct Close {
    void operator()(void* handle) const;
  };
  std::unique_ptr<void, Close> handle_;  // libzip's
  std::string name_;
  ArchiveLimits limits_;
  std::uint64_t size_ = 0;
  std::uint64_t unpacked_ = 0;
};

// Whether the path of an entry stays below the folder it is unpacked in: relative, and nowhere "..".
bool stays_inside(std::string_view path);

}  // namespace retort
