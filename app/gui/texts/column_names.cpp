// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/texts/column_names.h"

#include <QDir>
#include <QFileInfo>
#include <algorithm>

#include "core/procedure/job/job_changes.h"
#include "core/procedure/toml/toml_edit.h"

namespace soakwright::gui {

std::string column_entry(const Record& record, std::size_t channel) {
  const std::string& name = record.channels[channel].name;
  const auto same = std::count_if(record.channels.begin(), record.channels.end(),
                                  [&](const Channel& other) { return other.name == name; });
  return same == 1 && !name.empty() ? name : std::to_string(record.channels[channel].column);
}

std::string job_for_record(const OpenCase& open) {
  const QFileInfo log(open.log_path);
  const auto seen = [&](const QString& path) {
    return path.isEmpty() ? std::string()
                          : log.dir().relativeFilePath(QFileInfo(path).absoluteFilePath()).toStdString();
  };
  std::string text = new_job_text(seen(open.log_path), seen(open.procedure_path));
  for (std::size_t channel = 0; channel < open.analysis.record->channels.size(); ++channel)
    text.append("\n[[thermocouple]]\ncolumn = ")
        .append(toml_words(column_entry(*open.analysis.record, channel)))
        .append("\n");
  return text;
}

}  // namespace soakwright::gui
