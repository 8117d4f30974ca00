// The same work done for many things by several threads.
#pragma once
#include <algorithm>
#include <atomic>
#include <thread>
#include <vector>

namespace retort {

// Calls `worker(i)` for i from 0 to count - 1, each once, on up to `threads` threads; each thread calls `make_worker()` for a
// worker of its own.
template <typename MakeWorker>
void in_parallel(unsigned threads, std::size_t count, MakeWorker make_worker) {
  std::atomic<std::size_t> next{0};
  auto run = [&] {
    auto worker = make_worker();
    for (std::size_t i = next++; i < count; i = next++) worker(i);
  };
  std::vector<std::thread> pool;
  for (unsigned i = 1; i < std::min<std::size_t>(threads, count); ++i) pool.emplace_back(run);
  run();
  for (std::thread& thread : pool) thread.join();
}

}  // namespace retort
