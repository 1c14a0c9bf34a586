// SPDX-License-Identifier: GPL-3.0-or-later
// Runs the built program as a user would, and a folder for the files of one test.
#pragma once

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

/// What a run of the program left behind. A run that a signal ended has the exit code 128 + signal.
struct Ran {
  int exit_code = -1;
  std::string out;
  std::string err;
};

using Variables = std::vector<std::pair<std::string, std::string>>;

/// `soakwright ARGUMENTS`, with nothing on standard input; `variables` are added to the environment.
/// `standard_output` is a file to write to in place of the text in `out`.
Ran run_soakwright(const std::vector<std::string>& arguments, const Variables& variables = {},
                   const std::string& standard_output = {});

/// The same under limits, in the words of the shell's `ulimit` (POSIX): "-n 4", "-v 60000", "-f 10".
Ran run_limited(const std::string& limits, const std::vector<std::string>& arguments);

/// The same, ended by SIGKILL after `seconds` if it is not done before: then the exit code is kKilled.
Ran run_killed(double seconds, const std::vector<std::string>& arguments);
inline constexpr int kKilled = 128 + 9;

/// How often tests that kill the program do so: `usual`, or SOAKWRIGHT_KILLS where a long run sets it.
int kill_count(int usual);

/// Runs words[0], the path of any program, with the others as its arguments.
Ran run_words(const std::vector<std::string>& words);

/// A folder of its own that is gone after the test.
class TemporaryFolder {
 public:
  TemporaryFolder();
  ~TemporaryFolder();
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;

  /// The path of a file in it.
  [[nodiscard]] std::string file(const std::string& name) const { return (path_ / name).string(); }
  /// Writes one, and gives its path.
  [[nodiscard]] std::string with(const std::string& name, const std::string& text) const;
  /// Names of all that is in it, sorted.
  [[nodiscard]] std::vector<std::string> names() const;

 private:
  std::filesystem::path path_;
};

std::string text_of(const std::filesystem::path& file);

/// A file of the source tree.
std::string source_file(const std::string& path);
/// A file of the sample of a nozzle's stress relief.
std::string stress_relief_file(const std::string& name);
