// SPDX-License-Identifier: GPL-3.0-or-later
// Jobs as text: what the reader of job files makes of them.
#pragma once

#include <string>

#include "core/procedure/job/job_file.h"
#include "tests/core/procedure/refusals.h"

namespace soakwright::given_job {

inline const std::string kHead = "soakwright = \"job 1\"\n";

inline Result<Job> parsed(const std::string& text) { return parse_job(text, "given.toml"); }
inline Job job(const std::string& body) { return accepted(parsed(kHead + body)); }
inline LocalTime clock(const char* text) { return parse_local_time(text).value(); }

}  // namespace soakwright::given_job
