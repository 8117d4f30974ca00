// Connections that have been at one request for too long are cut off.
//
// The library's own limit is on silence; a client that drips one byte at a time is never silent.
#pragma once
#include <chrono>
#include <condition_variable>
#include <map>
#include <mutex>
#include <thread>

namespace retort::serve {

// Threads: any number. A thread of its own looks several times in each `limit`.
class Deadlines {
 public:
  explicit Deadlines(std::chrono::milliseconds limit);
  ~Deadlines();
  Deadlines(const Deadlines&) = delete;
  Deadlines& operator=(const Deadlines&) = delete;

  // A connection on `socket` is there; its first request begins. The key is any pointer that stands for it.
  void begin(const void* key, int socket);
  // Its request is answered, the next may begin.
  void again(const void* key);
  // It is about to be closed; the socket is not touched after this.
  void end(const void* key);

  [[nodiscard]] std::size_t cut_off() const;

 private:
  using Clock = std::chrono::steady_clock;
  struct Open {
    int socket = -1;
    Clock::time_point since;
  };
  void watch();

  const std::chrono::milliseconds limit_;
  mutable std::mutex mutex_;
  std::condition_variable stop_;
  bool stopping_ = false;
  std::size_t cut_off_ = 0;
  std::map<const void*, Open> open_;
  std::thread thread_;
};

}  // namespace retort::serve
