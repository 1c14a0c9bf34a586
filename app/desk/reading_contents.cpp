#include "app/desk/reading_contents.h"

#include <QCoreApplication>
#include <algorithm>

namespace soakwright::desk {
namespace {

constexpr std::size_t kFirstValues = 4;

QString tr(const char* text) { return QCoreApplication::translate("ReadingContents", text); }

QString q(const std::string& text) { return QString::fromStdString(text); }

QString first_values(const Channel& channel, TemperatureUnit unit) {
  QStringList values;
  for (std::size_t row = 0; row < std::min(kFirstValues, channel.readings.rows()); ++row) {
    const auto celsius = channel.readings.celsius(row);
    values.append(celsius ? QString::number(Temperature::of_celsius(*celsius).in(unit), 'f', 1) : QStringLiteral("–"));
  }
  return values.join(QStringLiteral("  "));
}

QString taken_as(std::size_t line, const Reading& reading) {
  if (reading.header_line == 0) return line <= reading.heading.size() ? tr("heading") : tr("readings");
  if (line < reading.header_line) return tr("heading");
  return line == reading.header_line ? tr("column names") : QString();
}

}  // namespace

ListContent file_lines(const LogPreview* preview, const Record* record) {
  ListContent content;
  content.headers = {tr("Line"), tr("Taken as"), tr("In the file")};
  content.numbers = {0};
  content.stretch = 2;
  content.when_empty = tr("No log is open.");
  if (!preview || !record) return content;
  if (!preview->readable) content.when_empty = tr("The file is no longer there to be shown.");
  for (qsizetype i = 0; i < preview->lines.size(); ++i) {
    const auto line = static_cast<std::size_t>(i) + 1;
    content.lines.push_back({{QString::number(line), taken_as(line, record->reading), preview->lines[i]}, {}, line});
  }
  if (preview->more) content.lines.push_back({{QStringLiteral("…"), {}, tr("the file goes on")}, {}, 0});
  return content;
}

ListContent setting_lines(const Report* report) {
  ListContent content;
  content.headers = {tr("Setting"), tr("Read as")};
  content.stretch = 1;
  if (!report) return content;
  for (std::size_t i = 0; i < report->reading.size(); ++i)
    content.lines.push_back({{q(report->reading[i].name), q(report->reading[i].text)}, {}, i});
  return content;
}

ListContent column_lines(const Report* report) {
  ListContent content;
  content.headers = {tr("Column"),  tr("Name"),    tr("Unit"),   tr("Taken as"), tr("First values (%1)"),
                     tr("Samples"), tr("Missing"), tr("Lowest"), tr("Highest")};
  content.headers[4] = content.headers[4].arg(report && report->unit == TemperatureUnit::fahrenheit
                                                  ? QStringLiteral("°F")
                                                  : QStringLiteral("°C"));
  content.numbers = {0, 5, 6, 7, 8};
  if (!report) return content;
  const Record& record = *report->chart.record;
  for (const ChannelRow& row : report->channels) {
    const Channel& channel = record.channels[row.channel];
    content.lines.push_back({{QString::number(channel.column), q(row.name), q(row.unit), q(row.duty),
                              first_values(channel, report->unit), q(row.samples), q(row.missing), q(row.minimum),
                              q(row.maximum)},
                             {},
                             channel.column});
  }
  for (const OtherColumn& other : record.other_columns)
    content.lines.push_back(
        {{QString::number(other.column), q(other.name), {}, tr("kept apart: %1").arg(q(other.why)), {}, {}, {}, {}, {}},
         {},
         other.column});
  std::stable_sort(content.lines.begin(), content.lines.end(),
                   [](const ListLine& a, const ListLine& b) { return a.index < b.index; });
  return content;
}

}  // namespace soakwright::desk
