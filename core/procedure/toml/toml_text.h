// SPDX-License-Identifier: GPL-3.0-or-later
// Values as TOML writes them.
#pragma once

#include <string>
#include <string_view>

namespace soakwright {

/// In double quotes (TOML 1.0, basic strings).
std::string toml_text(std::string_view text);
/// As a float that reads back to the same double; with a point or an exponent, since 12 would be an integer.
std::string toml_number(double value);

}  // namespace soakwright
