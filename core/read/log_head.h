// SPDX-License-Identifier: GPL-3.0-or-later
// The beginning of a log as lines of text: what everything is settled from before the rows are read.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/problems/problem.h"
#include "core/read/reading_settings.h"
#include "core/read/source_file.h"
#include "core/units/setting.h"

namespace soakwright {

struct LogHead {
  Setting<TextEncoding> encoding;
  std::size_t mark_bytes = 0;  ///< byte order mark at the front of the file
  char line_end = '\n';        ///< '\r' where the file has no other
  /// UTF-16 as UTF-8; 8-bit encodings as they are; without the mark. It stays where it is when the head
  /// moves: the lines are pieces of it.
  std::shared_ptr<const std::string> text;
  std::vector<std::string_view> lines;  ///< whole lines of `text`, without their ends
  bool atomic_file = false;
};

/// At least `wanted_bytes` of the file, or all of it, and as much more as it takes to have a few lines.
Result<LogHead> read_head(const SourceFile& file, const std::string& path, std::optional<TextEncoding> given,
                          std::size_t wanted_bytes);

/// A line longer than this is no line of a table.
inline constexpr std::size_t kLongestLine = std::size_t{16} << 20;

}  // namespace soakwright
