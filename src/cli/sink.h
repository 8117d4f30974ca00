// Where a command's output goes: standard output, or a file that appears whole or not at all.
#pragma once
#include <string>
#include <string_view>

#include "base/finding.h"

namespace retort::cli {

class Sink {
 public:
  // `path` empty: standard output.
  explicit Sink(std::string path);
  ~Sink();
  Sink(const Sink&) = delete;
  Sink& operator=(const Sink&) = delete;

  bool write(std::string_view text);  // false once anything has failed
  bool flush();
  // Ends the output; a file takes its name only now.
  bool close();
  [[nodiscard]] bool good() const { return good_; }
  [[nodiscard]] Finding finding() const;  // why not good()

 private:
  bool fail(int error);

  std::string path_;
  std::string draft_;
  std::string buffer_;
  int fd_ = 1;
  bool good_ = true;
  bool closed_ = false;
  int error_ = 0;
};

}  // namespace retort::cli
