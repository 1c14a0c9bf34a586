// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/remark_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <utility>

namespace soakwright::gui {
namespace {

constexpr int kFieldWidth = 320;

}  // namespace

RemarkDialog::RemarkDialog(const Record& record, double at_s, QWidget* parent)
    : QDialog(parent),
      at_(new QLineEdit(QString::fromStdString(record.moment_text(at_s)), this)),
      text_(new QLineEdit(this)),
      buttons_(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this)) {
  setWindowTitle(tr("Add a remark"));
  at_->setAccessibleName(tr("At"));
  text_->setAccessibleName(tr("Remark"));
  text_->setPlaceholderText(tr("for example: power cut, 4 min"));
  for (QLineEdit* field : {at_, text_}) field->setMinimumWidth(kFieldWidth);
  auto* form = new QFormLayout;
  form->addRow(tr("&At"), at_);
  form->addRow(tr("&Remark"), text_);
  auto* note =
      new QLabel(tr("The time is written as the log prints it. The remark is kept in the job and stands on "
                    "the chart and in the report. It changes no verdict."),
                 this);
  note->setWordWrap(true);
  note->setTextFormat(Qt::PlainText);
  buttons_->button(QDialogButtonBox::Ok)->setText(tr("Add"));
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(form);
  layout->addWidget(note);
  layout->addWidget(buttons_);
  connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
  for (QLineEdit* field : {at_, text_}) connect(field, &QLineEdit::textChanged, this, &RemarkDialog::check);
  text_->setFocus();
  check();
}

void RemarkDialog::check() {
  buttons_->button(QDialogButtonBox::Ok)
      ->setEnabled(!at_->text().trimmed().isEmpty() && !text_->text().trimmed().isEmpty());
}

JobChange RemarkDialog::change() const {
  AddedEntry entry{
      "remark",
      {{"at", at_->text().trimmed().toStdString()}, {"text", text_->text().trimmed().toStdString()}}};
  return {std::nullopt, {}, std::nullopt, std::move(entry)};
}

}  // namespace soakwright::gui
