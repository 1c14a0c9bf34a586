// SPDX-License-Identifier: GPL-3.0-or-later
// Whether an output would be written over a file that is read.
#pragma once

#include <string>

namespace soakwright::modules {

/// Whether two paths name one file, whether it is there already or only will be. Two names of one device are
/// no clash.
bool one_file(const std::string& a, const std::string& b);

}  // namespace soakwright::modules
