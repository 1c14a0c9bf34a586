// SPDX-License-Identifier: GPL-3.0-or-later
// The one loop that runs independent pieces of work on several threads. Each piece writes its own place, so
// results never depend on the number of threads.
#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <exception>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace soakwright {

/// How many threads loops that this thread starts may use; 0 is no limit.
inline std::size_t& loop_threads_allowed() {
  thread_local std::size_t allowed = 0;
  return allowed;
}

/// While it lives, loops that this thread starts use at most so many threads: for work that is itself one of
/// several pieces run at once.
class LoopThreadLimit {
 public:
  explicit LoopThreadLimit(std::size_t threads) : before_(loop_threads_allowed()) {
    loop_threads_allowed() = threads;
  }
  ~LoopThreadLimit() { loop_threads_allowed() = before_; }
  LoopThreadLimit(const LoopThreadLimit&) = delete;
  LoopThreadLimit& operator=(const LoopThreadLimit&) = delete;

 private:
  std::size_t before_;
};

/// Threads that this machine runs at once, within what this thread may use; at least 1.
inline std::size_t machine_threads() {
  const std::size_t allowed = loop_threads_allowed();
  if (allowed == 1) return 1;
  const std::size_t all = std::max(1U, std::thread::hardware_concurrency());
  return allowed == 0 ? all : std::min(all, allowed);
}

/// Calls work(i) once for every i below `count`, in any order, on the calling thread and up to `threads` - 1
/// others. A thread that cannot be started is done without. What `work` throws ends the loop
/// early and is thrown again on the calling thread once all others have ended; of several, the one of the
/// smallest i.
template <typename Work>
void parallel_for_on(std::size_t threads, std::size_t count, const Work& work) {
  threads = std::min(threads, count);
  if (threads <= 1) {
    for (std::size_t i = 0; i < count; ++i) work(i);
    return;
  }
  std::atomic<std::size_t> next{0};
  std::mutex mutex;
  std::exception_ptr thrown;
  std::size_t thrown_by = count;
  const auto run = [&] {
    for (std::size_t i = next++; i < count; i = next++) {
      try {
        work(i);
      } catch (...) {
        next = count;
        const std::lock_guard<std::mutex> lock{mutex};
        if (i < thrown_by) {
          thrown = std::current_exception();
          thrown_by = i;
        }
      }
    }
  };
  std::vector<std::thread> others;
  try {
    others.reserve(threads - 1);
    for (std::size_t i = 1; i < threads; ++i) others.emplace_back(run);
  } catch (const std::exception&) {  // NOLINT(bugprone-empty-catch)
    // No further thread, or no memory for one: those that run do all of the work.
  }
  run();
  for (std::thread& other : others) other.join();
  if (thrown) std::rethrow_exception(thrown);
}

/// The same on all threads of the machine.
template <typename Work>
void parallel_for(std::size_t count, const Work& work) {
  parallel_for_on(machine_threads(), count, work);
}

/// The same where the pieces together look at `readings` readings: few of them are worked through sooner than
/// a thread starts.
template <typename Work>
void parallel_for(std::size_t count, std::size_t readings, const Work& work) {
  constexpr std::size_t kWorthAThread = 20000;
  parallel_for_on(readings < kWorthAThread ? 1 : machine_threads(), count, work);
}

}  // namespace soakwright
