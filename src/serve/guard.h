// Who may ask: only pages that this server gave out, at an address that it listens on.
//
// A page of another site can make a browser send requests here, and can point its own host name at this machine
// (rebinding). So the Host header must be an address of ours (never a name but "localhost"), and a POST must carry the
// Origin of our own page. Beyond loopback every request needs the token besides.
#pragma once
#include <cstdint>
#include <optional>
#include <string>

#include "serve/http.h"

namespace retort::serve {

struct Place {
  std::uint16_t port = 0;
  bool loopback = true;   // listening on loopback only
  std::string token;      // needed in a cookie if not on loopback
};

inline constexpr std::string_view kTokenCookie = "retort-token";

// Why `request` is not answered; nothing if it may be.
std::optional<Response> guard(const Request& request, const Place& place);

// Whether `host` (a Host header) is an address that `place` answers to.
bool is_our_host(std::string_view host, const Place& place);

// A token of 128 random bits from the system, in hexadecimal.
std::string make_token();

}  // namespace retort::serve
