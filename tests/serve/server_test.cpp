// The server on a socket of loopback: what hostile and broken clients get, and that the others go on.
#include "serve/server.h"

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <random>
#include <thread>

#include "client.h"
#include "../support.h"

namespace retort::serve {
namespace {

using test::Connection;
using test::post_text;
using test::status_of;

constexpr std::string_view kDraft = R"({"rubric":"spring-extension","text":"Hang the spring from a clamp and measure its length with a ruler."})";

class ServerTest : public testing::Test {
 protected:
  void SetUp() override {
    Listen listen;
    listen.idle = std::chrono::seconds(2);
    listen.whole_request = std::chrono::seconds(2);
    auto started = Server::start(service_, listen);
    ASSERT_TRUE(started);
    server_ = std::move(*started);
    port_ = server_->port();
  }
  // Whether an honest client is answered.
  [[nodiscard]] bool well() const {
    Connection client(port_);
    client.send(post_text(port_, "/api/check", kDraft));
    std::string response = client.receive();
    return status_of(response) == 200 && response.find("\"present\"") != std::string::npos;
  }

  Service service_{test::shipped()};
  std::unique_ptr<Server> server_;
  std::uint16_t port_ = 0;
};

TEST_F(ServerTest, AnswersOverOneConnection) {
  Connection client(port_);
  for (int i = 0; i < 5; ++i) {
    ASSERT_TRUE(client.send(post_text(port_, "/api/check", kDraft)));
    EXPECT_EQ(status_of(client.receive()), 200);
  }
  EXPECT_EQ(server_->url(), "http://127.0.0.1:" + std::to_string(port_) + "/");
}

TEST_F(ServerTest, ListensOnLoopbackAlone) {
  Listen taken;
  taken.port = port_;
  auto second = Server::start(service_, taken);
  ASSERT_FALSE(second);
  EXPECT_EQ(second.finding().code, Code::serve_cannot_listen);
  Listen named;
  named.address = "example.test";
  auto third = Server::start(service_, named);
  ASSERT_FALSE(third);
  EXPECT_EQ(third.finding().code, Code::serve_address_bad);
}

TEST_F(ServerTest, ABodyOverTheLimitIsRefused) {
  for (bool chunked : {false, true}) {
    Connection client(port_);
    std::string host = "127.0.0.1:" + std::to_string(port_);
    client.send("POST /api/check HTTP/1.1\r\nHost: " + host + "\r\nOrigin: http://" + host + "\r\nContent-Type: application/json\r\n" +
                (chunked ? "Transfer-Encoding: chunked\r\n\r\n" : "Content-Length: " + std::to_string(kLargestBody + (1U << 20)) + "\r\n\r\n"));
    std::string piece(1U << 20, 'x');
    for (std::size_t sent = 0; sent < kLargestBody + (1U << 20); sent += piece.size()) {
      if (!client.send(chunked ? "100000\r\n" + piece + "\r\n" : piece)) break;
    }
    if (chunked) client.send("0\r\n\r\n");
    EXPECT_EQ(status_of(client.receive()), 413) << (chunked ? "chunked" : "whole");
  }
  EXPECT_TRUE(well());
}

// A client that sends a byte now and then is never silent, and is cut off all the same.
TEST_F(ServerTest, ASlowClientIsCutOff) {
  Connection slow(port_, 10);
  std::string request = post_text(port_, "/api/check", kDraft);
  std::size_t sent = 0;
  auto begin = std::chrono::steady_clock::now();
  while (sent < request.size() && std::chrono::steady_clock::now() - begin < std::chrono::seconds(20)) {
    if (!slow.send(request.substr(sent, 1))) break;
    ++sent;
    ::usleep(100'000);
  }
  EXPECT_LT(sent, 100U) << "of " << request.size() << " bytes";
  EXPECT_TRUE(well());
}

TEST_F(ServerTest, ManySilentConnectionsDoNotStopTheOthers) {
  std::vector<std::unique_ptr<Connection>> silent;
  for (int i = 0; i < 150; ++i) {
    silent.push_back(std::make_unique<Connection>(port_));
    silent.back()->send("POST /api/check HTTP/1.1\r\n");
  }
  EXPECT_TRUE(well());
}

// Requests that are wrong in every way we could think of, each varied by chance from a stated seed.
class Hostile {
 public:
  explicit Hostile(std::uint16_t port) : port_(port), host_("127.0.0.1:" + std::to_string(port)) {}

  std::string next(std::size_t number) {
    static const std::vector<std::string (Hostile::*)()> kKinds = {
        &Hostile::noise,    &Hostile::cut,      &Hostile::flipped,   &Hostile::climbing, &Hostile::rebound,  &Hostile::cross_site, &Hostile::methods,
        &Hostile::lengths,  &Hostile::chunks,   &Hostile::headers,   &Hostile::bad_json, &Hostile::members,  &Hostile::tongues,    &Hostile::tokens,
        &Hostile::bad_type, &Hostile::bad_edit};
    return (this->*kKinds[number % kKinds.size()])();
  }

 private:
  std::size_t pick(std::size_t below) { return std::uniform_int_distribution<std::size_t>(0, below - 1)(random_); }
  std::string bytes(std::size_t most) {
    std::string out(pick(most) + 1, ' ');
    for (char& c : out) c = static_cast<char>(pick(256));
    return out;
  }
  std::string any(std::initializer_list<const char*> of) { return *(of.begin() + pick(of.size())); }
  std::string get(const std::string& path) { return "GET " + path + " HTTP/1.1\r\nHost: " + host_ + "\r\n\r\n"; }
  std::string good() { return post_text(port_, "/api/check", kDraft); }

  std::string noise() { return bytes(600) + "\r\n\r\n"; }
  std::string cut() {
    std::string all = good();
    return all.substr(0, pick(all.size() - 1) + 1);
  }
  std::string flipped() {  // in the request's line and the Host header
    std::string all = good();
    std::size_t end = all.find("\r\nOrigin");
    std::size_t at = pick(end - 12);
    all[at] = static_cast<char>(static_cast<unsigned char>(all[at]) ^ (1U << std::array{4U, 6U, 7U}[pick(3)]));  // bit 5 would only change the case of a letter
    return all;
  }
  std::string climbing() {
    return get(any({"/../../etc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "/..%2f..%2fetc%2fpasswd", "//etc/passwd", "/page/../write.mjs", "/.%00/write", "/write.mjs%00.html",
                    "/api/rubric?id=..%2Fvocabulary", "/api/rubric?id=%00", "/rubrics/vocabulary.json", "/\\..\\..\\etc\\passwd", "/api/%72ubrics/..", "/%c0%ae%c0%ae/"}) +
               any({"", "x", "/", "%"}));
  }
  std::string rebound() { return "GET / HTTP/1.1\r\nHost: " + any({"attacker.test", "127.0.0.1", "localhost:1", "127.0.0.1.attacker.test", "[::1", "0", ""}) + any({"", ":80", ":99999"}) + "\r\n\r\n"; }
  std::string cross_site() {
    return "POST /api/check HTTP/1.1\r\nHost: " + host_ + "\r\n" + any({"", "Origin: null\r\n", "Origin: http://attacker.test\r\n", "Origin: http://127.0.0.1\r\n", "Sec-Fetch-Site: cross-site\r\n"}) +
           "Content-Type: application/json\r\nContent-Length: 2\r\n\r\n{}";
  }
  std::string methods() { return any({"PUT", "DELETE", "TRACE", "OPTIONS", "CONNECT", "PATCH", "get", "X", "POST"}) + " / HTTP/1.1\r\nHost: " + host_ + "\r\nContent-Length: 0\r\n\r\n"; }
  std::string lengths() {
    return "POST /api/check HTTP/1.1\r\nHost: " + host_ + "\r\nOrigin: http://" + host_ + "\r\nContent-Type: application/json\r\nContent-Length: " +
           any({"-1", "99999999999999999999999", "abc", "0x10", "2, 2", "+2", "1e3", ""}) + "\r\n\r\n{}";
  }
  std::string chunks() {
    return "POST /api/check HTTP/1.1\r\nHost: " + host_ + "\r\nOrigin: http://" + host_ + "\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n" +
           any({"zz\r\n{}\r\n0\r\n\r\n", "-2\r\n{}\r\n", "ffffffffffffffff1\r\n{}", "2\r\n{}0\r\n\r\n", "1\r\n{\r\n0\r\n\r\n", "\r\n\r\n"});
  }
  std::string headers() {
    std::string out = "GET / HTTP/1.1\r\nHost: " + host_ + "\r\n";
    switch (pick(4)) {
      case 0: return out + "A: " + std::string(100'000, 'a') + "\r\n\r\n";
      case 1: for (int i = 0; i < 200; ++i) out += "H" + std::to_string(i) + ": 1\r\n"; return out + "\r\n";
      case 2: return out + "Host: attacker.test\r\n\r\n";
      default: return "GET /" + std::string(5'000, 'a') + " HTTP/1.1\r\nHost: " + host_ + "\r\n\r\n";
    }
  }
  std::string bad_json() {
    std::string body = any({"", "{", "[]", "5", "null", "{\"rubric\":}", "{\"rubric\":\"spring-extension\",\"text\":\"\\ud800\"", "{'rubric':1}"});
    if (pick(4) == 0) body = std::string(50'000, any({"[", "{", "\""})[0]);
    if (pick(4) == 0) body = bytes(300);
    return post_text(port_, any({"/api/check", "/api/results", "/api/class", "/api/rubric"}), body);
  }
  std::string members() {
    return post_text(port_, "/api/check", any({"{}", R"({"rubric":"spring-extension"})", R"({"rubric":5,"text":"x"})", R"({"rubric":"../x","text":"x"})", R"({"rubric":"spring-extension","text":[]})",
                                               R"({"rubric":"spring-extension","text":null})", R"({"rubric":"common","text":"x"})"}));
  }
  std::string tongues() { return any({"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03", "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n", "GET /\r\n\r\n", "SSH-2.0-x\r\n", "EHLO x\r\n", "GET / HTTP/9.9\r\n\r\n", "\r\n\r\n\r\n", "*1\r\n$4\r\nPING\r\n"}); }
  std::string tokens() { return get("/?token=" + std::string(pick(40), 'a') + "/nothing" + any({"%", "%zz", ";", "&&&"})).replace(4, 1, "/x"); }
  std::string bad_type() {
    std::string all = good();
    return all.replace(all.find("application/json"), 16, any({"text/plain", "multipart/form-data", "application/xml", ""}));
  }
  std::string bad_edit() {
    return post_text(port_, "/api/rubric", any({R"({"rubric":"spring-extension","edits":5})", R"({"rubric":"spring-extension","edits":{"steps":[]}})", R"({"rubric":"spring-extension","edits":{"values":["x"]}})",
                                                R"({"rubric":"spring-extension","edits":{"steps":{"support":{"present":["{nothing}"]}}}})", R"({"rubric":"spring-extension","edits":{"steps":{"support":{"present":["((("]}}}})"}));
  }

  std::uint16_t port_;
  std::string host_;
  std::mt19937_64 random_{20261126};
};

TEST_F(ServerTest, HostileRequestsAreAnsweredWithAnErrorAndDoNoHarm) {
  constexpr std::size_t kCount = 1600, kLanes = 24;  // several at once: some are only closed when their time is over
  Hostile hostile(port_);
  std::vector<std::string> requests;
  for (std::size_t i = 0; i < kCount; ++i) requests.push_back(hostile.next(i));
  std::vector<int> statuses(kCount);
  std::vector<std::thread> lanes;
  for (std::size_t lane = 0; lane < kLanes; ++lane) {
    lanes.emplace_back([&, lane] {
      for (std::size_t i = lane; i < kCount; i += kLanes) {
        Connection client(port_, 10);
        client.send(requests[i]);
        client.no_more();
        statuses[i] = status_of(client.receive());
      }
    });
  }
  for (int i = 0; i < 10; ++i) {
    EXPECT_TRUE(well()) << "while they come";
    ::usleep(100'000);
  }
  for (std::thread& lane : lanes) lane.join();
  std::size_t closed = 0;
  for (std::size_t i = 0; i < kCount; ++i) {
    EXPECT_TRUE(statuses[i] == 0 || statuses[i] >= 400) << statuses[i] << " for " << testing::PrintToString(requests[i].substr(0, 200));
    if (statuses[i] == 0) ++closed;
  }
  EXPECT_TRUE(well());
  EXPECT_LT(closed, kCount / 4);
  std::printf("%zu hostile requests of 16 kinds: %zu answered with an error, %zu closed without an answer, none served\n", kCount, kCount - closed, closed);
}

}  // namespace
}  // namespace retort::serve
