// SPDX-License-Identifier: GPL-3.0-or-later
// With little memory, few files or small files allowed the program says so and ends; it is never aborted.
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/app/cli/run_program.h"

using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

const std::string job = source_file("sample-logs/w-117-stress-relief/job.toml");

#if defined(SOAKWRIGHT_SANITIZED)
constexpr bool kMemoryCanBeLimited = false;  // the sanitizers reserve more than any limit
constexpr int kFewestFiles = 8;              // they open some themselves to look at an address
#else
constexpr bool kMemoryCanBeLimited = true;
constexpr int kFewestFiles = 3;
#endif

/// The codes of shell and loader where the program cannot even be loaded: this one, and the next.
constexpr int kNotLoaded = 126;
constexpr int kAborted = 134;
/// The kernel's answer where not even the file of the program fits: no line of it or of the loader has run.
constexpr int kNotMapped = 139;

}  // namespace

TEST_CASE("little memory is a message, and not an abort") {
  if (!kMemoryCanBeLimited) return;
  int refused = 0;
  int done = 0;
  bool loader_ran = false;
  // Up to 20 limits that are enough: how much that is depends on how the program was built.
  for (int kilobytes = 5'000; kilobytes <= 60'000 && done < 20; kilobytes += 250) {
    const Ran ran = run_limited("-v " + std::to_string(kilobytes), {"check", "--job", job});
    INFO(kilobytes << " kB, exit " << ran.exit_code << "\n" << ran.err);
    if (ran.exit_code == kNotLoaded || ran.exit_code == kNotLoaded + 1) {
      loader_ran = true;
      continue;
    }
    if (ran.exit_code == kNotMapped && !loader_ran && refused == 0 && done == 0) continue;
    // Just above what the loader needs, constants of linked libraries are made before main() with so little
    // memory that the C++ runtime cannot even throw.
    const bool before_main = refused == 0 && done == 0 && ran.exit_code == kAborted &&
                             ran.err.find("without an active exception") != std::string::npos;
    if (before_main) continue;
    if (ran.exit_code == 0) {
      ++done;
      CHECK(ran.err.empty());
      continue;
    }
    ++refused;
    CHECK(ran.exit_code == 70);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, StartsWith("soakwright: ") && Contains("not enough memory"));
  }
  CHECK(refused > 0);
  CHECK(done > 0);
}

TEST_CASE("few open files are enough, or a message") {
  int done = 0;
  for (int files = kFewestFiles; files < kFewestFiles + 5; ++files) {
    const Ran ran = run_limited("-n " + std::to_string(files), {"check", "--job", job});
    INFO(files << " files, exit " << ran.exit_code << "\n" << ran.err);
    if (ran.exit_code == kNotLoaded + 1) continue;
    CHECK((ran.exit_code == 0 || ran.exit_code == 66));
    if (ran.exit_code == 0)
      ++done;
    else
      CHECK_THAT(ran.err, StartsWith("soakwright: ") && Contains("; "));
  }
  CHECK(done > 0);
}

TEST_CASE("a limit on the size of files is a message and leaves what was there") {
  const TemporaryFolder folder;
  const std::string json = folder.with("result.json", "old");
  const Ran ran = run_limited("-f 4", {"check", "--job", job, "--json", json});
  INFO(ran.err);
  CHECK(ran.exit_code == 73);
  CHECK_THAT(ran.err, StartsWith("soakwright: " + json + ": cannot be written: "));
  CHECK(text_of(json) == "old");
  CHECK(folder.names() == std::vector<std::string>{"result.json"});
}
