// SPDX-License-Identifier: GPL-3.0-or-later
// One evaluation of a batch: which files it is made from.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "core/problems/problem.h"

namespace soakwright {

/// One of several parts of a batch that are run anywhere and know nothing of each other. Which part a record
/// belongs to depends on the names within its folder alone.
struct BatchPart {
  std::size_t number = 1;  ///< from 1
  std::size_t of = 1;
};

/// One evaluation: a log with the job that goes with it.
struct BatchEntry {
  std::string log;                 ///< path; empty where a job has none
  std::string job;                 ///< path; empty where there is none
  std::string report;              ///< path within the folder of reports
  std::string part_name;           ///< what decides the part it belongs to; empty: it is in every part
  std::vector<std::string> files;  ///< all that are read for it
  std::uint64_t bytes = 0;         ///< of the log
  Problems problems;               ///< not empty: nothing can be evaluated here
};

}  // namespace soakwright
