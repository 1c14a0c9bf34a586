// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/column_table.h"

#include <QHeaderView>
#include <QPainter>
#include <QScrollBar>
#include <algorithm>
#include <map>
#include <string_view>

#include "app/gui/parts/choice_box.h"
#include "app/gui/parts/exclude_dialog.h"
#include "app/gui/parts/plain_tip.h"
#include "core/procedure/job/job_words.h"
#include "core/wording/column_words.h"

namespace soakwright::gui {
namespace {

constexpr std::size_t kFirstValues = 4;

QString words_of(std::string_view word) {
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}

/// As the trade says it; the job's words are shorter.
QString role_words(ThermocoupleRole role) {
  switch (role) {
    case ThermocoupleRole::monitor:
      return ColumnTable::tr("monitoring");
    case ThermocoupleRole::off:
      return ColumnTable::tr("not used");
    case ThermocoupleRole::control:
    case ThermocoupleRole::spare:
    case ThermocoupleRole::air:
    case ThermocoupleRole::set_point:
      break;
  }
  return words_of(kRoleWords.of(role));
}

QString junction_text(const ColdJunction& junction) {
  if (const auto* fixed = std::get_if<Temperature>(&junction))
    return QString::number(fixed->celsius(), 'f', 1) + QStringLiteral(" C");
  return QString::fromStdString(std::get<std::string>(junction));
}

QString first_values_of(const Readings& readings, TemperatureUnit unit) {
  QStringList values;
  for (std::size_t row = 0; row < std::min(kFirstValues, readings.rows()); ++row) {
    const auto celsius = readings.celsius(row);
    values.append(celsius ? QString::number(Temperature::of_celsius(*celsius).in(unit), 'f', 1)
                          : QStringLiteral("–"));
  }
  return values.join(QStringLiteral("  "));
}

}  // namespace

struct ColumnTable::Line {
  std::size_t number = 0;
  bool evaluated = false;
  bool has_reason = false;  ///< the job says why it is not evaluated
  QString name, unit, kind, why, type, cold_junction, first_values, missing;
  QString said;  ///< what the job's entry calls the column; empty where it has none
  bool emf = false;
};

void ColumnTable::addEntry(Line& line, std::optional<std::size_t> place, const Job* job) {
  if (!place || !job) return;
  const ThermocoupleEntry& entry = job->thermocouples[*place];
  line.said = QString::fromStdString(entry.column);
  line.has_reason = entry.reason.has_value();
  if (entry.type) line.type = words_of(kThermocoupleTypeWords.of(*entry.type));
  if (entry.cold_junction) line.cold_junction = junction_text(*entry.cold_junction);
}

/// As the job's entry has it; a new one takes the number, unless another column is called by that.
ColumnNames ColumnTable::namesOf(const Line& line, const std::map<std::size_t, Line>& lines) {
  if (!line.said.isEmpty()) return {{line.said.toStdString()}};
  const QString number = QString::number(line.number);
  const bool taken = std::any_of(lines.begin(), lines.end(), [&](const auto& other) {
    return other.first != line.number && (other.second.name == number || other.second.said == number);
  });
  return {{(taken ? line.name : number).toStdString()}};
}

ColumnTable::~ColumnTable() = default;

ColumnTable::ColumnTable(QWidget* parent) : QTableWidget(parent) {
  setAccessibleName(tr("Columns of the file"));
  setColumnCount(parts);
  setSelectionMode(QAbstractItemView::NoSelection);
  setTabKeyNavigation(false);
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  verticalHeader()->hide();
  horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  horizontalHeader()->setStretchLastSection(true);
  connect(this, &QTableWidget::itemChanged, this, [this](const QTableWidgetItem* item) {
    if (showing_) return;
    if (item->column() == name) tell(item->row(), "name", item->text().trimmed());
    if (item->column() == cold_junction) tell(item->row(), "cold_junction", item->text().trimmed());
  });
}

void ColumnTable::tell(int row, const std::string& key, const QString& value) {
  const auto place = static_cast<std::size_t>(row);
  const ColumnNames column = names_[place];
  std::vector<JobChange> changes{
      {column, key, value.isEmpty() ? std::nullopt : std::optional(value.toStdString())}};
  if (key == "role") {
    const bool evaluated = value == u"control" || value == u"monitor" || value.isEmpty();
    if (lines_[place].evaluated && !evaluated) {
      const auto reason = ask_reason(this, tr("Do not evaluate"), item(row, name)->text());
      if (!reason) return showAgain();
      changes.push_back({column, "reason", reason->toStdString()});
    } else if (evaluated && lines_[place].has_reason) {
      changes.push_back({column, "reason", std::nullopt});
    }
  }
  // Sent from the event loop: the handler fills the table anew.
  QMetaObject::invokeMethod(
      this, [this, changes] { emit changed(changes); }, Qt::QueuedConnection);
}

/// As it was before a choice that the person took back.
void ColumnTable::showAgain() {
  showing_ = true;
  for (std::size_t row = 0; row < lines_.size(); ++row) showLine(static_cast<int>(row), lines_[row]);
  showing_ = false;
}

void ColumnTable::setBox(int row, Part part, const QString& label,
                         const std::vector<std::pair<QString, QString>>& choices, const QString& now) {
  static const char* const kKeys[] = {"", "name", "unit", "role", "type"};
  auto* box = qobject_cast<ChoiceBox*>(cellWidget(row, part));
  if (!box) {
    box = new ChoiceBox(this);
    box->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    connect(box, &QComboBox::activated, this, [this, row, part, box] {
      if (!showing_) tell(row, kKeys[part], box->currentData().toString());
    });
    setCellWidget(row, part, box);
  }
  box->setAccessibleName(label);
  box->clear();
  for (const auto& [words, value] : choices) box->addItem(words, value);
  box->setCurrentIndex(std::max(0, box->findData(now)));
}

void ColumnTable::showLine(int row, const Line& line) {
  const auto put = [&](Part part, const QString& text, bool editable) {
    QTableWidgetItem* item = this->item(row, part);
    if (!item) {
      item = new QTableWidgetItem;
      setItem(row, part, item);
    }
    if (item->text() != text) item->setText(text);
    item->setFlags(editable ? Qt::ItemIsEnabled | Qt::ItemIsEditable | Qt::ItemIsSelectable
                            : Qt::ItemIsEnabled);
    item->setToolTip(plain_tip(text));
  };
  put(number, QString::number(line.number), false);
  put(name, line.name, true);
  put(first_values, line.first_values, false);
  put(missing, line.missing, false);
  put(cold_junction, line.cold_junction, line.emf);
  put(type, {}, false);
  const QString of = tr("column %1").arg(line.number);
  setBox(row, unit, tr("Unit of %1").arg(of),
         {{tr("As found"), {}},
          {tr("°C"), QStringLiteral("C")},
          {tr("°F"), QStringLiteral("F")},
          {tr("K"), QStringLiteral("K")},
          {tr("mV"), QStringLiteral("mV")}},
         line.unit);
  std::vector<std::pair<QString, QString>> kinds = {
      {line.why.isEmpty() ? tr("As found") : tr("Not evaluated: %1").arg(line.why), {}}};
  for (const ThermocoupleRole role :
       {ThermocoupleRole::control, ThermocoupleRole::monitor, ThermocoupleRole::spare, ThermocoupleRole::air,
        ThermocoupleRole::set_point, ThermocoupleRole::off})
    kinds.emplace_back(role_words(role), words_of(kRoleWords.of(role)));
  setBox(row, kind, tr("Role of %1").arg(of), kinds, line.kind);
  if (!line.emf) {
    if (cellWidget(row, type)) removeCellWidget(row, type);
    return;
  }
  std::vector<std::pair<QString, QString>> types = {{tr("Not given"), {}}};
  for (const char letter : {'K', 'J', 'N', 'E', 'T', 'R', 'S', 'B'})
    types.emplace_back(QString(QLatin1Char(letter)), QString(QLatin1Char(letter)));
  setBox(row, type, tr("Type of %1").arg(of), types, line.type);
}

void ColumnTable::show(const Record* record, const Job* job, const Report* report) {
  showing_ = true;
  names_.clear();
  lines_.clear();
  const TemperatureUnit shown = report ? report->unit : TemperatureUnit::celsius;
  setHorizontalHeaderLabels(
      {tr("No."), tr("Name"), tr("Unit"), tr("Role"), tr("Type"), tr("Cold junction"),
       tr("First values (%1)").arg(shown == TemperatureUnit::fahrenheit ? tr("°F") : tr("°C")),
       tr("Missing")});
  std::map<std::size_t, Line> lines;
  if (record) {
    for (const Channel& channel : record->channels) {
      Line line;
      line.number = channel.column;
      line.name = QString::fromStdString(channel.name);
      line.unit = words_of(kChannelUnitWords.of(channel.unit));
      line.kind = words_of(kRoleWords.of(channel.role));
      line.emf = channel.unit == ChannelUnit::millivolt;
      line.evaluated = channel.evaluated() || channel.zone == Zone::edge;
      line.first_values = first_values_of(channel.readings, shown);
      line.missing = QString::number(channel.readings.missing());
      addEntry(line, channel.entry, job);
      lines[channel.column] = line;
    }
    for (const OtherColumn& other : record->other_columns) {
      Line line;
      line.number = other.column;
      line.name = QString::fromStdString(other.name);
      line.why = QString::fromStdString(reason_text(other.why));
      line.emf = other.why.content == ColumnContent::emf_without_cold_junction;
      addEntry(line, other.entry, job);
      if (other.readings) {
        line.first_values = first_values_of(*other.readings, shown);
        line.missing = QString::number(other.readings->missing());
      }
      lines[other.column] = line;
    }
  }
  // The same rows are filled anew in place, so that focus, current cell and scroll position stay.
  if (rowCount() != static_cast<int>(lines.size())) {
    setRowCount(0);
    setRowCount(static_cast<int>(lines.size()));
  }
  const int scrolled = verticalScrollBar()->value();
  bool any_emf = false;
  int row = 0;
  for (const auto& [column, line] : lines) {
    names_.push_back(namesOf(line, lines));
    lines_.push_back(line);
    any_emf = any_emf || line.emf;
    showLine(row++, line);
  }
  setColumnHidden(type, !any_emf);
  setColumnHidden(cold_junction, !any_emf);
  // The width that the last column was stretched to before must not count as its own.
  horizontalHeader()->setStretchLastSection(false);
  resizeColumnsToContents();
  horizontalHeader()->setStretchLastSection(true);
  verticalScrollBar()->setValue(scrolled);
  showing_ = false;
}

void ColumnTable::paintEvent(QPaintEvent* event) {
  QTableWidget::paintEvent(event);
  if (rowCount() > 0) return;
  QPainter painter(viewport());
  painter.setPen(palette().color(QPalette::PlaceholderText));
  painter.drawText(viewport()->rect().adjusted(12, 8, -12, -8),
                   Qt::AlignTop | Qt::AlignLeft | Qt::TextWordWrap,
                   tr("The columns are listed here when the log can be read."));
}

}  // namespace soakwright::gui
