// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/finding_groups.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "app/gui/texts/window_text.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

bool has_all(const ListLine& line, const QStringList& words) {
  return std::all_of(words.begin(), words.end(), [&line](const QString& word) {
    return std::any_of(line.cells.begin(), line.cells.end(),
                       [&word](const QString& cell) { return cell.contains(word, Qt::CaseInsensitive); });
  });
}

/// The number of the event of each finding, from 0 in time; findings without a time belong to none.
std::map<std::size_t, std::size_t> events_of(const Report& report) {
  std::vector<ChartMark> marks = report.chart.marks;
  std::sort(marks.begin(), marks.end(),
            [](const ChartMark& a, const ChartMark& b) { return a.from_s < b.from_s; });
  std::map<std::size_t, std::size_t> events;
  std::size_t event = 0;
  std::optional<double> end_s;
  for (const ChartMark& mark : marks) {
    if (end_s && mark.from_s > *end_s) ++event;
    end_s = end_s ? std::max(*end_s, mark.to_s) : mark.to_s;
    events[mark.finding] = event;
  }
  return events;
}

}  // namespace

ListContent finding_groups(ListContent content, const Report& report, const QString& filter,
                           FindingGroups groups) {
  const QStringList words = filter.split(u' ', Qt::SkipEmptyParts);
  const bool any = !content.lines.empty();
  std::erase_if(content.lines, [&words](const ListLine& line) { return !has_all(line, words); });
  if (any && content.lines.empty()) content.when_empty = tr("No finding has these words.");
  if (groups == FindingGroups::none) return content;
  const std::map<std::size_t, std::size_t> events = events_of(report);
  // Groups in the order in which their first line comes; events in time.
  std::vector<std::pair<QString, std::vector<ListLine>>> parts;
  std::vector<std::pair<std::size_t, std::size_t>> order;
  for (const ListLine& line : content.lines) {
    const FindingRow& row = report.findings[line.index];
    QString name;
    std::size_t place = 0;
    switch (groups) {
      case FindingGroups::weld:
        name = row.weld.empty() ? tr("No weld named") : tr("Weld %1").arg(pdf::shown_text(row.weld));
        break;
      case FindingGroups::stage:
        name = row.stage.empty() ? tr("Whole record") : pdf::shown_text(row.stage);
        break;
      case FindingGroups::event:
      case FindingGroups::none: {
        const auto event = events.find(line.index);
        place = event == events.end() ? events.size() + 1 : event->second;
        name = event == events.end() ? tr("Without a time") : tr("Event %1").arg(event->second + 1);
      }
    }
    auto part =
        std::find_if(parts.begin(), parts.end(), [&name](const auto& one) { return one.first == name; });
    if (part == parts.end()) {
      order.emplace_back(place, parts.size());
      parts.emplace_back(name, std::vector<ListLine>{});
      part = parts.end() - 1;
    }
    part->second.push_back(line);
  }
  std::stable_sort(order.begin(), order.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  content.lines.clear();
  for (const auto& [place, index] : order) {
    ListLine heading;
    heading.cells = {QStringLiteral("%1 (%2)").arg(parts[index].first).arg(parts[index].second.size())};
    heading.heading = true;
    content.lines.push_back(std::move(heading));
    for (ListLine& line : parts[index].second) content.lines.push_back(std::move(line));
  }
  return content;
}

}  // namespace soakwright::gui
