// SPDX-License-Identifier: GPL-3.0-or-later
// Header lines among the rows of stitched files: the same again, or the beginning of another table.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace soakwright {

enum class HeaderRepeat {
  none,
  same_header,
  same_units,
  other_header,  ///< other names, another order or other units: what follows is not this table
};

class RepeatedHeader {
 public:
  /// The table's own header and units lines, empty where there is none; `time_cell` is where its time stands.
  RepeatedHeader(std::string_view header, std::string_view units, char delimiter, std::size_t time_cell);

  /// What a line without a readable time is.
  [[nodiscard]] HeaderRepeat kind_of(std::string_view line, char delimiter) const;

 private:
  std::vector<std::string> header_;  ///< cells in lower case, empty ones at the end left out
  std::vector<std::string> units_;
  std::size_t time_cell_;
};

}  // namespace soakwright
