// SPDX-License-Identifier: GPL-3.0-or-later
// A report set on pages, in the report's own order. The sections stand in files of their own
// (page_sections.h).
#pragma once

#include <memory>
#include <vector>

#include "app/pdf/page_flow.h"
#include "app/pdf/pages/page_sections.h"
#include "core/report/report.h"
#include "core/system/watch.h"

namespace soakwright::pdf {

/// The pages draw from the report, which is kept alive by them. Where a page would be mostly empty, the
/// charts whose height is free are drawn a little higher or lower; once `watch` is cancelled, that is not
/// tried.
std::vector<Page> report_pages(const std::shared_ptr<const Report>& report, Scale scale,
                               const IssueFacts& issue, const Watch& watch = {});

}  // namespace soakwright::pdf
