// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a review was made on this result: its dispositions are printed beside findings and signatures, and
// must not stand under another.
#pragma once

#include "core/evaluate/analysis.h"
#include "core/problems/problem.h"

namespace soakwright {

/// The SHA-256 of the bytes that result_json() gives for the analysis, in lower case. A review is no part of
/// the result, so the digest is the same with and without one: it is what a reviewer gets from the file that
/// `--json` writes.
std::string result_digest(const Analysis& analysis);

/// Empty if analysis.review belongs to this result (analysis.result_sha256): it names its digest, and each of
/// its dispositions belongs to a finding, and no finding has two that differ. All that is wrong is said at
/// once.
Problems check_review(const Analysis& analysis);

}  // namespace soakwright
