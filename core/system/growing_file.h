// SPDX-License-Identifier: GPL-3.0-or-later
// An output that grows while work goes on, and takes its name only when it is whole.
//
// The text goes to PATH.part, which can be read meanwhile; finish() gives it the name PATH. The program's
// end by force leaves PATH.part and never half a PATH. A device or pipe is written to directly.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/problems/problem.h"
#include "core/system/file_descriptor.h"

namespace soakwright {

class GrowingFile {
 public:
  /// Symbolic links are followed. What an earlier run left in PATH.part is dropped.
  static Result<GrowingFile> open(const std::string& path);
  /// Without finish() the part file is removed.
  ~GrowingFile();
  GrowingFile(GrowingFile&& other) noexcept;
  GrowingFile& operator=(GrowingFile&&) = delete;

  /// Returns nullopt if all of it is written.
  std::optional<Problem> append(std::string_view bytes);
  /// The bytes reach the disk, and the part file takes the name; an existing file keeps its permissions.
  std::optional<Problem> finish();

 private:
  GrowingFile(std::string path, std::string target, std::string part, Descriptor file);
  std::string path_;    ///< as the user named it
  std::string target_;  ///< links followed
  std::string part_;    ///< empty: written to directly
  Descriptor file_;
};

/// The part file of an output at `path`, links followed.
std::string part_file_of(const std::string& path);

/// True for a path where a device, a pipe or an open file of this process is.
bool is_device_or_pipe(const std::string& path);

}  // namespace soakwright
