// The listening end: GNU libmicrohttpd turned to Service's Request and Response, with limits on everything.
//
// Limits: connections at once, bytes of headers, bytes of a body, the time a connection may wait between bytes, and the
// time a whole request may take to arrive (a client that sends a byte now and then is cut off by the latter).
#pragma once
#include <chrono>
#include <cstdint>
#include <memory>
#include <string>

#include "base/result.h"
#include "serve/service.h"

namespace retort::serve {

struct Listen {
  std::string address = "127.0.0.1";  // an IPv4 or IPv6 address
  std::uint16_t port = 0;             // 0: a free one
  unsigned threads = 2;
  unsigned connections = 256;
  std::chrono::seconds idle{15};
  std::chrono::seconds whole_request{30};
};

// Whether `address` is one of loopback (127.0.0.0/8 or ::1).
bool is_loopback(const std::string& address);

// Answers from its start until it is destroyed.
class Server {
 public:
  // `service` must outlive the Server. Fails if the address cannot be listened on.
  static Result<std::unique_ptr<Server>> start(Service& service, const Listen& listen);
  ~Server();
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;

  [[nodiscard]] std::uint16_t port() const;
  // The address to open in a browser, with the token if one is needed.
  [[nodiscard]] std::string url() const;

 private:
  struct Impl;
  explicit Server(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

}  // namespace retort::serve
