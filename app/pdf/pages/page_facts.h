// SPDX-License-Identifier: GPL-3.0-or-later
// Names and what is said under them, in one list or in two side by side.
#pragma once

#include <vector>

#include "app/pdf/page_flow.h"
#include "core/report/report.h"

namespace soakwright::pdf {

void put_facts(PageFlow& flow, const std::vector<LabelledText>& facts);

struct LabelColumn {
  QString heading;
  std::vector<LabelledText> facts;
};
/// Side by side; kept on one page where they fit one.
void put_fact_columns(PageFlow& flow, const std::vector<LabelColumn>& columns);

}  // namespace soakwright::pdf
