// SPDX-License-Identifier: GPL-3.0-or-later
// Any text as a job: problems that say something, with lines that the text has, or a value.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/procedure/job/job_file.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text{reinterpret_cast<const char*>(data), size};
  const auto read = soakwright::parse_job(text, "fuzzed.toml");
  if (read) return 0;
  if (read.problems().empty()) std::abort();
  const auto lines = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) + 1;
  for (const soakwright::Problem& problem : read.problems())
    if (problem.what.empty() || problem.line > lines) std::abort();
  return 0;
}
