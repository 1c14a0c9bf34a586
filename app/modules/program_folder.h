// SPDX-License-Identifier: GPL-3.0-or-later
// Where the program itself is: what belongs to it is beside it or in a folder named from there.
#pragma once

#include <filesystem>

namespace soakwright::modules {

/// Empty where the system does not say.
std::filesystem::path program_folder();

}  // namespace soakwright::modules
