// Who is answered: addresses, pages and tokens.
#include "serve/guard.h"

#include <gtest/gtest.h>

#include "serve/server.h"

namespace retort::serve {
namespace {

struct HostRow {
  const char* name;
  const char* host;
  bool loopback;
  bool ours;
};

TEST(Guard, Hosts) {
  const HostRow rows[] = {
      {"the address", "127.0.0.1:8000", true, true},
      {"the name of loopback", "localhost:8000", true, true},
      {"in capitals", "LocalHost:8000", true, true},
      {"IPv6", "[::1]:8000", true, true},
      {"another port", "127.0.0.1:8001", true, false},
      {"no port", "127.0.0.1", true, false},
      {"an empty port", "127.0.0.1:", true, false},
      {"a name pointed here", "attacker.test:8000", true, false},
      {"a name that begins like ours", "localhost.attacker.test:8000", true, false},
      {"a name that begins with the address", "127.0.0.1.attacker.test:8000", true, false},
      {"two ports", "127.0.0.1:8000:8000", true, false},
      {"user information", "127.0.0.1:8000@attacker.test", true, false},
      {"the address in octal", "0177.0.0.1:8000", true, false},
      {"the address as one number", "2130706433:8000", true, false},
      {"zero", "0.0.0.0:8000", true, false},
      {"an open bracket", "[::1", true, false},
      {"text after the bracket", "[::1]x:8000", true, false},
      {"nothing", "", true, false},
      {"white space", " 127.0.0.1:8000", true, false},
      {"beyond loopback, an address", "192.0.2.7:8000", false, true},
      {"beyond loopback, IPv6", "[2001:db8::7]:8000", false, true},
      {"beyond loopback, a name", "school.test:8000", false, false},
      {"beyond loopback, localhost is a name too", "localhost:8000", false, false},
      {"beyond loopback, another port", "192.0.2.7:80", false, false},
  };
  for (const HostRow& row : rows) EXPECT_EQ(is_our_host(row.host, Place{8000, row.loopback, ""}), row.ours) << row.name;
}

Request get(Fields headers) {
  Request out;
  out.method = "GET";
  out.path = "/";
  out.headers = std::move(headers);
  return out;
}

Request post(Fields headers) {
  Request out = get(std::move(headers));
  out.method = "POST";
  out.path = "/api/check";
  return out;
}

int status(const Request& request, const Place& place) {
  auto refused = guard(request, place);
  return refused ? refused->status : 200;
}

TEST(Guard, Requests) {
  const Place here{8000, true, ""};
  const std::pair<std::string, std::string> host{"Host", "127.0.0.1:8000"};
  const std::pair<std::string, std::string> origin{"Origin", "http://127.0.0.1:8000"};
  Request put = get({host});
  put.method = "PUT";
  Request long_path = get({host});
  long_path.path = "/" + std::string(kLongestPath, 'a');
  Request big = post({host, origin});
  big.body.assign(kLargestBody + 1, 'x');
  Request api = get({host, {"Sec-Fetch-Site", "cross-site"}, {"Sec-Fetch-Mode", "navigate"}});
  api.path = "/api/rubrics";
  Fields many(kMostHeaders + 1, {"A", "b"});
  many[0] = host;
  const struct {
    const char* name;
    Request request;
    int status;
  } rows[] = {
      {"a page", get({host}), 200},
      {"no Host", get({}), 403},
      {"two Hosts", get({host, host}), 403},
      {"a strange Host", get({{"Host", "attacker.test:8000"}}), 403},
      {"a page followed from elsewhere", get({host, {"Sec-Fetch-Site", "cross-site"}, {"Sec-Fetch-Mode", "navigate"}}), 200},
      {"a page as another page's image", get({host, {"Sec-Fetch-Site", "cross-site"}, {"Sec-Fetch-Mode", "no-cors"}}), 403},
      {"data followed from elsewhere", api, 403},
      {"a post of ours", post({host, origin, {"Sec-Fetch-Site", "same-origin"}}), 200},
      {"a post without Origin", post({host}), 403},
      {"a post of another page", post({host, {"Origin", "http://attacker.test"}}), 403},
      {"a post of another port", post({host, {"Origin", "http://127.0.0.1:9000"}}), 403},
      {"a post of a file", post({host, {"Origin", "null"}}), 403},
      {"a post over another name of loopback", post({host, {"Origin", "http://localhost:8000"}}), 403},
      {"a post that says it is cross-site", post({host, origin, {"Sec-Fetch-Site", "cross-site"}}), 403},
      {"a method that is not here", put, 405},
      {"a long address", long_path, 414},
      {"a large body", big, 413},
      {"many headers", get(many), 431},
  };
  for (const auto& row : rows) EXPECT_EQ(status(row.request, here), row.status) << row.name;
}

TEST(Guard, BeyondLoopbackTheTokenIsNeeded) {
  const Place place{8000, false, make_token()};
  const std::pair<std::string, std::string> host{"Host", "192.0.2.7:8000"};
  EXPECT_EQ(status(get({host}), place), 401);
  EXPECT_EQ(status(get({host, {"Cookie", "retort-token=" + std::string(32, '0')}}), place), 401);
  EXPECT_EQ(status(get({host, {"Cookie", "a=b; retort-token=" + place.token}}), place), 200);
  Request enter = get({host});
  enter.query = {{"token", place.token}};
  auto entered = guard(enter, place);
  ASSERT_TRUE(entered);
  EXPECT_EQ(entered->status, 303);
  Request wrong = get({host});
  wrong.query = {{"token", place.token.substr(1)}};
  EXPECT_EQ(status(wrong, place), 401);
  EXPECT_EQ(make_token().size(), 32U);
  EXPECT_NE(make_token(), make_token());
}

TEST(Guard, WhatIsLoopback) {
  const std::pair<const char*, bool> rows[] = {{"127.0.0.1", true}, {"127.9.9.9", true}, {"::1", true}, {"0.0.0.0", false},
                                               {"192.0.2.1", false}, {"::", false},       {"localhost", false}, {"", false}};
  for (const auto& [address, expected] : rows) EXPECT_EQ(is_loopback(address), expected) << address;
}

}  // namespace
}  // namespace retort::serve
