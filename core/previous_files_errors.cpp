// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/previous_files_errors.h"

namespace soakwright {

Problem other_number_of_previous_files(const std::string& job, std::size_t named, std::size_t given) {
  return {ProblemKind::bad_input, job, 0,
          "the job names " + std::to_string(named) + " previous records, and files of " +
              std::to_string(given) + " are given",
          "give the files of each"};
}

}  // namespace soakwright
