// SPDX-License-Identifier: GPL-3.0-or-later
// By what a file is known again: which one it is, and whether it changed since.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace soakwright {

/// One file or folder, whatever it is called: device and number in it.
struct FileIdentity {
  std::uint64_t device = 0, number = 0;
  auto operator<=>(const FileIdentity&) const = default;
};

/// Links are followed. Returns nullopt where there is nothing.
std::optional<FileIdentity> identity_of(const std::string& path);

/// Bytes of the file; 0 where there is none.
std::uint64_t size_of(const std::string& path);

/// A text that differs once one of the files has another size, other times of change (content or state, to
/// the system's own digit) or is another file, and where one comes or goes.
std::string stamp_of(const std::vector<std::string>& paths);

}  // namespace soakwright
