#include "document/archive.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>
#include <zip.h>

#include <algorithm>
#include <cerrno>
#include <cstring>

namespace retort {
namespace {

constexpr std::size_t kPiece = 1U << 16;
constexpr std::uint64_t kRatioFrom = 1U << 20;

zip_t* zip_of(void* handle) {
  return static_cast<zip_t*>(handle);
}

std::string words(int zip_error) {
  zip_error_t error;
  zip_error_init_with_code(&error, zip_error);
  std::string out = zip_error_strerror(&error);
  zip_error_fini(&error);
  return out;
}

// The head of the container in which older word processors write, and newer ones what is locked with a password ([MS-CFB] 2.2).
bool is_compound_file(int fd) {
  char head[8];
  return ::pread(fd, head, sizeof head, 0) == 8 && std::memcmp(head, "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1", 8) == 0;
}

struct CloseEntry {
  void operator()(zip_file_t* file) const { zip_fclose(file); }
};

}  // namespace

void Archive::Close::operator()(void* handle) const {
  zip_discard(zip_of(handle));
}

Result<Archive> Archive::open(int fd, const std::string& name, const ArchiveLimits& limits) {
  struct stat info {};
  if (::fstat(fd, &info) != 0) return make_finding(Code::file_unreadable, name, {std::strerror(errno)});  // NOLINT
  auto bytes = static_cast<std::uint64_t>(info.st_size);
  if (bytes > limits.file_bytes) return make_finding(Code::file_too_large, name, {std::to_string(bytes), std::to_string(limits.file_bytes)});
  if (is_compound_file(fd)) return make_finding(Code::document_protected, name);
  int copy = ::fcntl(fd, F_DUPFD_CLOEXEC, 0);
  if (copy < 0) return make_finding(Code::file_unreadable, name, {std::strerror(errno)});  // NOLINT
  int error = 0;
  zip_t* opened = zip_fdopen(copy, 0, &error);
  if (opened == nullptr) {
    ::close(copy);
    return make_finding(Code::document_damaged, name, {bytes == 0 ? "it is empty" : words(error)});
  }
  Archive out;
  out.handle_.reset(opened);
  out.name_ = name;
  out.limits_ = limits;
  out.size_ = static_cast<std::uint64_t>(std::max<zip_int64_t>(0, zip_get_num_entries(opened, 0)));
  if (out.size_ > limits.entries) return make_finding(Code::archive_too_many, name, {std::to_string(out.size_), std::to_string(limits.entries)});
  return out;
}

std::string Archive::entry_name(std::uint64_t index) const {
  const char* name = zip_get_name(zip_of(handle_.get()), index, ZIP_FL_ENC_GUESS);
  return name == nullptr ? "" : name;
}

std::optional<std::uint64_t> Archive::find(const std::string& entry) const {
  zip_int64_t at = zip_name_locate(zip_of(handle_.get()), entry.c_str(), ZIP_FL_NOCASE | ZIP_FL_ENC_RAW);
  if (at < 0) return std::nullopt;
  return static_cast<std::uint64_t>(at);
}

Status Archive::read(std::uint64_t index, const Take& take) {
  zip_t* zip = zip_of(handle_.get());
  zip_stat_t stat;
  if (zip_stat_index(zip, index, 0, &stat) != 0) return make_finding(Code::document_damaged, name_, {zip_strerror(zip)});
  if ((stat.valid & ZIP_STAT_ENCRYPTION_METHOD) != 0 && stat.encryption_method != ZIP_EM_NONE) return make_finding(Code::document_protected, name_);
  std::unique_ptr<zip_file_t, CloseEntry> file(zip_fopen_index(zip, index, 0));
  if (!file) return make_finding(Code::document_damaged, name_, {zip_strerror(zip)});
  std::uint64_t packed = (stat.valid & ZIP_STAT_COMP_SIZE) != 0 ? stat.comp_size : 0;
  std::uint64_t entry = 0;
  char piece[kPiece];
  for (;;) {
    zip_int64_t got = zip_fread(file.get(), piece, sizeof piece);
    if (got < 0) return make_finding(Code::document_damaged, name_, {zip_file_strerror(file.get())});
    if (got == 0) return Done{};
    auto bytes = static_cast<std::uint64_t>(got);
    entry += bytes;
    unpacked_ += bytes;
    bool swollen = entry > kRatioFrom && entry / limits_.ratio > packed;
    if (swollen || entry > limits_.entry_bytes || unpacked_ > limits_.total_bytes)
      return make_finding(Code::archive_too_large, name_,
                          {std::to_string(unpacked_ > limits_.total_bytes ? limits_.total_bytes : limits_.entry_bytes)});
    Status taken = take({piece, bytes});
    if (!taken) return taken;
  }
}

Result<std::string> Archive::read(std::uint64_t index) {
  std::string out;
  Status read_whole = read(index, [&](std::string_view piece) -> Status {
    out += piece;
    return Done{};
  });
  if (!read_whole) return read_whole.finding();
  return out;
}

bool stays_inside(std::string_view path) {
  if (path.empty() || path.front() == '/' || path.front() == '\\' || path.find('\0') != std::string_view::npos) return false;
  if (path.size() >= 2 && path[1] == ':') return false;
  while (!path.empty()) {
    std::size_t slash = path.find_first_of("/\\");
    if (path.substr(0, slash) == "..") return false;
    path = slash == std::string_view::npos ? std::string_view() : path.substr(slash + 1);
  }
  return true;
}

}  // namespace retort
