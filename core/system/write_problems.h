// SPDX-License-Identifier: GPL-3.0-or-later
// What is said where an output cannot be written.
#pragma once

#include <string>

#include "core/problems/problem.h"

namespace soakwright {

Problem cannot_write(const std::string& path, const std::string& why);
/// `error` is the system's errno.
Problem cannot_write(const std::string& path, int error);
Problem links_lead_nowhere(const std::string& path);
Problem is_a_folder(const std::string& path);
Problem written_by_another_run(const std::string& path);

}  // namespace soakwright
