// SPDX-License-Identifier: GPL-3.0-or-later
// Where signatures go in a printed report, and what the bytes of its pages depend on: both are written into
// the report's file for who signs and who verifies it.
#pragma once

#include <string>
#include <vector>

#include "app/evidence/evidence_update.h"
#include "app/pdf/page_flow.h"
#include "core/report/report.h"

namespace soakwright::pdf {

/// The places that the pages mark, in points.
std::vector<evidence::SignatureBox> signature_boxes(const std::vector<Page>& pages, const Report& report);

/// Qt's version and the fonts that pages are set in, each by its family and the checksum that it carries of
/// itself (`head`, ISO/IEC 14496-22). Another set-up breaks lines elsewhere.
std::string printing_set_up();

}  // namespace soakwright::pdf
