// SPDX-License-Identifier: GPL-3.0-or-later
// The door of this room: a log on disk becomes a table.
//
// 1. read_head()       the first lines, and their encoding
// 2. detect_dialect()  delimiter, decimal sign, number of cells
// 3. detect_header()   heading, names, units, first row
// 4. detect_time()     which cells are the time, and of what kind
// 5. BlockReader       the file in blocks of whole lines, its hash on the way
// 6. RowParser         rows into columns, one parser per thread
// 7. settle_dates()    day, month and year
// 8. assemble_table()  one table
#pragma once

#include <cstddef>
#include <string>

#include "core/problems/problem.h"
#include "core/read/log_table.h"
#include "core/system/watch.h"

namespace soakwright {

/// How the reading is done; never what comes out of it.
struct ReadingMeans {
  unsigned threads = 0;  ///< 0: one for a small file, all cores for a large one
  std::size_t block_bytes = std::size_t{256} << 10;
  bool careful = false;  ///< every cell by the careful way
  Watch watch = {};      ///< asked after every block; progress is the share of the file that is read
};

/// Stopped by the watch, it gives an empty list of problems.
Result<LogTable> read_log(const std::string& path, const GivenSettings& given,
                          const ReadingMeans& means = {});

}  // namespace soakwright
