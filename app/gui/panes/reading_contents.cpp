// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/reading_contents.h"

#include "app/gui/texts/window_text.h"

namespace soakwright::gui {
namespace {

QString taken_as(std::size_t line, const Reading& reading) {
  if (reading.header_line.value == 0) return line <= reading.heading.size() ? tr("heading") : tr("readings");
  if (line < reading.header_line.value) return tr("heading");
  return line == reading.header_line.value ? tr("column names") : QString();
}

}  // namespace

ListContent file_lines(const LogPreview* preview, const Record* record) {
  ListContent content;
  content.headers = {tr("Line"), tr("Read as"), tr("In the file")};
  content.numbers = {0};
  content.stretch = 2;
  content.when_empty = tr("No log is open.");
  if (!preview) return content;
  if (!preview->readable) content.when_empty = tr("The file no longer exists.");
  for (qsizetype i = 0; i < preview->lines.size(); ++i) {
    const auto line = static_cast<std::size_t>(i) + 1;
    content.lines.push_back(
        {{QString::number(line), record ? taken_as(line, record->reading) : QString(), preview->lines[i]},
         {},
         line});
  }
  if (preview->more) content.lines.push_back({{QStringLiteral("…"), {}, tr("more lines follow")}, {}, 0});
  return content;
}

}  // namespace soakwright::gui
