// Work on many channels, shared by two threads where it is worth starting one.
#pragma once

#include <cstddef>
#include <thread>

namespace soakwright {

/// Calls `work(i)` for each i below `count`, each once, in any order; the calls must not touch the same
/// thing. `size` is the number of readings that all of them look at.
template <typename Work>
void in_two_threads(std::size_t count, std::size_t size, const Work& work) {
  constexpr std::size_t kWorthAThread = 20000;  // below, starting one costs more than it saves
  if (count < 2 || size < kWorthAThread) {
    for (std::size_t i = 0; i < count; ++i) work(i);
    return;
  }
  const std::size_t half = count / 2;
  std::thread other([&] {
    for (std::size_t i = half; i < count; ++i) work(i);
  });
  for (std::size_t i = 0; i < half; ++i) work(i);
  other.join();
}

}  // namespace soakwright
