// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/exclude_dialog.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <utility>

#include "app/gui/parts/choice_box.h"
#include "app/gui/texts/column_names.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr int kFieldWidth = 320;

QDialogButtonBox* buttons_for(QDialog* dialog, const QString& accept) {
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, dialog);
  buttons->button(QDialogButtonBox::Ok)->setText(accept);
  QObject::connect(buttons, &QDialogButtonBox::accepted, dialog, &QDialog::accept);
  QObject::connect(buttons, &QDialogButtonBox::rejected, dialog, &QDialog::reject);
  return buttons;
}

QLabel* note_of(const QString& text, QWidget* parent) {
  auto* note = new QLabel(text, parent);
  note->setWordWrap(true);
  note->setTextFormat(Qt::PlainText);
  return note;
}

}  // namespace

ExcludeDialog::ExcludeDialog(std::shared_ptr<const Record> record, std::optional<std::size_t> channel,
                             std::optional<std::pair<double, double>> time, QWidget* parent)
    : QDialog(parent),
      record_(std::move(record)),
      channel_(new ChoiceBox(this)),
      whole_(new QCheckBox(tr("The &whole record"), this)),
      from_(new QLineEdit(this)),
      to_(new QLineEdit(this)),
      reason_(new QLineEdit(this)),
      buttons_(buttons_for(this, tr("Exclude"))) {
  setWindowTitle(tr("Exclude a thermocouple"));
  for (std::size_t i = 0; i < record_->channels.size(); ++i)
    channel_->addItem(pdf::shown_text(record_->channels[i].name));
  channel_->setCurrentIndex(static_cast<int>(channel.value_or(0)));
  channel_->setAccessibleName(tr("Thermocouple"));
  from_->setAccessibleName(tr("From"));
  to_->setAccessibleName(tr("To"));
  reason_->setAccessibleName(tr("Reason"));
  reason_->setPlaceholderText(tr("required, for example: junction came off the work"));
  const double from_s = time ? time->first : record_->begin_s();
  const double to_s = time ? time->second : record_->end_s();
  from_->setText(QString::fromStdString(record_->moment_text(from_s)));
  to_->setText(QString::fromStdString(record_->moment_text(to_s)));
  whole_->setChecked(!time);
  for (QLineEdit* field : {from_, to_, reason_}) field->setMinimumWidth(kFieldWidth);
  auto* form = new QFormLayout;
  form->addRow(tr("&Thermocouple"), channel_);
  form->addRow(QString(), whole_);
  form->addRow(tr("&From"), from_);
  form->addRow(tr("T&o"), to_);
  form->addRow(tr("&Reason"), reason_);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(form);
  layout->addWidget(note_of(tr("Times are written as the log prints them. The exclusion and its reason are "
                               "printed on the first page of the report."),
                            this));
  layout->addWidget(buttons_);
  connect(whole_, &QCheckBox::toggled, this, &ExcludeDialog::check);
  for (QLineEdit* field : {from_, to_, reason_})
    connect(field, &QLineEdit::textChanged, this, &ExcludeDialog::check);
  reason_->setFocus();
  check();
}

void ExcludeDialog::check() {
  from_->setEnabled(!whole_->isChecked());
  to_->setEnabled(!whole_->isChecked());
  const bool timed = whole_->isChecked() || !from_->text().trimmed().isEmpty();
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(timed && !reason_->text().trimmed().isEmpty());
}

JobChange ExcludeDialog::change() const {
  AddedEntry entry{"exclude", {}};
  const auto channel = static_cast<std::size_t>(channel_->currentIndex());
  entry.keys.emplace_back("column", column_entry(*record_, channel));
  if (whole_->isChecked()) {
    entry.keys.emplace_back("from", "0");
  } else {
    entry.keys.emplace_back("from", from_->text().trimmed().toStdString());
    const std::string to = to_->text().trimmed().toStdString();
    if (!to.empty()) entry.keys.emplace_back("to", to);
  }
  entry.keys.emplace_back("reason", reason_->text().trimmed().toStdString());
  return {std::nullopt, {}, std::nullopt, std::move(entry)};
}

std::optional<QString> ask_reason(QWidget* parent, const QString& title, const QString& name) {
  QDialog dialog(parent);
  dialog.setWindowTitle(title);
  auto* reason = new QLineEdit(&dialog);
  reason->setAccessibleName(QDialog::tr("Reason"));
  reason->setPlaceholderText(QDialog::tr("required, for example: junction came off the work"));
  reason->setMinimumWidth(kFieldWidth);
  auto* buttons = buttons_for(&dialog, title);
  auto* form = new QFormLayout;
  form->addRow(QDialog::tr("&Reason"), reason);
  auto* layout = new QVBoxLayout(&dialog);
  layout->addWidget(
      note_of(QDialog::tr("%1 will not be evaluated. The reason is printed on the first page of the report.")
                  .arg(name),
              &dialog));
  layout->addLayout(form);
  layout->addWidget(buttons);
  const auto check = [&] {
    buttons->button(QDialogButtonBox::Ok)->setEnabled(!reason->text().trimmed().isEmpty());
  };
  QObject::connect(reason, &QLineEdit::textChanged, &dialog, check);
  check();
  reason->setFocus();
  if (dialog.exec() != QDialog::Accepted) return std::nullopt;
  return reason->text().trimmed();
}

}  // namespace soakwright::gui
