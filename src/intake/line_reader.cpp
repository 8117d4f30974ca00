#include "intake/line_reader.h"

#include <unistd.h>

#include <cerrno>
#include <cstring>

namespace retort {
namespace {
constexpr std::size_t kChunk = 1U << 16;
}

bool LineReader::fill() {
  if (end_) return false;
  if (at_ > 0) {
    buffer_.erase(0, at_);
    at_ = 0;
  }
  std::size_t before = buffer_.size();
  buffer_.resize(before + kChunk);
  ssize_t got = 0;
  do {
    got = ::read(fd_, buffer_.data() + before, kChunk);
  } while (got < 0 && errno == EINTR);
  if (got < 0) error_ = errno;
  buffer_.resize(before + (got > 0 ? static_cast<std::size_t>(got) : 0));
  if (got <= 0) end_ = true;
  return got > 0;
}

bool LineReader::buffered() const { return buffer_.find('\n', at_) != std::string::npos; }

int LineReader::peek() {
  for (std::size_t i = at_;; ++i) {
    if (i >= buffer_.size()) {
      std::size_t ahead = i - at_;
      if (!fill()) return -1;
      i = at_ + ahead;
    }
    constexpr std::string_view kBlank = " \t\r\n\xEF\xBB\xBF";  // and the byte order mark
    if (kBlank.find(buffer_[i]) == std::string_view::npos) return static_cast<unsigned char>(buffer_[i]);
  }
}

LineReader::Got LineReader::rest(std::string& out) {
  out.assign(buffer_, at_);
  at_ = buffer_.size();
  while (out.size() <= longest_ && fill()) {
    out += buffer_;
    at_ = buffer_.size();
  }
  if (out.size() > longest_) return Got::too_long;
  return error_ != 0 ? Got::failed : Got::line;
}

LineReader::Got LineReader::next(std::string_view& line) {
  std::size_t searched = 0;  // bytes from at_ on known to hold no line end
  bool dropped = false;
  for (;;) {
    std::size_t end = buffer_.find('\n', at_ + searched);
    bool last = end == std::string::npos && end_;
    if (last && at_ >= buffer_.size() && !dropped) return error_ != 0 ? Got::failed : Got::end;
    if (end != std::string::npos || last) {
      std::size_t stop = last ? buffer_.size() : end;
      line = std::string_view(buffer_).substr(at_, stop - at_);
      at_ = last ? stop : end + 1;
      ++number_;
      if (dropped || line.size() > longest_) return Got::too_long;
      if (line.ends_with('\r')) line.remove_suffix(1);
      return Got::line;
    }
    searched = buffer_.size() - at_;
    if (searched > longest_) {  // too long: forget what is there and go on to the line's end
      dropped = true;
      at_ = buffer_.size();
      searched = 0;
    }
    fill();
  }
}

}  // namespace retort
