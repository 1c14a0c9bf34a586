// SPDX-License-Identifier: GPL-3.0-or-later
// What a job calls the columns of a log, and a job with an entry for each.
#pragma once

#include <string>

#include "app/gui/open_case.h"

namespace soakwright::gui {

/// The channel's name, or its column's number where the name is another's too.
std::string column_entry(const Record& record, std::size_t channel);

/// The text of a job that names log and procedure of `open` and lists every thermocouple of the record.
std::string job_for_record(const OpenCase& open);

}  // namespace soakwright::gui
