// An HTTP request and its response as plain data: what the handlers know of the network.
#pragma once
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace retort::serve {

// What one request may have, at most. More is refused.
inline constexpr std::size_t kLargestBody = 16U << 20;
inline constexpr std::size_t kMostHeaders = 64;
inline constexpr std::size_t kLongestPath = 512;

using Fields = std::vector<std::pair<std::string, std::string>>;

struct Request {
  std::string method;   // "GET"
  std::string path;     // "/api/check": before the "?", percent escapes decoded
  Fields query;         // decoded, in order
  Fields headers;       // as they came, in order
  std::string body;

  // The value of a header (names in any case); empty if it is not there.
  [[nodiscard]] std::string_view header(std::string_view name) const;
  // How often a header is there.
  [[nodiscard]] std::size_t count(std::string_view name) const;
  // The value of a query argument; empty if it is not there.
  [[nodiscard]] std::string_view argument(std::string_view name) const;
};

struct Response {
  int status = 200;
  std::string type = "text/plain; charset=utf-8";
  std::string body;
  Fields headers;       // besides those that every response has
};

// A refusal, in one plain sentence.
Response refusal(int status, std::string_view sentence);
Response json_response(std::string body, int status = 200);

// ASCII letters made small; for header names and host names.
std::string lower(std::string_view text);

}  // namespace retort::serve
