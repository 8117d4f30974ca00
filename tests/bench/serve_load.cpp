// A class of pupils typing at once: a second process starts `retort serve` and asks for live checks over loopback.
// Usage: serve_load PROGRAM [SECONDS]. Prints how long the answers took. A measurement, not a test: it fails only if
// answers are missing.
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

#include "../serve/client.h"

namespace {
using Clock = std::chrono::steady_clock;

constexpr int kPupils = 30;
constexpr std::chrono::milliseconds kPause{400};  // the page asks when typing pauses for 350 ms

struct Served {
  pid_t pid = -1;
  std::uint16_t port = 0;
};

Served start(const char* program) {
  int ends[2];
  if (::pipe(ends) != 0) std::exit(2);
  Served out;
  out.pid = ::fork();
  if (out.pid == 0) {
    ::dup2(ends[1], STDOUT_FILENO);
    ::execl(program, program, "serve", "--port", "0", nullptr);
    std::_Exit(127);
  }
  ::close(ends[1]);
  std::string said;
  char piece[512];
  constexpr std::string_view kBefore = "http://127.0.0.1:";
  for (ssize_t got = 1; got > 0 && said.find(kBefore) == std::string::npos;) {
    got = ::read(ends[0], piece, sizeof piece);
    if (got > 0) said.append(piece, static_cast<std::size_t>(got));
  }
  std::size_t at = said.find(kBefore);
  if (at == std::string::npos) std::exit(2);
  out.port = static_cast<std::uint16_t>(std::atoi(said.c_str() + at + kBefore.size()));
  return out;
}

// A draft of about 300 words, as far as it is typed.
std::string draft(std::size_t words) {
  const std::string_view kSentences[] = {"Hang the spring from a clamp on the stand and fix the metre rule beside it.", "Read where the bottom of the spring is before any weight is on.",
                                         "Then put on 1.5 N and write down the new length after it stops moving.", "The extension is 16.7 - 4.2 = 12.5 cm so k = 5 / 0.125 = 40 N/m.",
                                         "Do it again for 3.0 N, 4.5 N, 6.0 N and 7.5 N, and repeat all of them three times to get a mean."};
  std::string out;
  std::size_t count = 0;
  for (std::size_t i = 0; count < words; ++i) {
    for (char c : kSentences[i % std::size(kSentences)]) {
      if (c == ' ' && ++count >= words) break;
      out += c;
    }
    out += ' ';
    ++count;
  }
  return out;
}

std::string request(std::uint16_t port, const std::string& text) {
  std::string body = R"({"rubric":"spring-extension","text":")" + text + "\"}";
  std::string here = "127.0.0.1:" + std::to_string(port);
  return "POST /api/check HTTP/1.1\r\nHost: " + here + "\r\nOrigin: http://" + here + "\r\nContent-Type: application/json\r\nContent-Length: " + std::to_string(body.size()) + "\r\n\r\n" + body;
}

struct Times {
  std::mutex mutex;
  std::vector<double> milliseconds;
  std::size_t failed = 0;
};

void type(std::uint16_t port, int pupil, Clock::time_point end, Times& times) {
  retort::test::Connection connection(port);
  std::this_thread::sleep_for(kPause * pupil / kPupils);
  for (std::size_t round = 0; Clock::now() < end; ++round) {
    std::string wanted = request(port, draft(290 + round % 20));
    Clock::time_point began = Clock::now();
    bool good = connection.send(wanted) && connection.receive().starts_with("HTTP/1.1 200");
    double took = std::chrono::duration<double, std::milli>(Clock::now() - began).count();
    {
      std::lock_guard lock(times.mutex);
      if (good) times.milliseconds.push_back(took);
      else ++times.failed;
    }
    if (!good) return;
    std::this_thread::sleep_until(began + kPause);
  }
}

}  // namespace

int main(int count, char** words) {
  if (count < 2) return 2;
  int seconds = count > 2 ? std::clamp(std::atoi(words[2]), 1, 60) : 10;
  Served served = start(words[1]);
  Times times;
  std::vector<std::thread> pupils;
  Clock::time_point end = Clock::now() + std::chrono::seconds(seconds);
  for (int i = 0; i < kPupils; ++i) pupils.emplace_back([&, i] { type(served.port, i, end, times); });
  for (std::thread& pupil : pupils) pupil.join();
  ::kill(served.pid, SIGTERM);
  ::waitpid(served.pid, nullptr, 0);
  std::vector<double>& all = times.milliseconds;
  std::sort(all.begin(), all.end());
  if (all.empty() || times.failed > 0) {
    std::printf("%zu answers, %zu failed\n", all.size(), times.failed);
    return 1;
  }
  auto at = [&](double share) { return all[std::min(all.size() - 1, static_cast<std::size_t>(share * static_cast<double>(all.size())))]; };
  std::printf("%d pupils, %d s, %zu live checks of a 300-word draft: median %.2f ms, 99th percentile %.2f ms, longest %.2f ms\n", kPupils, seconds, all.size(), at(0.5), at(0.99), all.back());
  return 0;
}
