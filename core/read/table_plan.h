// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that is settled before the first row is read.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "core/read/time/time_detection.h"

namespace soakwright {

struct TablePlan {
  char delimiter = ',';
  char decimal = '.';
  char line_end = '\n';
  bool all_utf8 = false;  ///< was given: a byte that is none is refused
  std::size_t cells = 0;  ///< in a row
  TimePlan time;
  int base_offset_minutes = 0;            ///< of the first stamp; later stamps are brought to it
  std::vector<std::size_t> number_cells;  ///< the cell of each column of the store, ascending
  std::vector<int> places;                ///< of each column of the store, as far as the first rows show
  std::size_t lines_before = 0;           ///< lines of the file before the first row
  std::string header_text;                ///< the header line as it stands; empty where there is none
  std::string units_text;
};

}  // namespace soakwright
