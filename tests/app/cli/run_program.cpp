// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/cli/run_program.h"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <utility>

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

namespace fs = std::filesystem;

namespace {

std::vector<std::string> environment_with(const Variables& variables) {
  std::vector<std::string> environment;
  for (char** entry = environ; *entry != nullptr; ++entry) {
    const std::string text = *entry;
    const bool replaced = std::any_of(variables.begin(), variables.end(), [&](const auto& variable) {
      return text.starts_with(variable.first + "=");
    });
    if (!replaced) environment.push_back(text);
  }
  for (const auto& [name, value] : variables) environment.push_back(name + "=" + value);
  return environment;
}

std::vector<char*> pointers_to(std::vector<std::string>& texts) {
  std::vector<char*> pointers;
  for (std::string& text : texts) pointers.push_back(text.data());
  pointers.push_back(nullptr);
  return pointers;
}

}  // namespace

namespace {

/// Runs words[0], a path, with the others as its arguments.
Ran run(std::vector<std::string> words, const Variables& variables, const std::string& standard_output) {
  const TemporaryFolder folder;
  const std::string out = standard_output.empty() ? folder.file("out") : standard_output;
  const std::string err = folder.file("err");
  std::vector<std::string> environment = environment_with(variables);

  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, out.c_str(), O_WRONLY | O_CREAT, 0644);
  posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, err.c_str(), O_WRONLY | O_CREAT, 0644);
  pid_t child = 0;
  const int spawned = posix_spawn(&child, words[0].c_str(), &actions, nullptr, pointers_to(words).data(),
                                  pointers_to(environment).data());
  posix_spawn_file_actions_destroy(&actions);
  if (spawned != 0) throw std::runtime_error("soakwright cannot be started");
  int status = 0;
  if (waitpid(child, &status, 0) != child) throw std::runtime_error("soakwright is lost");
  Ran ran;
  ran.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  if (standard_output.empty()) ran.out = text_of(out);
  ran.err = text_of(err);
  return ran;
}

}  // namespace

Ran run_soakwright(const std::vector<std::string>& arguments, const Variables& variables,
                   const std::string& standard_output) {
  std::vector<std::string> words{SOAKWRIGHT_PROGRAM};
  words.insert(words.end(), arguments.begin(), arguments.end());
  return run(std::move(words), variables, standard_output);
}

Ran run_limited(const std::string& limits, const std::vector<std::string>& arguments) {
  std::vector<std::string> words{"/bin/sh", "-c", "ulimit " + limits + "; exec \"$0\" \"$@\"",
                                 SOAKWRIGHT_PROGRAM};
  words.insert(words.end(), arguments.begin(), arguments.end());
  // The leak check itself needs files and memory.
  return run(std::move(words), {{"ASAN_OPTIONS", "detect_leaks=0"}}, {});
}

Ran run_killed(double seconds, const std::vector<std::string>& arguments) {
  const std::string milliseconds = std::to_string(static_cast<int>(1000.0 * seconds));
  // A decimal point whatever the locale says.
  const std::string text =
      "0." + std::string(6 - std::min<std::size_t>(milliseconds.size(), 6), '0') + milliseconds + "e3";
  std::vector<std::string> words{"/usr/bin/timeout", "-s", "KILL", text, SOAKWRIGHT_PROGRAM};
  words.insert(words.end(), arguments.begin(), arguments.end());
  return run(std::move(words), {}, {});
}

int kill_count(int usual) {
  const char* given = std::getenv("SOAKWRIGHT_KILLS");
  return given != nullptr ? std::atoi(given) : usual;
}

Ran run_words(const std::vector<std::string>& words) { return run(words, {}, {}); }

TemporaryFolder::TemporaryFolder() {
  std::string name = (fs::temp_directory_path() / "soakwright-test-XXXXXX").string();
  if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder can be made");
  path_ = name;
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code ignored;
  fs::remove_all(path_, ignored);
}

std::string TemporaryFolder::with(const std::string& name, const std::string& text) const {
  std::ofstream out(path_ / name, std::ios::binary);
  out << text;
  if (!out.flush()) throw std::runtime_error(name + " cannot be written");
  return file(name);
}

std::vector<std::string> TemporaryFolder::names() const {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(path_)) names.push_back(entry.path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

std::string text_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::string source_file(const std::string& path) { return std::string(SOAKWRIGHT_SOURCE_DIR) + "/" + path; }
std::string stress_relief_file(const std::string& name) {
  return source_file("sample-logs/w-117-stress-relief/" + name);
}
