// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/printing/file_sections.h"

#include <vector>

namespace soakwright::cli {

void not_evaluated(PageText& page, const Report& report) {
  if (report.other_columns.empty()) return;
  page.heading("Other columns");
  for (const std::string& text : report.other_columns) page.paragraph({""}, text);
}

void suspects(PageText& page, const Report& report) {
  if (report.suspects.empty()) return;
  page.heading("Suspect thermocouples");
  for (const SuspectRow& row : report.suspects)
    page.paragraph({row.channel + ", " + row.code, Tint::doubtful}, row.when + ": " + row.text);
}

void preheat_and_bands(PageText& page, const Report& report) {
  if (!report.preheat.empty()) {
    page.heading("Preheat, published figures");
    page.facts(report.preheat);
  }
  if (!report.bands.empty()) {
    page.heading("Bands of the local heat treatment");
    page.facts(report.bands);
  }
}

void file_warnings(PageText& page, const Report& report) {
  if (report.notices.empty()) return;
  std::vector<Row> rows;
  for (const NoticeRow& row : report.notices)
    rows.push_back({Cell{row.code, Tint::doubtful}, row.line, row.count, row.channel, row.text});
  page.heading("File warnings");
  page.table({"Warning", "Line", "Count", "Channel", ""}, rows);
}

}  // namespace soakwright::cli
