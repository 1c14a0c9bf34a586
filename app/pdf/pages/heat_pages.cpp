// SPDX-License-Identifier: GPL-3.0-or-later
// What the heat did: tempering and hydrogen, each with its formula and source.
#include <algorithm>

#include "app/pdf/page_table.h"
#include "app/pdf/pages/page_facts.h"
#include "app/pdf/pages/page_sections.h"

namespace soakwright::pdf {
namespace {

constexpr double kUnbrokenHeat = 0.45;  // of a page: a table no higher stays with its facts and notes

void put_one(PageFlow& flow, const FigureTable& table) {
  flow.subheading(text(table.title), flow.mm(18.0));
  put_facts(flow, table.facts);
  if (!table.rows.empty()) {
    std::vector<TableColumn> columns;
    for (const std::string& column : table.columns) columns.push_back({text(column), !columns.empty()});
    std::vector<TableRow> rows;
    for (const std::vector<std::string>& figures : table.rows) {
      TableRow row;
      for (const std::string& figure : figures)
        row.cells.push_back({bound_text(figure), row.cells.empty(), std::nullopt});
      rows.push_back(std::move(row));
    }
    flow.skip(flow.mm(1.0));
    put_table(flow, std::move(columns), std::move(rows));
    flow.skip(flow.mm(1.0));
  }
  for (const std::string& note : table.notes)
    flow.paragraph(text(note), flow.scale().font(kBodyPoints), colour::kFaintInk);
  flow.skip(flow.mm(2.0));
}

}  // namespace

void put_figures(PageFlow& flow, const FigureTable& table) {
  flow.keep_together(kUnbrokenHeat, [&table](PageFlow& into) { put_one(into, table); });
}

void put_heat(PageFlow& flow, const Report& report) {
  if (report.heat.empty()) return;
  flow.heading(QStringLiteral("What the heat did"), flow.mm(25.0));
  for (const FigureTable& table : report.heat) put_figures(flow, table);
}

}  // namespace soakwright::pdf
