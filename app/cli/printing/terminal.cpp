// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/printing/terminal.h"

#include <algorithm>

#ifndef _WIN32
#include <sys/ioctl.h>
#include <unistd.h>
#endif

namespace soakwright::cli {
namespace {

constexpr std::size_t kUsual = 80;
constexpr std::size_t kLeast = 40;

}  // namespace

#ifdef _WIN32
bool error_is_terminal() { return false; }
bool output_is_terminal() { return false; }
std::size_t terminal_width() { return kUsual; }
#else
bool error_is_terminal() { return isatty(STDERR_FILENO) != 0; }
bool output_is_terminal() { return isatty(STDOUT_FILENO) != 0; }

std::size_t terminal_width() {
  for (const int descriptor : {STDOUT_FILENO, STDERR_FILENO}) {
    winsize size{};
    if (isatty(descriptor) != 0 && ioctl(descriptor, TIOCGWINSZ, &size) == 0 && size.ws_col > 0)
      return std::max<std::size_t>(size.ws_col, kLeast);
  }
  return kUsual;
}
#endif

}  // namespace soakwright::cli
