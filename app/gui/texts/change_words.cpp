// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/texts/change_words.h"

#include "app/gui/texts/window_text.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

QString key_words(const std::string& key) { return pdf::shown_text(key).replace(u'_', u' '); }

QString column_words(const std::string& name) {
  bool number = false;
  pdf::shown_text(name).toUInt(&number);
  return number ? tr("column %1").arg(pdf::shown_text(name)) : pdf::shown_text(name);
}

QString value_of(const AddedEntry& added, const std::string& key) {
  for (const auto& [name, value] : added.keys)
    if (name == key) return pdf::shown_text(value);
  return {};
}

/// Seconds stand alone in the job; in words they need their unit.
QString moment_words(const QString& moment) {
  bool seconds = false;
  moment.toDouble(&seconds);
  return seconds ? tr("%1 s").arg(moment) : moment;
}

QString added_words(const AddedEntry& added) {
  if (added.list == "exclude") {
    const QString from = value_of(added, "from");
    const QString to = value_of(added, "to");
    QString when = tr("whole record");
    if (!to.isEmpty())
      when = tr("%1 to %2").arg(moment_words(from), moment_words(to));
    else if (from != u"0")
      when = tr("from %1").arg(moment_words(from));
    return tr("%1 excluded, %2: %3").arg(value_of(added, "column"), when, value_of(added, "reason"));
  }
  QStringList parts;
  for (const auto& [key, value] : added.keys) parts.append(pdf::shown_text(value));
  return tr("new %1: %2").arg(key_words(added.list), parts.join(QStringLiteral(", ")));
}

}  // namespace

QString change_words(const JobChange& change) {
  if (change.whole) return tr("job text changed");
  if (change.added) return added_words(*change.added);
  const bool of_file = !change.column && change.table == "import";
  const QString value = change.value ? pdf::shown_text(*change.value)
                        : of_file    ? tr("as found")
                                     : tr("not given");
  if (change.column && !change.column->names.empty())
    return tr("%1: %2 %3").arg(column_words(change.column->names.front()), key_words(change.key), value);
  return tr("%1: %2").arg(key_words(change.key), value);
}

QStringList change_words(const std::vector<JobChange>& changes) {
  QStringList words;
  for (const JobChange& change : changes) words.append(change_words(change));
  return words;
}

}  // namespace soakwright::gui
