// SPDX-License-Identifier: GPL-3.0-or-later
// The uncertainty budgets that guarded decisions rest on.
#include "app/pdf/page_table.h"
#include "app/pdf/pages/page_sections.h"

namespace soakwright::pdf {

void put_budgets(PageFlow& flow, const Report& report) {
  if (report.budgets.empty()) return;
  const QString degree =
      report.unit == TemperatureUnit::fahrenheit ? QStringLiteral("°F") : QStringLiteral("°C");
  flow.heading(QStringLiteral("Uncertainty budgets, ") + degree, flow.mm(24.0));
  for (const BudgetTable& table : report.budgets) {
    flow.subheading(text(table.channels), flow.mm(18.0));
    std::vector<TableColumn> columns{{QStringLiteral("Contribution")},
                                     {QStringLiteral("From")},
                                     {QStringLiteral("±a or step q"), true},
                                     {QStringLiteral("Divisor"), true}};
    for (const std::string& column : table.columns)
      columns.push_back({QStringLiteral("u at ") + text(column), true});
    std::vector<TableRow> rows;
    for (const BudgetTable::Row& row : table.rows) {
      TableRow printed{
          {plain_cell(row.name), plain_cell(row.source), plain_cell(row.half_width), plain_cell(row.divisor)},
          {},
          {}};
      for (const std::string& standard : row.standard) printed.cells.push_back(plain_cell(standard));
      rows.push_back(std::move(printed));
    }
    TableRow sum{{{QStringLiteral("U = 2·√(Σu²)"), true, std::nullopt},
                  plain_cell({}),
                  plain_cell({}),
                  plain_cell({})},
                 {},
                 {}};
    for (const std::string& expanded : table.expanded)
      sum.cells.push_back({text(expanded), true, std::nullopt});
    rows.push_back(std::move(sum));
    TableRow rate{{{QStringLiteral("U of a rate"), true, std::nullopt},
                   plain_cell(table.rate),
                   plain_cell({}),
                   plain_cell({})},
                  {},
                  {}};
    for (std::size_t i = 0; i < table.columns.size(); ++i) rate.cells.push_back(plain_cell({}));
    rows.push_back(std::move(rate));
    put_table(flow, std::move(columns), std::move(rows));
    flow.skip(flow.mm(2.0));
  }
}

}  // namespace soakwright::pdf
