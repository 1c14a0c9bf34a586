// SPDX-License-Identifier: GPL-3.0-or-later
// A path as it is shown in results: two paths that differ never look the same.
#pragma once

#include <string>
#include <string_view>

namespace soakwright {

/// Valid UTF-8 stays as it is. Bytes that are no UTF-8, what steers a terminal or the writing direction, and
/// the backslash itself become \xNN, one for each byte.
std::string path_text(std::string_view path);

}  // namespace soakwright
