// Writing a file whole or not at all.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/problems/problem.h"

namespace soakwright {

/// Writes `text` to `path`. The file that was there is replaced only by a whole one: the text goes to a
/// temporary file in the same folder, which then takes the name. A symbolic link is followed; a device or
/// pipe is written to directly. Nothing where it went well.
std::optional<Problem> write_file_whole(const std::string& path, std::string_view text);

/// Writes to standard output and sees to it that it arrived.
std::optional<Problem> write_standard_output(std::string_view text);

}  // namespace soakwright
