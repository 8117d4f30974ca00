// A small HTTP client for the tests: bytes out, bytes in, on loopback alone, with a limit on waiting.
#pragma once
#include <arpa/inet.h>
#include <sys/socket.h>
#include <sys/time.h>
#include <unistd.h>

#include <charconv>
#include <cstdint>
#include <string>
#include <string_view>

namespace retort::test {

class Connection {
 public:
  explicit Connection(std::uint16_t port, int seconds = 10) : fd_(::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0)) {
    timeval wait{seconds, 0};
    ::setsockopt(fd_, SOL_SOCKET, SO_RCVTIMEO, &wait, sizeof wait);
    ::setsockopt(fd_, SOL_SOCKET, SO_SNDTIMEO, &wait, sizeof wait);
    sockaddr_in to{};
    to.sin_family = AF_INET;
    to.sin_port = htons(port);
    to.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    open_ = ::connect(fd_, reinterpret_cast<const sockaddr*>(&to), sizeof to) == 0;
  }
  ~Connection() { ::close(fd_); }
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  [[nodiscard]] bool open() const { return open_; }
  // Whether all bytes could be sent.
  bool send(std::string_view bytes) {
    while (!bytes.empty()) {
      ssize_t sent = ::send(fd_, bytes.data(), bytes.size(), MSG_NOSIGNAL);
      if (sent <= 0) return false;
      bytes.remove_prefix(static_cast<std::size_t>(sent));
    }
    return true;
  }
  void no_more() { ::shutdown(fd_, SHUT_WR); }
  // One response, whole if it has a Content-Length; empty if none came.
  std::string receive() {
    std::string in;
    std::size_t whole = std::string::npos;
    char buffer[16384];
    while (in.size() < whole) {
      ssize_t got = ::recv(fd_, buffer, sizeof buffer, 0);
      if (got <= 0) break;
      in.append(buffer, static_cast<std::size_t>(got));
      if (whole == std::string::npos) whole = length_of(in);
    }
    return in;
  }

 private:
  // Of the whole response, once its headers are there.
  static std::size_t length_of(const std::string& in) {
    std::size_t end = in.find("\r\n\r\n");
    std::size_t at = in.find("Content-Length: ");
    if (end == std::string::npos || at == std::string::npos || at > end) return std::string::npos;
    std::size_t length = 0;
    std::from_chars(in.data() + at + 16, in.data() + end, length);
    return end + 4 + length;
  }

  int fd_;
  bool open_ = false;
};

// The status of a response; 0 if there is none.
inline int status_of(std::string_view response) {
  int out = 0;
  if (response.starts_with("HTTP/1.") && response.size() > 12) std::from_chars(response.data() + 9, response.data() + 12, out);
  return out;
}

inline std::string post_text(std::uint16_t port, std::string_view path, std::string_view body) {
  std::string host = "127.0.0.1:" + std::to_string(port);
  return "POST " + std::string(path) + " HTTP/1.1\r\nHost: " + host + "\r\nOrigin: http://" + host +
         "\r\nContent-Type: application/json\r\nContent-Length: " + std::to_string(body.size()) + "\r\n\r\n" + std::string(body);
}

}  // namespace retort::test
