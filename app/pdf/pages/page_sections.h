// SPDX-License-Identifier: GPL-3.0-or-later
// The sections of a printed report, in files of their own: each puts what it has to say into the flow.
// report_pages() puts them in order.
#pragma once

#include <QImage>
#include <QString>
#include <memory>

#include "app/pdf/page_flow.h"
#include "core/report/report.h"

namespace soakwright::pdf {

/// What the pages need beside the report.
struct IssueFacts {
  QString date;    ///< of issue
  QImage picture;  ///< of the company; null where there is none
};

// certificate_pages.cpp
void put_certificates(PageFlow& flow, const std::shared_ptr<const Report>& report, const IssueFacts& issue);
// signature_block.cpp
double signature_height(const PageFlow& flow, const Report& report);
void put_signatures(PageFlow& flow, const Report& report);
// requirement_pages.cpp
void put_requirements(PageFlow& flow, const Report& report);
// event_pages.cpp
void put_events(PageFlow& flow, const std::shared_ptr<const Report>& report);
// explanation_pages.cpp
void put_explanations(PageFlow& flow, const Report& report);
// chart_pages.cpp
void put_charts(PageFlow& flow, const std::shared_ptr<const Report>& report);
// thermocouple_pages.cpp
void put_holds(PageFlow& flow, const std::shared_ptr<const Report>& report);
void put_rates(PageFlow& flow, const Report& report);
void put_channels(PageFlow& flow, const Report& report);
// previous_pages.cpp
void put_previous_records(PageFlow& flow, const Report& report);
// budget_pages.cpp
void put_budgets(PageFlow& flow, const Report& report);
// heat_pages.cpp
void put_figures(PageFlow& flow, const FigureTable& table);
void put_heat(PageFlow& flow, const Report& report);
// record_pages.cpp
void put_procedure(PageFlow& flow, const Report& report);
void put_course(PageFlow& flow, const Report& report);
void put_reading(PageFlow& flow, const Report& report);
void put_file_warnings(PageFlow& flow, const Report& report);
// closing_pages.cpp
void put_methods(PageFlow& flow, const Report& report);
void put_cautions(PageFlow& flow, const Report& report);
void put_files(PageFlow& flow, const Report& report);

}  // namespace soakwright::pdf
