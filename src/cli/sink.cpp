#include "cli/sink.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>

namespace retort::cli {
namespace {
constexpr std::size_t kBuffer = 1U << 16;
}

Sink::Sink(std::string path) : path_(std::move(path)) {
  if (path_.empty()) return;
  struct stat info {};
  bool special = ::stat(path_.c_str(), &info) == 0 && !S_ISREG(info.st_mode);
  if (special) {
    fd_ = ::open(path_.c_str(), O_WRONLY | O_CLOEXEC);
  } else {
    draft_ = path_ + ".XXXXXX";
    fd_ = ::mkstemp(draft_.data());
  }
  if (fd_ < 0) fail(errno);
}

Sink::~Sink() {
  if (closed_) return;
  if (fd_ > 1) ::close(fd_);
  if (!draft_.empty() && fd_ >= 0) ::unlink(draft_.c_str());
}

bool Sink::fail(int error) {
  if (good_) error_ = error;
  good_ = false;
  return false;
}

bool Sink::write(std::string_view text) {
  if (!good_) return false;
  buffer_ += text;
  return buffer_.size() < kBuffer || flush();
}

bool Sink::flush() {
  std::string_view rest = buffer_;
  while (good_ && !rest.empty()) {
    ssize_t written = ::write(fd_, rest.data(), rest.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return fail(errno);
    rest.remove_prefix(static_cast<std::size_t>(written));
  }
  buffer_.clear();
  return good_;
}

bool Sink::close() {
  if (!flush()) return false;
  if (!draft_.empty()) {
    mode_t mask = ::umask(0);
    ::umask(mask);
    if (::fchmod(fd_, 0666 & ~mask) != 0) return fail(errno);
  }
  if (fd_ > 1 && ::close(fd_) != 0) return fail(errno);
  fd_ = -1;
  if (!draft_.empty() && ::rename(draft_.c_str(), path_.c_str()) != 0) {
    fail(errno);
    ::unlink(draft_.c_str());
    closed_ = true;
    return false;
  }
  closed_ = true;
  return true;
}

Finding Sink::finding() const {
  if (error_ == EPIPE) return make_finding(Code::output_closed, path_);
  return make_finding(Code::write_failed, path_.empty() ? "standard output" : path_, {std::strerror(error_)});  // NOLINT
}

}  // namespace retort::cli
