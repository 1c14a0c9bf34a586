// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/endings.h"

#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <new>

#include "core/problems/problem.h"
#include "core/system/atomic_file.h"

namespace soakwright::cli {
namespace {

void end_by_signal(int signal) {
  remove_part_file_at_signal();
  std::signal(signal, SIG_DFL);
  std::raise(signal);
}

/// Memory may be what is missing: nothing here asks for any.
[[noreturn]] void end_by_fault() {
  bool memory = false;
  if (const std::exception_ptr thrown = std::current_exception()) {
    try {
      std::rethrow_exception(thrown);
    } catch (const std::bad_alloc&) {
      memory = true;
    } catch (...) {
      memory = false;
    }
  }
  remove_part_file_at_signal();
  std::fputs(
      memory ? "soakwright: there is not enough memory for this; close other programs, or split the log\n"
             : "soakwright: a fault of the program itself; please report it, with the files that were read\n",
      stderr);
  std::_Exit(static_cast<int>(ProblemKind::fault));
}

}  // namespace

void prepare_endings() {
#ifndef _WIN32
  std::signal(SIGXFSZ, SIG_IGN);
  std::signal(SIGHUP, end_by_signal);
#endif
  std::signal(SIGINT, end_by_signal);
  std::signal(SIGTERM, end_by_signal);
  std::set_terminate(end_by_fault);
}

}  // namespace soakwright::cli
