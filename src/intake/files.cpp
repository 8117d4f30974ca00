#include "intake/files.h"

#include <fcntl.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>

namespace retort {
namespace fs = std::filesystem;
namespace {

std::string why(int error) {
  return std::strerror(error);
}  // NOLINT: messages are copied at once

}  // namespace

Descriptor::~Descriptor() {
  if (fd_ >= 0) ::close(fd_);
}

Result<Descriptor> open_file(const std::string& path, const std::string& name) {
  Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (file.get() >= 0) return file;
  if (errno == ENOENT || errno == ENOTDIR) return make_finding(Code::file_missing, name);
  return make_finding(Code::file_unreadable, name, {why(errno)});
}

Result<std::string> read_rest(const Descriptor& file, const std::string& name, std::size_t limit) {
  struct stat info {};
  if (::fstat(file.get(), &info) == 0 && S_ISREG(info.st_mode) && static_cast<std::size_t>(info.st_size) > limit) {
    return make_finding(Code::file_too_large, name, {std::to_string(info.st_size), std::to_string(limit)});
  }
  std::string content;
  char buffer[1 << 16];
  for (;;) {
    ssize_t got = ::read(file.get(), buffer, sizeof buffer);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return make_finding(Code::file_unreadable, name, {why(errno)});
    if (got == 0) return content;
    content.append(buffer, static_cast<std::size_t>(got));
    if (content.size() > limit) return make_finding(Code::file_too_large, name, {"more than " + std::to_string(limit), std::to_string(limit)});
  }
}

Descriptor memory_file(std::string_view content) {
  Descriptor file(::memfd_create("retort", MFD_CLOEXEC));
  std::size_t done = 0;
  while (file.get() >= 0 && done < content.size()) {
    ssize_t written = ::pwrite(file.get(), content.data() + done, content.size() - done, static_cast<off_t>(done));
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return Descriptor();
    done += static_cast<std::size_t>(written);
  }
  return file;
}

Result<std::string> read_file(const std::string& path, std::size_t limit) {
  Result<Descriptor> file = open_file(path, path);
  if (!file) return file.finding();
  return read_rest(*file, path, limit);
}

Result<std::vector<std::string>> list_folder(const std::string& path) {
  std::vector<std::string> out;
  std::error_code error;
  fs::recursive_directory_iterator at(path, fs::directory_options::skip_permission_denied, error);
  if (error) return make_finding(Code::file_unreadable, path, {error.message()});
  while (at != fs::recursive_directory_iterator()) {
    std::string name = at->path().filename().string();
    std::error_code ignored;
    if (name.starts_with('.')) {
      if (at->is_directory(ignored)) at.disable_recursion_pending();
    } else if (at->is_regular_file(ignored)) {
      out.push_back(at->path().string());
    }
    at.increment(error);
    if (error) return make_finding(Code::file_unreadable, path, {error.message()});
  }
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace retort
