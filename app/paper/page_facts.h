// Names and what is said under them, in one list or in two side by side.
#pragma once

#include <vector>

#include "app/paper/page_flow.h"
#include "core/report/report.h"

namespace soakwright::paper {

void put_facts(PageFlow& flow, const std::vector<Fact>& facts, double name_mm, double points = 8.0);

struct FactColumn {
  QString heading;
  std::vector<Fact> facts;
};
/// Side by side; kept on one page where they fit one.
void put_fact_columns(PageFlow& flow, const std::vector<FactColumn>& columns, double name_mm);

}  // namespace soakwright::paper
