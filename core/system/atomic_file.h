// SPDX-License-Identifier: GPL-3.0-or-later
// The one writer of all output files: whole or not at all.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/problems/problem.h"

namespace soakwright {

/// Writes `bytes` to `path` (the bytes of a file name, in whatever encoding). They go to a part file in the
/// same folder, reach the disk, and then take the name: an existing file is replaced only by a whole one and
/// keeps its permissions. A symbolic link is followed; a device or pipe is written to directly. Every write
/// is checked. Returns nullopt if all of it is written, else a cannot_write problem, with nothing left
/// behind.
///
/// Where the system limits the size of files, the program must ignore SIGXFSZ to get the problem.
std::optional<Problem> write_file_whole(const std::string& path, std::string_view bytes);

/// The file that writing to `path` would create or replace: links followed, the folder resolved, also where
/// there is no such file yet. Two paths with one place name one file. Empty where the links lead nowhere.
std::string written_place(const std::string& path);

/// Removes the part file that is being written, if there is one. For a signal handler that ends the program:
/// it calls only what POSIX allows there.
void remove_part_file_at_signal() noexcept;

}  // namespace soakwright
