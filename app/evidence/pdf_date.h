// SPDX-License-Identifier: GPL-3.0-or-later
// Dates as PDF writes them (ISO 32000-1, 7.9.4), in UTC.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "app/evidence/pdf_value.h"

namespace soakwright::evidence {

/// "D:20260402130501Z" of a Unix time.
PdfValue pdf_date(std::int64_t unix_s);
/// Only of the form that pdf_date() writes.
std::optional<std::int64_t> unix_time(const PdfValue& date);
/// "2026-04-02 13:05:01 UTC"
std::string utc_text(std::int64_t unix_s);

}  // namespace soakwright::evidence
