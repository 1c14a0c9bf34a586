// SPDX-License-Identifier: GPL-3.0-or-later
// Why the text of a procedure, job or review cannot be read, in words.
#pragma once

#include <string>

#include "core/problems/problem.h"

namespace soakwright::text_file_problems {

Problem empty_path();
Problem no_such_file(const std::string& path);
Problem not_permitted(const std::string& path);
Problem not_readable(const std::string& path);
Problem is_folder(const std::string& path);
Problem pipe_or_device(const std::string& path);
/// More than 16 MB.
Problem far_too_large(const std::string& path);

}  // namespace soakwright::text_file_problems
