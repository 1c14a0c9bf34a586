// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/modules/report_child.h"

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <system_error>
#include <utility>
#include <vector>

#ifndef _WIN32
#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>
#endif

namespace soakwright::cli {
namespace {

Problem no_report(const std::string& path, const std::string& why) {
  return {ProblemKind::fault, path, 0, "the report is not made: " + why,
          "make it alone with `soakwright check`"};
}

std::vector<std::string> command_line(const BatchRequest& request, const BatchEntry& entry,
                                      const std::string& path) {
  std::vector<std::string> words{"soakwright", "check", "--json", "-", "--report", path};
  if (!entry.job.empty()) words.insert(words.end(), {"--job", entry.job});
  if (!request.procedure.empty()) words.insert(words.end(), {"--procedure", request.procedure});
  if (request.dates) {
    constexpr std::array<const char*, 3> kOrders{"dmy", "mdy", "ymd"};
    words.insert(words.end(), {"--dates", kOrders.at(static_cast<std::size_t>(*request.dates))});
  }
  if (request.unit)
    words.insert(words.end(), {"--unit", *request.unit == TemperatureUnit::fahrenheit ? "F" : "C"});
  words.insert(words.end(), {"--", entry.log});
  return words;
}

}  // namespace

#ifdef _WIN32
std::optional<Problem> write_report_in_child(const BatchRequest&, const BatchEntry&, const std::string&,
                                             const std::string& path) {
  return no_report(path, "this build cannot start processes");
}
#else
namespace {

/// Both outputs of a child, read to their ends.
struct ChildOutput {
  int exit_code = -1;  ///< 128 + signal where one ended it
  std::string out, err;
};

void append_from(int descriptor, std::string& text) {
  std::array<char, 16384> piece{};
  for (;;) {
    const ssize_t got = ::read(descriptor, piece.data(), piece.size());
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return;
    text.append(piece.data(), static_cast<std::size_t>(got));
  }
}

/// An open file without a name, for messages that may be longer than a pipe holds.
int unnamed_file() {
  std::error_code error;
  std::string name = (std::filesystem::temp_directory_path(error) / "soakwright-XXXXXX").string();
  const int descriptor = ::mkostemp(name.data(), O_CLOEXEC);
  if (descriptor >= 0) ::unlink(name.c_str());
  return descriptor;
}

/// errno where the child cannot be started.
int run_child(std::vector<std::string> words, ChildOutput& output) {
  int pipe_ends[2];
  if (::pipe2(pipe_ends, O_CLOEXEC) != 0) return errno;
  const int messages = unnamed_file();
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_adddup2(&actions, pipe_ends[1], STDOUT_FILENO);
  if (messages >= 0) posix_spawn_file_actions_adddup2(&actions, messages, STDERR_FILENO);
  std::vector<char*> pointers;
  pointers.reserve(words.size() + 1);
  for (std::string& word : words) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  pid_t child = 0;
  const int error = ::posix_spawn(&child, "/proc/self/exe", &actions, nullptr, pointers.data(), environ);
  posix_spawn_file_actions_destroy(&actions);
  ::close(pipe_ends[1]);
  if (error == 0) {
    append_from(pipe_ends[0], output.out);
    int status = 0;
    while (::waitpid(child, &status, 0) < 0 && errno == EINTR) {
    }
    output.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    if (messages >= 0 && ::lseek(messages, 0, SEEK_SET) == 0) append_from(messages, output.err);
  }
  ::close(pipe_ends[0]);
  if (messages >= 0) ::close(messages);
  return error;
}

/// The child's own first message, without the program's name.
std::string first_message(const std::string& err) {
  constexpr std::string_view kName = "soakwright: ";
  const std::string line = err.substr(0, err.find('\n'));
  return line.starts_with(kName) ? line.substr(kName.size()) : line;
}

}  // namespace

std::optional<Problem> write_report_in_child(const BatchRequest& request, const BatchEntry& entry,
                                             const std::string& result, const std::string& path) {
  ChildOutput output;
  if (const int error = run_child(command_line(request, entry, path), output); error != 0)
    return no_report(path, std::strerror(error));
  if (output.exit_code > 2) {
    const std::string said = first_message(output.err);
    Problem problem =
        no_report(path, said.empty() ? "its process ended with " + std::to_string(output.exit_code) : said);
    if (output.exit_code == static_cast<int>(ProblemKind::cannot_write))
      problem.kind = ProblemKind::cannot_write;
    return problem;
  }
  if (output.out == result) return std::nullopt;
  std::error_code error;
  std::filesystem::remove(path, error);
  return Problem{ProblemKind::fault, path, 0,
                 "the log, the job or the procedure changed while the report was made, and it is removed",
                 "run the batch again with --resume"};
}
#endif

}  // namespace soakwright::cli
