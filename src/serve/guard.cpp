#include "serve/guard.h"

#include <arpa/inet.h>
#include <sys/random.h>

#include <array>

namespace retort::serve {
namespace {

// "host:port" taken apart; the host of "[::1]:80" without its brackets.
struct HostPort {
  std::string host;
  std::string port;
  bool bracketed = false;
};

std::optional<HostPort> split(std::string_view text) {
  HostPort out;
  if (text.starts_with('[')) {
    std::size_t close = text.find(']');
    if (close == std::string_view::npos) return std::nullopt;
    out.host = lower(text.substr(1, close - 1));
    out.bracketed = true;
    text.remove_prefix(close + 1);
  } else {
    std::size_t colon = text.find(':');
    out.host = lower(text.substr(0, colon));
    text.remove_prefix(colon == std::string_view::npos ? text.size() : colon);
  }
  if (text.empty()) {
    out.port = "80";
    return out;
  }
  if (text.front() != ':') return std::nullopt;
  out.port = text.substr(1);
  return out;
}

bool is_address(const HostPort& at) {
  std::array<unsigned char, sizeof(in6_addr)> ignored{};
  return ::inet_pton(at.bracketed ? AF_INET6 : AF_INET, at.host.c_str(), ignored.data()) == 1;
}

// Equal, in a time that does not tell how far.
bool same_secret(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  unsigned differ = 0;
  for (std::size_t i = 0; i < a.size(); ++i) differ |= static_cast<unsigned>(static_cast<unsigned char>(a[i]) ^ static_cast<unsigned char>(b[i]));
  return differ == 0;
}

std::string_view cookie(const Request& request, std::string_view name) {
  std::string_view all = request.header("Cookie");
  while (!all.empty()) {
    std::size_t end = all.find(';');
    std::string_view one = all.substr(0, end);
    all.remove_prefix(end == std::string_view::npos ? all.size() : end + 1);
    while (one.starts_with(' ')) one.remove_prefix(1);
    if (one.size() > name.size() && one.starts_with(name) && one[name.size()] == '=') return one.substr(name.size() + 1);
  }
  return {};
}

// Whether the page that sent this is ours, as far as the browser says.
bool is_our_page(const Request& request) {
  std::string_view site = request.header("Sec-Fetch-Site");
  bool reads = request.method == "GET" || request.method == "HEAD";
  if (reads) return site.empty() || site == "same-origin" || site == "none" || (request.header("Sec-Fetch-Mode") == "navigate" && !request.path.starts_with("/api/"));
  return (site.empty() || site == "same-origin") && request.header("Origin") == "http://" + std::string(request.header("Host"));
}

// The page's address with the token: the token goes into a cookie, and out of the address.
std::optional<Response> enter(const Request& request, const Place& place) {
  if (request.method != "GET" || request.path != "/" || !same_secret(request.argument("token"), place.token)) return std::nullopt;
  Response out = refusal(303, "Welcome.");
  out.headers.emplace_back("Location", "/");
  out.headers.emplace_back("Set-Cookie", std::string(kTokenCookie) + "=" + place.token + "; Path=/; HttpOnly; SameSite=Strict");
  return out;
}

}  // namespace

bool is_our_host(std::string_view host, const Place& place) {
  std::optional<HostPort> at = split(host);
  if (!at || at->port != std::to_string(place.port)) return false;
  if (!place.loopback) return is_address(*at);
  return (!at->bracketed && (at->host == "127.0.0.1" || at->host == "localhost")) || (at->bracketed && at->host == "::1");
}

std::optional<Response> guard(const Request& request, const Place& place) {
  if (request.headers.size() > kMostHeaders) return refusal(431, "The request has too many headers.");
  if (request.path.size() > kLongestPath) return refusal(414, "The address is too long.");
  if (request.count("Host") != 1 || !is_our_host(request.header("Host"), place)) {
    return refusal(403, "This page answers only under the address that 'retort serve' printed.");
  }
  if (request.method != "GET" && request.method != "HEAD" && request.method != "POST") {
    Response out = refusal(405, "Only GET, HEAD and POST are answered here.");
    out.headers.emplace_back("Allow", "GET, HEAD, POST");
    return out;
  }
  if (!is_our_page(request)) return refusal(403, "This request came from another page.");
  if (request.body.size() > kLargestBody) return refusal(413, "That is more than can be sent at once.");
  if (place.loopback) return std::nullopt;
  if (auto entered = enter(request, place)) return entered;
  if (!same_secret(cookie(request, kTokenCookie), place.token)) return refusal(401, "Open the whole address that 'retort serve' printed, with its token.");
  return std::nullopt;
}

std::string make_token() {
  std::array<unsigned char, 16> bytes{};
  std::size_t got = 0;
  while (got < bytes.size()) {
    ssize_t more = ::getrandom(bytes.data() + got, bytes.size() - got, 0);
    if (more > 0) got += static_cast<std::size_t>(more);
  }
  std::string out;
  for (unsigned char byte : bytes) {
    constexpr std::string_view kDigits = "0123456789abcdef";
    out += kDigits[byte >> 4U];
    out += kDigits[byte & 15U];
  }
  return out;
}

}  // namespace retort::serve
