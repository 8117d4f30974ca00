// Lines from a file descriptor, in memory that does not grow: a line over the limit is passed over.
#pragma once
#include <cstddef>
#include <string>
#include <string_view>

namespace retort {

class LineReader {
 public:
  enum class Got { line, too_long, end, failed };

  // Reads from `fd`, which stays the caller's. Lines may have up to `longest` bytes.
  LineReader(int fd, std::size_t longest) : fd_(fd), longest_(longest) {}

  // The next line without its end ("\n" or "\r\n"). The view is good until the next call.
  Got next(std::string_view& line);
  // The number of the line last got, from 1.
  [[nodiscard]] std::size_t number() const { return number_; }
  // Whether another line is at hand without reading on.
  [[nodiscard]] bool buffered() const;
  // errno of a failed read.
  [[nodiscard]] int error() const { return error_; }
  // Everything that is left, as it stands; `too_long` if it is more than the limit.
  Got rest(std::string& out);
  // The first byte that is no white space, without taking it; -1 at the end.
  int peek();

 private:
  bool fill();

  int fd_;
  std::size_t longest_;
  std::string buffer_;
  std::size_t at_ = 0;      // first byte not yet given out
  std::size_t number_ = 0;
  bool end_ = false;
  int error_ = 0;
};

}  // namespace retort
