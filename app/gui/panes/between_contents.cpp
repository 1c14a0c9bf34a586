// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/between_contents.h"

#include "app/gui/texts/reading_text.h"
#include "app/gui/texts/window_text.h"
#include "app/pdf/shown_text.h"
#include "core/units/printed_quantity.h"

namespace soakwright::gui {
namespace {

QString said(const std::optional<Quantity>& quantity, TemperatureUnit unit) {
  return quantity ? QString::fromStdString(printed(*quantity, {unit})) : QStringLiteral("–");
}

std::optional<Quantity> difference(std::optional<double> kelvin) {
  return kelvin ? std::optional<Quantity>(TemperatureDifference::of_kelvin(*kelvin)) : std::nullopt;
}

std::optional<Quantity> rate(std::optional<double> celsius_per_hour) {
  return celsius_per_hour ? std::optional<Quantity>(HeatingRate::of_celsius_per_hour(*celsius_per_hour))
                          : std::nullopt;
}

}  // namespace

ListContent between_lines(const Report* report, const Between* between, double window_s) {
  ListContent content;
  const QString fit = window_s > 0.0
                          ? tr("Steepest over %1").arg(QString::fromStdString(printed_duration(window_s)))
                          : tr("Steepest");
  content.headers = {tr("Between A and B"), tr("At A"), tr("At B"), tr("Difference"), tr("Mean rate"), fit};
  content.numbers = {1, 2, 3, 4, 5};
  content.when_empty =
      tr("Set cursor A with Ctrl+click and cursor B with Shift+click on the chart, or move the "
         "reading line and press A and B.");
  if (!report) content.when_empty = tr("No record. Open a log (Ctrl+O).");
  if (!report || !between) return content;
  const Record& record = *report->chart.record;
  content.lines.push_back({{tr("Time"),
                            moment_text(record, between->from_s),
                            moment_text(record, between->to_s),
                            QString::fromStdString(printed_duration(between->to_s - between->from_s)),
                            {},
                            {}},
                           {},
                           0});
  for (const BetweenChannel& one : between->channels)
    content.lines.push_back(
        {{pdf::shown_text(record.channels[one.channel].name), temperature_text(one.from_c, report->unit),
          temperature_text(one.to_c, report->unit), said(difference(one.difference_k), report->unit),
          said(rate(one.mean_rate), report->unit), said(rate(one.steepest_rate), report->unit)},
         {},
         one.channel});
  std::optional<double> growth;
  if (between->from_spread_k && between->to_spread_k)
    growth = *between->to_spread_k - *between->from_spread_k;
  content.lines.push_back({{tr("Spread, hottest less coldest"),
                            said(difference(between->from_spread_k), report->unit),
                            said(difference(between->to_spread_k), report->unit),
                            said(difference(growth), report->unit),
                            {},
                            {}},
                           {},
                           0});
  return content;
}

}  // namespace soakwright::gui
