// Files in: descriptors that close themselves, whole reads with a limit. Nothing here is kept beyond the call.
#pragma once
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "base/result.h"

namespace retort {

// An open file, closed at the end.
class Descriptor {
 public:
  explicit Descriptor(int fd = -1) : fd_(fd) {}
  Descriptor(Descriptor&& other) noexcept : fd_(std::exchange(other.fd_, -1)) {}
  Descriptor& operator=(Descriptor&& other) noexcept {
    std::swap(fd_, other.fd_);
    return *this;
  }
  ~Descriptor();
  [[nodiscard]] int get() const { return fd_; }
  [[nodiscard]] int release() { return std::exchange(fd_, -1); }

 private:
  int fd_;
};

// Opens `path` to read; findings call it `name`.
Result<Descriptor> open_file(const std::string& path, const std::string& name);

// What can be read from `file` on, at most `limit` bytes.
Result<std::string> read_rest(const Descriptor& file, const std::string& name, std::size_t limit);

// A file that exists in memory alone, with this content, to be read from its start; -1 if there is no memory.
Descriptor memory_file(std::string_view content);

// The content of a file of at most `limit` bytes.
Result<std::string> read_file(const std::string& path, std::size_t limit);

// The regular files of a folder and its subfolders, sorted by name; hidden ones are left out.
Result<std::vector<std::string>> list_folder(const std::string& path);

}  // namespace retort
