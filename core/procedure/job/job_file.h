// SPDX-License-Identifier: GPL-3.0-or-later
// The doors for job and review files: TOML text to Job and Review.
#pragma once

#include <string>
#include <string_view>

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"
#include "core/procedure/procedure.h"
#include "core/procedure/review/review.h"

namespace soakwright {

Result<Job> read_job(const std::string& path);
Result<Job> parse_job(std::string_view text, const std::string& file);

Result<Review> read_review(const std::string& path);
Result<Review> parse_review(std::string_view text, const std::string& file);

/// What only shows when both are known: a thickness rule and no thickness for a weld, `spread_within` and a
/// evaluated thermocouple without `position`, a decision that the job gives too little for. Empty where they
/// fit.
Problems check_compatibility(const Procedure& procedure, const Job* job);

}  // namespace soakwright
