// Work on a stream of items by several threads, with the results in the order of the items and a bounded
// number of them under way.
#pragma once
#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <thread>
#include <vector>

namespace retort::cli {

// Batch: a default-constructible, movable type holding items and then their results.
template <typename Batch>
class OrderedWork {
 public:
  // fill: puts items into an empty batch, false when there are no more (the batch may still hold some).
  // make_worker: called in each thread; what it returns works on a batch.
  // drain: takes a finished batch, in order; false stops all.
  using Fill = std::function<bool(Batch&)>;
  using Worker = std::function<void(Batch&)>;
  using Drain = std::function<bool(Batch&)>;

  void run(unsigned threads, const Fill& fill, const std::function<Worker()>& make_worker, const Drain& drain) {
    if (threads <= 1) {
      run_alone(fill, make_worker(), drain);
      return;
    }
    most_ = threads * 2;
    std::vector<std::thread> pool;
    pool.reserve(threads + 1);
    for (unsigned i = 0; i < threads; ++i) pool.emplace_back([&] { serve(make_worker()); });
    pool.emplace_back([&] { give_out(drain); });
    feed(fill);
    for (std::thread& thread : pool) thread.join();
  }

 private:
  struct Job {
    Batch batch;
    bool taken = false;
    bool done = false;
  };

  void run_alone(const Fill& fill, const Worker& work, const Drain& drain) {
    for (bool more = true; more;) {
      Batch batch;
      more = fill(batch);
      work(batch);
      if (!drain(batch)) return;
    }
  }

  // Reads on while there is room; the results go out meanwhile, so that a slow input is answered at once.
  void feed(const Fill& fill) {
    for (bool more = true; more;) {
      auto job = std::make_shared<Job>();
      more = fill(job->batch);
      std::unique_lock lock(mutex_);
      changed_.wait(lock, [&] { return jobs_.size() < most_ || stopped_; });
      if (stopped_) break;
      jobs_.push_back(std::move(job));
      changed_.notify_all();
    }
    std::lock_guard lock(mutex_);
    closed_ = true;
    changed_.notify_all();
  }

  void serve(const Worker& work) {
    for (;;) {
      std::shared_ptr<Job> mine;
      {
        std::unique_lock lock(mutex_);
        changed_.wait(lock, [&] { return closed_ || stopped_ || next() != nullptr; });
        mine = next();
        if (mine == nullptr || stopped_) return;
        mine->taken = true;
      }
      work(mine->batch);
      std::lock_guard lock(mutex_);
      mine->done = true;
      changed_.notify_all();
    }
  }

  void give_out(const Drain& drain) {
    for (;;) {
      std::shared_ptr<Job> front;
      {
        std::unique_lock lock(mutex_);
        changed_.wait(lock, [&] { return jobs_.empty() ? closed_ : jobs_.front()->done; });
        if (jobs_.empty()) return;
        front = jobs_.front();
        jobs_.pop_front();
        changed_.notify_all();
      }
      if (drain(front->batch)) continue;
      std::lock_guard lock(mutex_);
      stopped_ = true;
      changed_.notify_all();
      return;
    }
  }

  std::shared_ptr<Job> next() {
    for (const auto& job : jobs_) {
      if (!job->taken) return job;
    }
    return nullptr;
  }

  std::mutex mutex_;
  std::condition_variable changed_;
  std::deque<std::shared_ptr<Job>> jobs_;
  std::size_t most_ = 0;
  bool closed_ = false;   // no more items come
  bool stopped_ = false;  // the results can go nowhere
};

}  // namespace retort::cli
