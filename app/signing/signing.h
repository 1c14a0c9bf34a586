// SPDX-License-Identifier: GPL-3.0-or-later
// Entry points of this module: sign a report, verify a report. What both need from outside is in
// core/report/signing_border.h.
#pragma once

#include <optional>
#include <vector>

#include "core/problems/problem.h"
#include "core/report/signing_border.h"

namespace soakwright::signing {

/// Adds a signature to the report and writes it, whole or not at all. Returns nullopt if it is written.
/// Refused: a report that fails a check, a draft (a finding without a disposition), a key or certificate that
/// cannot sign, and a role for which no place is left.
std::optional<Problem> sign_report(const SignOrder& order, const ReportPrinter& printer);

/// What was checked, one line each; a problem where the file is no report that can be looked at.
Result<std::vector<CheckLine>> verify_report(const VerifyOrder& order, const ReportPrinter& printer,
                                             const Watch& watch = {});

}  // namespace soakwright::signing
