// SPDX-License-Identifier: GPL-3.0-or-later
// Thermocouple by thermocouple: holds, overall rates, and what each channel is.
#include <QPainter>
#include <algorithm>

#include "app/pdf/chart/detail_chart.h"
#include "app/pdf/page_table.h"
#include "app/pdf/pages/page_facts.h"
#include "app/pdf/pages/page_sections.h"
#include "app/pdf/pages/position_sketch.h"

namespace soakwright::pdf {
namespace {

constexpr double kHoldChart_mm = 78.0;
constexpr double kSketch_mm = 56.0;
constexpr double kUnbrokenHold = 0.6;  // of a page: chart, facts and table of a hold, if no higher

QString degree(const Report& report) {
  return report.unit == TemperatureUnit::fahrenheit ? QStringLiteral("°F") : QStringLiteral("°C");
}

/// The weld is named only where there are several.
QString with_weld(const Report& report, const std::string& title, const std::string& weld) {
  return weld.empty() || report.welds.size() < 2 ? text(title)
                                                 : text(weld) + QStringLiteral(": ") + text(title);
}

/// The hold alone, so large that the traces part.
void put_hold_chart(PageFlow& flow, const std::shared_ptr<const Report>& report, const HoldTable& hold) {
  const auto& ranges = report->chart.ranges;
  const auto range = std::find_if(ranges.begin(), ranges.end(), [&](const ChartRange& candidate) {
    return candidate.reached && candidate.stage == hold.stage &&
           candidate.weld.value_or(std::string{}) == hold.weld;
  });
  if (range == ranges.end()) return;
  const double height = flow.stretched_mm(kHoldChart_mm);
  flow.need(height);
  const QRectF area(flow.left(), flow.y(), flow.width(), height - flow.mm(2.0));
  flow.draw([report, area, which = static_cast<std::size_t>(range - ranges.begin()),
             scale = flow.scale()](QPainter& painter) {
    paint_hold(painter, area, scale, report->chart, report->chart.ranges[which]);
  });
  flow.skip(height);
}

void put_hold_table(PageFlow& flow, const HoldTable& hold, const QString& unit) {
  put_facts(flow, hold.facts);
  std::vector<TableRow> rows;
  for (const HoldTable::Row& row : hold.rows)
    rows.push_back({{{text(row.name), true, std::nullopt},
                     plain_cell(row.in),
                     plain_cell(row.out),
                     plain_cell(row.minimum),
                     plain_cell(row.maximum),
                     plain_cell(row.mean)},
                    {},
                    {}});
  put_table(flow,
            {{QStringLiteral("Thermocouple")},
             {QStringLiteral("In range from")},
             {QStringLiteral("Left range")},
             {QStringLiteral("Lowest") + unit, true},
             {QStringLiteral("Highest") + unit, true},
             {QStringLiteral("Mean") + unit, true}},
            std::move(rows));
}

/// Of the job's `position` and `angle`, where they tell thermocouples apart.
void put_sketch(PageFlow& flow, const Report& report) {
  if (!has_sketch(report.chart)) return;
  const double height = flow.mm(kSketch_mm);
  flow.subheading(QStringLiteral("Where the thermocouples sat"), height);
  const QRectF area(flow.left(), flow.y(), flow.width(), height - flow.mm(2.0));
  const auto chart = std::make_shared<const Chart>(report.chart);
  flow.draw(
      [chart, area, scale = flow.scale()](QPainter& painter) { paint_sketch(painter, area, scale, *chart); });
  flow.skip(height);
}

}  // namespace

void put_holds(PageFlow& flow, const std::shared_ptr<const Report>& kept) {
  const Report& report = *kept;
  if (report.holds.empty()) return;
  flow.heading(QStringLiteral("Holds by thermocouple"), flow.mm(kHoldChart_mm + 12.0));
  const QString unit = QStringLiteral(", ") + degree(report);
  for (const HoldTable& hold : report.holds) {
    flow.keep_together(kUnbrokenHold, [&](PageFlow& into) {
      into.subheading(with_weld(report, hold.title, hold.weld), into.mm(kHoldChart_mm));
      put_hold_chart(into, kept, hold);
      into.keep_together(kUnbrokenHold, [&](PageFlow& table) { put_hold_table(table, hold, unit); });
    });
    flow.skip(flow.mm(2.0));
  }
}

void put_rates(PageFlow& flow, const Report& report) {
  for (const RateTable& table : report.rates) {
    flow.heading(
        with_weld(report, "Rates by thermocouple, " + degree(report).toStdString() + "/h", table.weld),
        flow.mm(20.0));
    std::vector<TableColumn> columns{{QStringLiteral("Thermocouple")}};
    for (const std::string& column : table.columns) columns.push_back({text(column), true});
    std::vector<TableRow> rows;
    for (const RateTable::Row& row : table.rows) {
      TableRow printed{{{text(row.name), true, std::nullopt}}, {}, {}};
      for (const std::string& rate : row.rates) printed.cells.push_back(plain_cell(rate));
      rows.push_back(std::move(printed));
    }
    put_table(flow, std::move(columns), std::move(rows));
  }
}

void put_channels(PageFlow& flow, const Report& report) {
  if (report.channels.empty()) return;
  flow.heading(QStringLiteral("Channels as read"), flow.mm(20.0));
  const QString unit = QStringLiteral(", ") + degree(report);
  std::vector<TableRow> rows;
  std::size_t left_out = 0;
  for (const ChannelRow& row : report.channels) {
    if (!row.used) {
      ++left_out;
      continue;
    }
    rows.push_back({{plain_cell(row.tag),
                     {text(row.name), true, std::nullopt},
                     plain_cell(row.column),
                     plain_cell(row.unit),
                     plain_cell(row.role),
                     plain_cell(row.weld),
                     plain_cell(row.place),
                     plain_cell(row.instrument),
                     plain_cell(row.samples),
                     plain_cell(row.missing),
                     plain_cell(row.minimum),
                     plain_cell(row.maximum)},
                    {},
                    {}});
  }
  put_table(flow,
            {{QStringLiteral("No."), true},
             {QStringLiteral("Channel")},
             {QStringLiteral("Column"), true},
             {QStringLiteral("Unit")},
             {QStringLiteral("Role")},
             {QStringLiteral("Weld")},
             {QStringLiteral("Place")},
             {QStringLiteral("Instrument")},
             {QStringLiteral("Readings"), true},
             {QStringLiteral("Missing"), true},
             {QStringLiteral("Lowest") + unit, true},
             {QStringLiteral("Highest") + unit, true}},
            std::move(rows));
  if (left_out > 0)
    flow.paragraph(left_out == 1
                       ? QStringLiteral("One column that is off is not in this table; page 1 names it.")
                       : QStringLiteral("%1 columns that are off are not in this table; page 1 names them.")
                             .arg(left_out),
                   flow.scale().font(kBodyPoints), colour::kFaintInk);
  put_sketch(flow, report);
}

}  // namespace soakwright::pdf
