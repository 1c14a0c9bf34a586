// SPDX-License-Identifier: GPL-3.0-or-later
// A large log can be stopped while it is read, and says how far it is.
#include <algorithm>
#include <atomic>
#include <chrono>
#include <ctime>
#include <string>
#include <thread>
#include <vector>

#include <catch2/catch.hpp>

#include "core/record/record_file.h"
#include "tests/core/read/written_log.h"

using namespace soakwright;

namespace {

/// A record of `rows` seconds with six channels.
std::string long_log(std::size_t rows) {
  std::string text = "Time (s),TC1 (C),TC2 (C),TC3 (C),TC4 (C),TC5 (C),TC6 (C)\n";
  text.reserve(rows * 52);
  for (std::size_t i = 0; i < rows; ++i) {
    text += std::to_string(i);
    for (std::size_t c = 0; c < 6; ++c) {
      const std::size_t tenths = 200 + (i / 10 + c * 7) % 6000;
      text += ',' + std::to_string(tenths / 10) + '.' + std::to_string(tenths % 10);
    }
    text += '\n';
  }
  return text;
}

}  // namespace

TEST_CASE(
    "reading says its share of the file, from this thread, and ends at 1 or stops where it is told to") {
  const WrittenLog log(long_log(300'000));  // some 12 MB: read by several threads
  std::vector<double> shares;
  std::atomic<bool> cancelled{false};
  const auto here = std::this_thread::get_id();
  Watch watch;
  watch.cancelled = &cancelled;
  watch.progress = [&](double share) {
    CHECK(std::this_thread::get_id() == here);
    shares.push_back(share);
  };
  REQUIRE(read_record(log.path(), nullptr, std::nullopt, watch).ok());
  CHECK(shares.size() > 5);
  CHECK(std::is_sorted(shares.begin(), shares.end()));
  CHECK(shares.back() <= 1.0);

  shares.clear();
  watch.progress = [&](double share) {
    shares.push_back(share);
    cancelled = share > 0.2;
  };
  const auto stopped = read_record(log.path(), nullptr, std::nullopt, watch);
  REQUIRE_FALSE(stopped.ok());
  CHECK(stopped.problems().empty());
  CHECK(shares.back() < 0.9);
}

TEST_CASE("reading stops within 0.2 s of work after it is told to") {
  const WrittenLog log(long_log(120'000));
  int stopped = 0;
  for (const int after_ms : {0, 5, 10, 20, 40}) {
    std::atomic<bool> cancelled{false};
    // The processor's time and not the clock's: other programs on the machine do not count.
    std::clock_t told = 0;
    std::thread teller([&] {
      std::this_thread::sleep_for(std::chrono::milliseconds(after_ms));
      told = std::clock();
      cancelled = true;
    });
    const auto read = read_record(log.path(), nullptr, std::nullopt, Watch{{}, &cancelled});
    const std::clock_t ended = std::clock();
    teller.join();
    INFO("told after " << after_ms << " ms");
    if (read.ok()) continue;  // it was read before it was told to stop
    ++stopped;
    CHECK(read.problems().empty());
    CHECK(static_cast<double>(ended - told) / CLOCKS_PER_SEC < 0.2);
  }
  CHECK(stopped > 0);
}
