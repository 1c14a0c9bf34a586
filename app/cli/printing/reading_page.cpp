// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/printing/reading_page.h"

#include "app/cli/printing/file_sections.h"
#include "app/cli/printing/page_text.h"

namespace soakwright::cli {
namespace {

void channels(PageText& page, const Report& report) {
  std::vector<Row> rows;
  for (const ChannelRow& row : report.channels)
    rows.push_back({row.column, row.name, row.unit, row.role, row.weld, row.place, row.instrument,
                    row.samples, row.missing, row.minimum, row.maximum});
  page.heading("Channels");
  page.table({"Column", "Name", "Unit", "Role", "Weld", "Position", "Instrument", "Samples", "Missing",
              "Lowest", "Highest"},
             rows);
  not_evaluated(page, report);
}

void phases(PageText& page, const Report& report) {
  page.heading("Recorded cycle");
  if (report.phases.empty()) page.paragraph({""}, "no phases found");
  std::vector<Row> rows;
  for (const PhaseRow& row : report.phases)
    rows.push_back({row.kind, row.start, row.end, row.duration, row.rate, row.level, row.spread});
  if (!rows.empty())
    page.table({"Phase", "From", "To", "Duration", "Mean rate", "Mean temperature", "Largest spread"}, rows);
  suspects(page, report);
}

}  // namespace

std::string reading_page(const Report& report, const PageStyle& style) {
  PageText page(style);
  // The log's name stands in the first line below.
  const bool named_below = report.subject == report.chart.record->file;
  page.line(named_below ? report.title : report.subject, Tint::strong);
  page.facts(report.record);
  page.heading("How it was read");
  page.facts(report.reading);
  if (!report.heading.empty()) {
    page.heading("Lines before the table");
    for (const std::string& line : report.heading) page.line("  " + line, Tint::faint);
  }
  channels(page, report);
  phases(page, report);
  preheat_and_bands(page, report);
  file_warnings(page, report);
  if (!report.exclusion.empty() || !report.remarks.empty()) {
    page.heading("Manual changes");
    for (const auto& rows : {report.exclusion, report.remarks})
      for (const HandRow& row : rows) page.paragraph({row.channel}, row.when + ": " + row.text);
  }
  page.heading("Cautions");
  for (const std::string& caution : report.cautions) page.paragraph({"-"}, caution);
  return page.str();
}

}  // namespace soakwright::cli
