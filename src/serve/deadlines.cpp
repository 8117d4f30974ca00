#include "serve/deadlines.h"

#include <sys/socket.h>

namespace retort::serve {

Deadlines::Deadlines(std::chrono::milliseconds limit) : limit_(limit), thread_([this] { watch(); }) {}

Deadlines::~Deadlines() {
  {
    std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  stop_.notify_all();
  thread_.join();
}

void Deadlines::begin(const void* key, int socket) {
  std::lock_guard lock(mutex_);
  open_[key] = {socket, Clock::now()};
}

void Deadlines::again(const void* key) {
  std::lock_guard lock(mutex_);
  if (auto at = open_.find(key); at != open_.end()) at->second.since = Clock::now();
}

void Deadlines::end(const void* key) {
  std::lock_guard lock(mutex_);
  open_.erase(key);
}

std::size_t Deadlines::cut_off() const {
  std::lock_guard lock(mutex_);
  return cut_off_;
}

void Deadlines::watch() {
  std::unique_lock lock(mutex_);
  while (!stop_.wait_for(lock, limit_ / 8, [this] { return stopping_; })) {
    for (auto at = open_.begin(); at != open_.end();) {
      if (Clock::now() - at->second.since < limit_) {
        ++at;
        continue;
      }
      ::shutdown(at->second.socket, SHUT_RDWR);  // the library then closes it
      ++cut_off_;
      at = open_.erase(at);
    }
  }
}

}  // namespace retort::serve
