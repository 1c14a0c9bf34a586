// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/preferences_dialog.h"

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include "app/gui/parts/choice_box.h"

namespace soakwright::gui {
namespace {

constexpr int kTextStep_percent = 10;
constexpr int kPathWidth = 260;
constexpr int kAsInTheProcedure = -1;

void choose(QComboBox* box, int value) { box->setCurrentIndex(box->findData(value)); }

}  // namespace

PreferencesDialog::PreferencesDialog(const Preferences& now, QWidget* parent)
    : QDialog(parent),
      colours_(new ChoiceBox(this)),
      text_(new QSpinBox(this)),
      unit_(new ChoiceBox(this)),
      time_(new ChoiceBox(this)),
      trusted_(new QLineEdit(now.trusted, this)) {
  setWindowTitle(tr("Preferences"));
  colours_->addItem(tr("As the desktop"), static_cast<int>(Preferences::Colours::desktop));
  colours_->addItem(tr("Light"), static_cast<int>(Preferences::Colours::light));
  colours_->addItem(tr("Dark"), static_cast<int>(Preferences::Colours::dark));
  text_->setRange(Preferences::kLeastText_percent, Preferences::kMostText_percent);
  text_->setSingleStep(kTextStep_percent);
  text_->setSuffix(tr(" %"));
  unit_->addItem(tr("As in the procedure"), kAsInTheProcedure);
  unit_->addItem(tr("°C"), static_cast<int>(TemperatureUnit::celsius));
  unit_->addItem(tr("°F"), static_cast<int>(TemperatureUnit::fahrenheit));
  time_->addItem(tr("As the recorder shows it"), static_cast<int>(TimeOrigin::recorder));
  time_->addItem(tr("From the start of the record"), static_cast<int>(TimeOrigin::record));
  time_->addItem(tr("From the start of the hold"), static_cast<int>(TimeOrigin::hold));
  choose(colours_, static_cast<int>(now.colours));
  text_->setValue(now.text_percent);
  choose(unit_, now.unit ? static_cast<int>(*now.unit) : kAsInTheProcedure);
  choose(time_, static_cast<int>(now.time));
  build();
}

void PreferencesDialog::build() {
  colours_->setAccessibleName(tr("Colours"));
  text_->setAccessibleName(tr("Size of text"));
  unit_->setAccessibleName(tr("Temperatures"));
  time_->setAccessibleName(tr("Time axis"));
  trusted_->setAccessibleName(tr("Trusted certificates"));
  trusted_->setPlaceholderText(tr("none named"));
  trusted_->setClearButtonEnabled(true);
  trusted_->setMinimumWidth(kPathWidth);
  trusted_->setToolTip(tr("A file of certificates (PEM) that vouch for the signers of reports"));
  auto* browse = new QPushButton(tr("&Browse…"), this);
  browse->setAutoDefault(false);
  connect(browse, &QPushButton::clicked, this, [this] {
    const QString path = QFileDialog::getOpenFileName(this, tr("Trusted certificates"), trusted_->text(),
                                                      tr("Certificates (*.pem *.crt);;All files (*)"));
    if (!path.isEmpty()) trusted_->setText(path);
  });
  auto* file = new QHBoxLayout;
  file->addWidget(trusted_, 1);
  file->addWidget(browse);
  auto* form = new QFormLayout;
  form->addRow(tr("&Colours"), colours_);
  form->addRow(tr("&Size of text"), text_);
  form->addRow(tr("&Temperatures"), unit_);
  form->addRow(tr("Ti&me axis"), time_);
  auto* trusted = new QLabel(tr("T&rusted certificates"), this);
  trusted->setBuddy(trusted_);
  form->addRow(trusted, file);
  auto* note =
      new QLabel(tr("Temperatures and time axis are taken at each start; the View menu changes them for the "
                    "time being. Nothing here changes a verdict."),
                 this);
  note->setWordWrap(true);
  note->setTextFormat(Qt::PlainText);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(form);
  layout->addWidget(note);
  layout->addWidget(buttons);
}

Preferences PreferencesDialog::preferences() const {
  Preferences chosen;
  chosen.colours = static_cast<Preferences::Colours>(colours_->currentData().toInt());
  chosen.text_percent = text_->value();
  const int unit = unit_->currentData().toInt();
  if (unit != kAsInTheProcedure) chosen.unit = static_cast<TemperatureUnit>(unit);
  chosen.time = static_cast<TimeOrigin>(time_->currentData().toInt());
  chosen.trusted = trusted_->text().trimmed();
  return chosen;
}

}  // namespace soakwright::gui
