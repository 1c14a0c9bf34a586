// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/modules/separate_process.h"

#ifdef _WIN32

namespace soakwright::cli {

std::optional<Problem> in_separate_process(const std::string& /*path*/,
                                           const std::function<std::optional<Problem>()>& work) {
  return work();
}

}  // namespace soakwright::cli

#else

#include <array>
#include <cerrno>
#include <charconv>
#include <cstdio>
#include <cstdlib>
#include <string_view>
#include <system_error>
#include <vector>

#include <sys/wait.h>
#include <unistd.h>

#include "core/problems/caught.h"

namespace soakwright::cli {
namespace {

/// The parts of a problem on the pipe, each ended by a zero; nothing at all is success.
constexpr char kEnd = '\0';
constexpr std::size_t kParts = 5;

void send(int pipe, const Problem& problem) {
  std::string text = std::to_string(static_cast<int>(problem.kind)) + kEnd;
  text +=
      problem.file + kEnd + std::to_string(problem.line) + kEnd + problem.what + kEnd + problem.help + kEnd;
  for (std::size_t sent = 0; sent < text.size();) {
    const ssize_t written = write(pipe, text.data() + sent, text.size() - sent);
    if (written < 0 && errno != EINTR) return;
    if (written > 0) sent += static_cast<std::size_t>(written);
  }
}

std::string received(int pipe) {
  std::string text;
  std::array<char, 4096> part{};
  for (;;) {
    const ssize_t count = read(pipe, part.data(), part.size());
    if (count < 0 && errno == EINTR) continue;
    if (count <= 0) return text;
    text.append(part.data(), static_cast<std::size_t>(count));
  }
}

template <typename Number>
Number number_in(std::string_view text) {
  Number number{};
  std::from_chars(text.data(), text.data() + text.size(), number);
  return number;
}

std::optional<Problem> problem_in(const std::string& text) {
  std::vector<std::string> parts;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t end = text.find(kEnd, from);
    if (end == std::string::npos) break;
    parts.push_back(text.substr(from, end - from));
    from = end + 1;
  }
  if (parts.size() != kParts) return std::nullopt;
  return Problem{static_cast<ProblemKind>(number_in<int>(parts[0])), parts[1],
                 number_in<std::size_t>(parts[2]), parts[3], parts[4]};
}

Problem not_started(const std::string& path) {
  return {ProblemKind::fault, path, 0,
          "no process can be started to write it: " + std::generic_category().message(errno),
          "close other programs, or use --json"};
}

Problem ended_by_itself(const std::string& path, const std::string& how) {
  return {ProblemKind::fault, path, 0, "not written: the report writer " + how,
          "use --json for the result, and report this with the log"};
}

[[noreturn]] void work_and_leave(int pipe, const std::function<std::optional<Problem>()>& work) {
  try {
    if (const auto problem = work()) send(pipe, *problem);
  } catch (...) {
    send(pipe, caught_problem({}));
  }
  std::fflush(stderr);
  _exit(EXIT_SUCCESS);  // what this process shares with the program, such as its output, is left alone
}

}  // namespace

std::optional<Problem> in_separate_process(const std::string& path,
                                           const std::function<std::optional<Problem>()>& work) {
  std::array<int, 2> ends{};
  if (pipe(ends.data()) != 0) return not_started(path);
  const pid_t child = fork();
  if (child < 0) {
    const Problem problem = not_started(path);
    close(ends[0]);
    close(ends[1]);
    return problem;
  }
  if (child == 0) {
    close(ends[0]);
    work_and_leave(ends[1], work);
  }
  close(ends[1]);
  const std::string text = received(ends[0]);
  close(ends[0]);
  int status = 0;
  while (waitpid(child, &status, 0) < 0)
    if (errno != EINTR) return not_started(path);
  if (WIFSIGNALED(status))
    return ended_by_itself(path, "was ended by signal " + std::to_string(WTERMSIG(status)));
  if (WEXITSTATUS(status) != EXIT_SUCCESS)
    return ended_by_itself(path, "ended with code " + std::to_string(WEXITSTATUS(status)));
  return text.empty() ? std::nullopt : problem_in(text);
}

}  // namespace soakwright::cli

#endif
