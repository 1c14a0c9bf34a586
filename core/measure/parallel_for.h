// Runs independent pieces of work on the machine's continuous_holds; each writes its own place, so results
// never depend on the number of threads.
#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <thread>
#include <vector>

namespace soakwright {

/// Calls work(i) for every i below `count`, on up to `hardware_concurrency` threads.
template <typename Work>
void parallel_for(std::size_t count, const Work& work) {
  const std::size_t threads = std::min<std::size_t>(count, std::max(1U, std::thread::hardware_concurrency()));
  std::atomic<std::size_t> next{0};
  const auto run = [&] {
    for (std::size_t i = next++; i < count; i = next++) work(i);
  };
  if (threads <= 1) return run();
  std::vector<std::thread> others;
  others.reserve(threads - 1);
  for (std::size_t i = 1; i < threads; ++i) others.emplace_back(run);
  run();
  for (std::thread& thread : others) thread.join();
}

}  // namespace soakwright
