// SPDX-License-Identifier: GPL-3.0-or-later
// What is known of the terminal, where there is one.
#pragma once

#include <cstddef>

namespace soakwright::cli {

bool error_is_terminal();
bool output_is_terminal();

/// Columns of the terminal that standard output is connected to, else of standard error's; 80 where neither
/// is one or it does not say. At least 40.
std::size_t terminal_width();

}  // namespace soakwright::cli
