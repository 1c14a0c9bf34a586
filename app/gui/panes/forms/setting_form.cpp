// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/forms/setting_form.h"

#include <QDateTime>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QToolTip>

#include "app/gui/parts/choice_box.h"
#include "app/gui/parts/plain_tip.h"
#include "app/gui/verdict_sign.h"
#include "app/pdf/shown_text.h"
#include "core/read/first_columns.h"

namespace soakwright::gui {
namespace {

/// A name from the file, so that it changes nothing beside it.
QString shown(const QString& name) { return pdf::shown_text(name.toStdString()); }

constexpr int kBoxesInARow = 2;
constexpr int kShortestBox = 14;   ///< characters, where there is room
constexpr int kNarrowestBox = 72;  ///< pixels, where there is not

/// As the job writes a delimiter.
QString delimiter_word(const std::string& delimiter) {
  if (delimiter == "\t") return QStringLiteral("tab");
  return delimiter == " " ? QStringLiteral("spaces") : QString::fromStdString(delimiter);
}

/// The value of the file's key among `changes`; empty if it is taken out, none if it is not named.
std::optional<QString> value_in(const std::string& key, const std::vector<JobChange>& changes) {
  for (const JobChange& change : changes)
    if (!change.column && change.key == key)
      return change.value ? QString::fromStdString(*change.value) : QString();
  return std::nullopt;
}

/// What is in force by hand: what is wanted, else what the read record says was given.
QString given_in(const std::string& key, const Setting<std::string>* setting,
                 const std::vector<JobChange>& by_hand) {
  if (const auto value = value_in(key, by_hand)) return *value;
  if (!setting || setting->by != SettingBy::given) return {};
  if (key == "delimiter") return delimiter_word(setting->value);
  if (key == "time") return QString::fromStdString(setting->value).section(u',', 0, 0);
  return QString::fromStdString(setting->value);
}

/// Of a log that could not be read: what its first lines show.
std::vector<std::string> columns_of(const LogPreview* preview, const std::vector<JobChange>& by_hand) {
  std::vector<std::string> lines;
  if (preview)
    for (const QString& line : preview->lines) lines.push_back(line.toStdString());
  std::optional<char> delimiter;
  if (const QString word = given_in("delimiter", nullptr, by_hand); word == u"tab")
    delimiter = '\t';
  else if (!word.isEmpty())
    delimiter = word == u"spaces" ? ' ' : word.front().toLatin1();
  std::optional<std::size_t> header_line;
  if (const QString line = given_in("header_line", nullptr, by_hand); !line.isEmpty())
    header_line = line.toULongLong();
  return first_columns(lines, delimiter, header_line);
}

}  // namespace

SettingForm::SettingForm(QWidget* parent) : QWidget(parent) {
  auto* layout = new QGridLayout(this);
  layout->setContentsMargins(8, 0, 8, 4);
  layout->setVerticalSpacing(4);
  layout->setHorizontalSpacing(8);
  add(layout, "encoding", tr("Encoding"),
      {{tr("UTF-8"), "utf-8"},
       {tr("UTF-16 LE"), "utf-16le"},
       {tr("UTF-16 BE"), "utf-16be"},
       {tr("Windows-1252"), "windows-1252"}});
  add(layout, "delimiter", tr("Delimiter"),
      {{tr("Comma ,"), ","},
       {tr("Semicolon ;"), ";"},
       {tr("Tab"), "tab"},
       {tr("Pipe |"), "|"},
       {tr("Spaces"), "spaces"}});
  add(layout, "decimal", tr("Decimal sign"), {{tr("Point ."), "."}, {tr("Comma ,"), ","}});
  add(layout, "dates", tr("Date order"),
      {{tr("Day, month, year"), "dmy"}, {tr("Month, day, year"), "mdy"}, {tr("Year, month, day"), "ymd"}});
  add(layout, "header_line", tr("Column names"), {});
  add(layout, "time_column", tr("Time column"), {});
  add(layout, "time", tr("Time"),
      {{tr("Date and time"), "date and time"},
       {tr("Time of day"), "time of day"},
       {tr("Elapsed, s"), "elapsed s"},
       {tr("Elapsed, min"), "elapsed min"},
       {tr("Elapsed, h"), "elapsed h"},
       {tr("Elapsed, h:mm:ss"), "elapsed h:mm:ss"},
       {tr("Serial days"), "serial days"},
       {tr("Unix time, s"), "unix s"},
       {tr("Unix time, ms"), "unix ms"}});
  addField(layout, "date", tr("Date of the first row"), tr("year-month-day"),
           tr("For a log that has a time of day and no date. Enter applies it; empty takes it back."));
  addField(layout, "start", tr("Start of elapsed time"), tr("year-month-day hh:mm:ss"),
           tr("For a log that has elapsed time only. Enter applies it; empty takes it back."));
  for (int column = 0; column < kBoxesInARow; ++column) layout->setColumnStretch(2 * column + 1, 1);
  layout->setRowStretch(layout->rowCount(), 1);
}

void SettingForm::add(QGridLayout* layout, const std::string& key, const QString& name,
                      const std::vector<std::pair<QString, const char*>>& choices) {
  auto* box = new ChoiceBox(this);
  box->setAccessibleName(name);
  box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  box->setMinimumContentsLength(kShortestBox);
  box->setToolTip(tr("The log is read again after each change"));
  box->addItem(tr("As found"), QString());
  for (const auto& [words, value] : choices) box->addItem(words, QString::fromLatin1(value));
  put(layout, name, box);
  boxes_[key] = box;
  connect(box, &QComboBox::activated, this, [this, key, box] {
    if (showing_) return;
    const QString value = box->currentData().toString();
    emit changed({std::nullopt, key, value.isEmpty() ? std::nullopt : std::optional(value.toStdString())});
  });
}

void SettingForm::put(QGridLayout* layout, const QString& name, QWidget* widget) {
  const int place = static_cast<int>(boxes_.size() + fields_.size());
  auto* label = new QLabel(name, this);
  label->setBuddy(widget);
  // In a narrow window a box is cut before the form is wider than the window.
  widget->setMinimumWidth(kNarrowestBox);
  layout->addWidget(label, place / kBoxesInARow, 2 * (place % kBoxesInARow));
  layout->addWidget(widget, place / kBoxesInARow, 2 * (place % kBoxesInARow) + 1);
}

void SettingForm::addField(QGridLayout* layout, const std::string& key, const QString& name,
                           const QString& form, const QString& tip) {
  auto* field = new QLineEdit(this);
  field->setAccessibleName(name);
  field->setPlaceholderText(form);
  field->setToolTip(tip);
  put(layout, name, field);
  fields_[key] = field;
  connect(field, &QLineEdit::editingFinished, this, [this, key] { finishField(key); });
  connect(field, &QLineEdit::textEdited, field, [field, tip] {
    field->setPalette({});
    field->setToolTip(tip);
  });
}

/// What is no date stays in the field, marked; nothing is changed then.
void SettingForm::finishField(const std::string& key) {
  QLineEdit* field = fields_.at(key);
  const QString typed = field->text().trimmed();
  if (showing_ || typed == shown_[key]) return;
  std::optional<std::string> value;
  if (!typed.isEmpty()) {
    const QDate day = QDate::fromString(typed, Qt::ISODate);
    const QDateTime moment = QDateTime::fromString(QString(typed).replace(u' ', u'T'), Qt::ISODate);
    if (key == "date" && day.isValid()) value = day.toString(Qt::ISODate).toStdString();
    if (key == "start" && moment.isValid())
      value = moment.toString(QStringLiteral("yyyy-MM-ddTHH:mm:ss")).toStdString();
    if (!value) {
      QPalette wrong = field->palette();
      wrong.setColor(QPalette::Text, colour_of(Sign::not_met, ChartColours::of(palette())));
      field->setPalette(wrong);
      const QString why = tr("%1 is not a date of the form %2").arg(typed, field->placeholderText());
      field->setToolTip(plain_tip(why));
      QToolTip::showText(field->mapToGlobal(QPoint(0, field->height())), plain_tip(why), field);
      return;
    }
  }
  shown_[key] = typed;
  emit changed({std::nullopt, key, value});
}

void SettingForm::showFields(const Record* record, const Job* job, const std::vector<JobChange>& by_hand) {
  using Clock = RecorderClock::Kind;
  const auto show_in = [&](const std::string& key, bool has_use, const QString& given) {
    QLineEdit* field = fields_.at(key);
    field->setEnabled(has_use || !given.isEmpty());
    shown_[key] = given;
    if (field->text() != given && !field->hasFocus()) field->setText(given);
    QFont font = field->font();
    font.setBold(!given.isEmpty());
    field->setFont(font);
  };
  QString date = value_in("date", by_hand).value_or(QString());
  QString start = value_in("start", by_hand).value_or(QString());
  if (job && !value_in("date", by_hand) && job->reading.date)
    date = QDate(job->reading.date->year, job->reading.date->month, job->reading.date->day)
               .toString(Qt::ISODate);
  if (job && !value_in("start", by_hand) && job->reading.start)
    start = QString::fromStdString(job->reading.start->iso());
  show_in("date", !record || record->clock.kind() == Clock::time_of_day, date);
  show_in("start", !record || record->clock.kind() == Clock::elapsed, start.replace(u'T', u' '));
}

QLineEdit* SettingForm::field(const std::string& key) const { return fields_.at(key); }

QComboBox* SettingForm::box(const std::string& key) const { return boxes_.at(key); }

void SettingForm::showChoice(const std::string& key, const QString& found, const QString& given) {
  QComboBox* box = boxes_.at(key);
  box->setItemText(0, found.isEmpty() ? tr("As found") : tr("As found: %1").arg(found));
  if (!given.isEmpty() && box->findData(given) < 0) box->addItem(given, given);
  box->setCurrentIndex(given.isEmpty() ? 0 : box->findData(given));
  QFont font = box->font();
  font.setBold(!given.isEmpty());
  box->setFont(font);
}

void SettingForm::show(const Record* record, const Job* job, const std::vector<JobChange>& wanted,
                       const std::vector<JobChange>& by_job, const LogPreview* preview) {
  showing_ = true;
  std::vector<JobChange> by_hand = wanted;
  if (!record) by_hand.insert(by_hand.end(), by_job.begin(), by_job.end());
  setEnabled(record || (preview && preview->readable));
  QComboBox* header = boxes_["header_line"];
  while (header->count() > 1) header->removeItem(1);
  header->addItem(tr("None"), QStringLiteral("0"));
  const qsizetype lines = preview ? preview->lines.size() : 0;
  for (qsizetype line = 1; line <= lines; ++line)
    header->addItem(tr("Line %1").arg(line), QString::number(line));
  QComboBox* time = boxes_["time_column"];
  while (time->count() > 1) time->removeItem(1);
  if (record) {
    std::map<std::size_t, QString> names;
    for (const Channel& channel : record->channels)
      names[channel.column] = QString::fromStdString(channel.name);
    for (const OtherColumn& other : record->other_columns)
      names[other.column] = QString::fromStdString(other.name);
    for (const std::size_t column : record->reading.time_columns)
      names.try_emplace(column, column == record->reading.time_columns.front()
                                    ? QString::fromStdString(record->reading.time_column.value)
                                    : tr("time"));
    for (const auto& [number, name] : names)
      time->addItem(tr("%1: %2").arg(number).arg(shown(name)), QString::number(number));
  } else {
    const std::vector<std::string> columns = columns_of(preview, by_hand);
    for (std::size_t number = 1; number <= columns.size(); ++number) {
      const QString name = QString::fromStdString(columns[number - 1]);
      time->addItem(name.isEmpty() ? tr("Column %1").arg(number) : tr("%1: %2").arg(number).arg(shown(name)),
                    QString::number(number));
    }
  }

  const Reading none;
  const Reading& reading = record ? record->reading : none;
  const Setting<std::string> line{std::to_string(reading.header_line.value), reading.header_line.by};
  const std::pair<const char*, const Setting<std::string>*> settings[] = {
      {"encoding", &reading.encoding}, {"delimiter", &reading.delimiter},     {"decimal", &reading.decimal},
      {"dates", &reading.dates},       {"time_column", &reading.time_column}, {"time", &reading.time},
      {"header_line", &line}};
  for (const auto& [key, setting] : settings) {
    QString given = given_in(key, setting, by_hand);
    // The box names columns by number; a job may name them by header.
    if (std::string_view{key} == "time_column" && !given.isEmpty() && time->findData(given) < 0 && record)
      given = QString::number(reading.time_columns.front());
    QString found =
        setting->by == SettingBy::found && record ? QString::fromStdString(setting->value) : QString();
    if (std::string_view{key} == "delimiter" && !found.isEmpty()) found = delimiter_word(setting->value);
    if (std::string_view{key} == "header_line" && !found.isEmpty())
      found = reading.header_line.value == 0 ? tr("none") : tr("line %1").arg(reading.header_line.value);
    showChoice(key, found, given);
  }
  showFields(record, job, by_hand);
  showing_ = false;
}

}  // namespace soakwright::gui
