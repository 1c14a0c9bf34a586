// SPDX-License-Identifier: GPL-3.0-or-later
// The bytes of a small text file: procedure, job, review.
#pragma once

#include <string>

#include "core/problems/problem.h"

namespace soakwright {

/// All bytes of the file at `path`; cannot_open where it is not there, is no regular file or may not be read,
/// bad_input where it is far larger than any file that a person writes.
Result<std::string> read_text_file(const std::string& path);

}  // namespace soakwright
