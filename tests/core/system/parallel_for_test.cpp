// SPDX-License-Identifier: GPL-3.0-or-later
// The one parallel loop: every piece once, also where threads cannot be had, and what is thrown comes out.
#include "core/system/parallel_for.h"

#include <atomic>
#include <functional>
#include <new>
#include <numeric>
#include <set>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

#include <catch2/catch.hpp>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "core/problems/caught.h"

using namespace soakwright;

namespace {

#if !defined(SOAKWRIGHT_SANITIZED)
/// What `work` returned in a process of its own, which ends with it; -1 where a signal ended the process.
int exit_code_of(const std::function<int()>& work) {
  const pid_t child = fork();
  if (child == 0) _exit(work());
  int status = 0;
  waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

/// From here on no further thread finds room for its stack.
void allow_no_more_memory() {
  const rlimit none{1, 1};
  setrlimit(RLIMIT_AS, &none);
}
#endif

}  // namespace

TEST_CASE("every piece of work is done once, on any number of threads") {
  for (const std::size_t threads : {0, 1, 2, 3, 8, 200}) {
    for (const std::size_t count : {0, 1, 2, 7, 1000}) {
      std::vector<int> done(count, 0);
      parallel_for_on(threads, count, [&](std::size_t i) { ++done[i]; });
      INFO(threads << " threads, " << count << " pieces");
      CHECK(done == std::vector<int>(count, 1));
    }
  }
}

TEST_CASE("what the work throws is thrown on the calling thread after the others have ended") {
  std::atomic<int> running{0};
  const auto work = [&](std::size_t i) {
    ++running;
    if (i % 2 == 1) {
      --running;
      throw std::out_of_range(std::to_string(i));
    }
    --running;
  };
  for (int round = 0; round < 50; ++round) {
    CHECK_THROWS_AS(parallel_for_on(4, 100, work), std::out_of_range);
    CHECK(running == 0);
  }
  CHECK_THROWS_WITH(parallel_for_on(1, 100, work), "1");
}

// AddressSanitizer needs memory of its own for each thread and ends the program where there is none.
#if !defined(SOAKWRIGHT_SANITIZED)
TEST_CASE("where no thread can be started the calling thread does all of the work") {
  const int code = exit_code_of([] {
    std::vector<int> done(50, 0);
    allow_no_more_memory();
    parallel_for_on(8, done.size(), [&](std::size_t i) { ++done[i]; });
    return std::accumulate(done.begin(), done.end(), 0);
  });
  CHECK(code == 50);
}
#endif

TEST_CASE("a lack of memory and a fault of the program are told apart") {
  const auto problem_for = [](const std::function<void()>& thrower) {
    const Problems problems = caught("a.csv", [&]() -> Problems {
      thrower();
      return {};
    });
    REQUIRE(problems.size() == 1);
    CHECK(static_cast<int>(problems.front().kind) == 70);
    return problems.front().text();
  };
  CHECK(problem_for([] { throw std::bad_alloc(); }) ==
        "a.csv: there is not enough memory for this; close other programs, or split the log");
  CHECK(problem_for([] { static_cast<void>(std::vector<int>{}.at(3)); }).find("memory") == std::string::npos);
  CHECK(
      problem_for([] { throw std::logic_error("no such stage"); }) ==
      "a.csv: a fault of the program itself: no such stage; please report it, with the files that were read");
  CHECK(problem_for([] { throw 7; }) ==
        "a.csv: a fault of the program itself; please report it, with the files that were read");
  CHECK(caught("a.csv", []() -> Problems { return {}; }).empty());
}

TEST_CASE("a loop within a limit runs on so many threads at most, and on all again behind it") {
  const std::size_t all = machine_threads();
  {
    const LoopThreadLimit one(1);
    CHECK(machine_threads() == 1);
    std::set<std::thread::id> threads;
    parallel_for(100, [&](std::size_t) { threads.insert(std::this_thread::get_id()); });
    CHECK(threads == std::set<std::thread::id>{std::this_thread::get_id()});
    {
      const LoopThreadLimit more(1000);
      CHECK(machine_threads() == all);
    }
    CHECK(machine_threads() == 1);
  }
  CHECK(machine_threads() == all);
}
