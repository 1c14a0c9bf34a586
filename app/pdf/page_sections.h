// SPDX-License-Identifier: GPL-3.0-or-later
// The sections of the printed report, each put on the pages by a function of its own.
#pragma once

#include <memory>

#include "app/pdf/page_flow.h"
#include "core/report/report.h"

namespace soakwright::pdf {

// front_page.cpp
void put_front(PageFlow& flow, const Report& report);
// evaluation_pages.cpp
void put_welds(PageFlow& flow, const Report& report);
void put_requirements(PageFlow& flow, const Report& report);
void put_findings(PageFlow& flow, const Report& report);
// explanation_pages.cpp
void put_explanations(PageFlow& flow, const Report& report);
// chart_pages.cpp
void put_chart(PageFlow& flow, const std::shared_ptr<const Report>& report);
void put_evidence(PageFlow& flow, const std::shared_ptr<const Report>& report);
// thermocouple_pages.cpp
void put_holds(PageFlow& flow, const std::shared_ptr<const Report>& report);
void put_rates(PageFlow& flow, const Report& report);
void put_channels(PageFlow& flow, const Report& report);
// budget_pages.cpp
void put_budgets(PageFlow& flow, const Report& report);
// heat_pages.cpp
void put_figures(PageFlow& flow, const FigureTable& table);
void put_heat(PageFlow& flow, const Report& report);
// record_pages.cpp
void put_procedure(PageFlow& flow, const Report& report);
void put_course(PageFlow& flow, const Report& report);
void put_reading(PageFlow& flow, const Report& report);
// closing_pages.cpp
void put_methods(PageFlow& flow, const Report& report);
void put_cautions(PageFlow& flow, const Report& report);
void put_files(PageFlow& flow, const Report& report);
void put_signatures(PageFlow& flow, const Report& report);

}  // namespace soakwright::pdf
