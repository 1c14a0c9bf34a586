// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/new_procedure_dialog.h"

#include <QDialogButtonBox>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QFontDatabase>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/gui/parts/choice_box.h"
#include "app/gui/texts/problem_text.h"
#include "app/gui/texts/window_text.h"
#include "app/gui/verdict_sign.h"
#include "app/pdf/shown_text.h"
#include "core/units/quantity_text.h"

namespace soakwright::gui {
namespace {

Problem not_read(const QString& what, const QString& help) {
  return {ProblemKind::usage, {}, 0, what.toStdString(), help.toStdString()};
}

/// Differences of a rule, each once, in its unit.
std::vector<double> lower_by_of(const PublishedRule& rule) {
  std::vector<double> found;
  for (const RuleStage& stage : rule.stages) {
    if (!stage.lower_by) continue;
    const double value = stage.lower_by->in(rule.unit);
    if (std::find(found.begin(), found.end(), value) == found.end()) found.push_back(value);
  }
  std::sort(found.begin(), found.end());
  return found;
}

/// The folder says which case it is: "w-118-late-and-dipping / htp-021.toml".
QString sample_name(const QString& path) {
  const QFileInfo info(path);
  return QStringLiteral("%1 / %2").arg(info.dir().dirName(), info.fileName());
}

QStringList sample_procedures(const QString& samples) {
  QStringList found;
  if (samples.isEmpty()) return found;
  const QDir all(samples);
  for (const QString& folder : all.entryList(QDir::Dirs | QDir::NoDotAndDotDot, QDir::Name))
    for (const QString& name :
         QDir(all.filePath(folder)).entryList({QStringLiteral("*.toml")}, QDir::Files)) {
      const QString path = all.filePath(folder + u'/' + name);
      if (file_kind(path) == FileKind::procedure) found.append(path);
    }
  return found;
}

}  // namespace

std::string empty_procedure(TemperatureUnit unit) {
  const std::string word = unit == TemperatureUnit::fahrenheit ? "F" : "C";
  std::string text = "soakwright = \"procedure 1\"\n";
  text.append("number = \"\"\n").append("unit = \"").append(word).append("\"\n");
  return text;
}

NewProcedureDialog::NewProcedureDialog(const OpenCase& open, const DataFolders& folders, QWidget* parent)
    : QDialog(parent),
      open_(open),
      of_rule_(new QRadioButton(tr("From a published &rule"), this)),
      of_log_(new QRadioButton(tr("From the open &log: generous limits for what it shows"), this)),
      of_sample_(new QRadioButton(tr("From a &sample"), this)),
      empty_(new QRadioButton(tr("&Empty"), this)),
      rule_(new ChoiceBox(this)),
      material_(new ChoiceBox(this)),
      lower_by_(new ChoiceBox(this)),
      thickness_(new QLineEdit(this)),
      hold_(new QLineEdit(this)),
      hold_time_(new QLineEdit(this)),
      sample_(new ChoiceBox(this)),
      preview_(new QPlainTextEdit(this)),
      problem_(new QLabel(this)),
      buttons_(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this)) {
  setWindowTitle(tr("New procedure"));
  std::vector<std::string> places;
  for (const QString& folder : folders.rules) places.push_back(path_bytes(folder));
  shelf_ = read_rule_folders(places);
  for (const PublishedRule& one : shelf_.rules)
    rule_->addItem(pdf::shown_text(one.title), QString::fromStdString(one.name));
  for (const QString& path : sample_procedures(folders.samples)) sample_->addItem(sample_name(path), path);
  auto* form = new QFormLayout;
  build(form);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(form);
  layout->addWidget(problem_);
  layout->addWidget(preview_, 1);
  layout->addWidget(buttons_);
  of_log_->setEnabled(open_.has_record());
  of_rule_->setEnabled(rule_->count() > 0);
  of_sample_->setEnabled(sample_->count() > 0);
  (of_rule_->isEnabled() ? of_rule_ : empty_)->setChecked(true);
  chooseRule();
  resize(720, 620);
}

void NewProcedureDialog::build(QFormLayout* form) {
  const std::pair<QWidget*, QString> names[] = {{rule_, tr("Rule")},
                                                {material_, tr("Material")},
                                                {lower_by_, tr("Lower holding temperature")},
                                                {thickness_, tr("Thickness")},
                                                {hold_, tr("Hold range")},
                                                {hold_time_, tr("Hold time")},
                                                {sample_, tr("Sample")}};
  form->addRow(of_rule_);
  for (const auto& [widget, name] : names) {
    widget->setAccessibleName(name);
    if (widget == sample_) {
      form->addRow(of_log_);
      form->addRow(of_sample_);
    }
    form->addRow(name, widget);
  }
  form->addRow(empty_);
  for (QComboBox* box : {rule_, material_, sample_}) {
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(40);
  }
  thickness_->setPlaceholderText(tr("38 mm, or 1.5 in"));
  hold_->setPlaceholderText(tr("600-640"));
  hold_time_->setPlaceholderText(tr("90 min"));
  preview_->setReadOnly(true);
  preview_->setTabChangesFocus(true);
  preview_->setLineWrapMode(QPlainTextEdit::NoWrap);
  preview_->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
  preview_->setAccessibleName(tr("Text of the new procedure"));
  problem_->setObjectName(QStringLiteral("problem"));
  problem_->setTextFormat(Qt::PlainText);
  problem_->setWordWrap(true);
  problem_->setAccessibleName(tr("What is still missing"));
  QPalette ink = problem_->palette();
  ink.setColor(QPalette::WindowText, colour_of(Sign::not_met, ChartColours::of(palette())));
  problem_->setPalette(ink);
  buttons_->button(QDialogButtonBox::Ok)->setText(tr("Create"));
  connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
  for (QRadioButton* one : {of_rule_, of_log_, of_sample_, empty_})
    connect(one, &QRadioButton::toggled, this, [this](bool on) {
      if (on) make();
    });
  connect(rule_, &QComboBox::currentIndexChanged, this, &NewProcedureDialog::chooseRule);
  for (QComboBox* box : {material_, lower_by_, sample_})
    connect(box, &QComboBox::currentIndexChanged, this, &NewProcedureDialog::make);
  for (QLineEdit* line : {thickness_, hold_, hold_time_})
    connect(line, &QLineEdit::textChanged, this, &NewProcedureDialog::make);
}

void NewProcedureDialog::chooseRule() {
  const int place = rule_->currentIndex();
  material_->clear();
  lower_by_->clear();
  lower_by_->addItem(tr("No"), QString());
  if (place >= 0) {
    const PublishedRule& rule = shelf_.rules[static_cast<std::size_t>(place)];
    for (const std::string& material : rule.materials) material_->addItem(pdf::shown_text(material));
    for (const double value : lower_by_of(rule))
      lower_by_->addItem(
          tr("%1 °%2 lower, for a longer time")
              .arg(value)
              .arg(rule.unit == TemperatureUnit::fahrenheit ? QStringLiteral("F") : QStringLiteral("C")),
          value);
    rule_->setToolTip(pdf::shown_text(rule.provenance.source.value_or(std::string{})));
  }
  make();
}

NewProcedureDialog::From NewProcedureDialog::from() const {
  if (of_log_->isChecked()) return From::log;
  if (of_sample_->isChecked()) return From::sample;
  return of_rule_->isChecked() ? From::rule : From::nothing;
}

QString NewProcedureDialog::words() const {
  switch (from()) {
    case From::rule:
      return tr("new procedure from %1").arg(rule_->currentText());
    case From::log:
      return tr("new procedure from the log");
    case From::sample:
      return tr("new procedure from a sample");
    case From::nothing:
      break;
  }
  return tr("new procedure");
}

Result<std::string> NewProcedureDialog::fromRule() const {
  DraftRequest request;
  request.rule = rule_->currentData().toString().toStdString();
  request.material = material_->currentText().toStdString();
  if (!lower_by_->currentData().toString().isEmpty()) request.lower_by = lower_by_->currentData().toDouble();
  request.hold = hold_->text().trimmed().toStdString();
  request.hold_time = hold_time_->text().trimmed().toStdString();
  const QString typed = thickness_->text().trimmed();
  if (hold_->isEnabled() && request.hold.empty() != request.hold_time.empty())
    return not_read(tr("the hold range and the hold time belong together"), tr("give both, or neither"));
  if (!typed.isEmpty()) {
    request.thickness = parse_thickness(typed.toStdString());
    if (!request.thickness || !(request.thickness->millimetres() > 0.0))
      return not_read(tr("%1 is no thickness").arg(typed), tr("write 38 mm, or 1.5 in"));
  }
  return draft_procedure(shelf_, request);
}

Result<std::string> NewProcedureDialog::drafted() const {
  switch (from()) {
    case From::rule:
      return fromRule();
    case From::log:
      return propose_procedure(open_.analysis, open_.files.unit);
    case From::sample: {
      QFile file(sample_->currentData().toString());
      if (!file.open(QIODevice::ReadOnly))
        return not_read(tr("the sample cannot be read"), tr("choose another one"));
      return file.readAll().toStdString();
    }
    case From::nothing:
      break;
  }
  return empty_procedure(open_.files.unit.value_or(TemperatureUnit::celsius));
}

void NewProcedureDialog::make() {
  const bool rule = from() == From::rule && rule_->currentIndex() >= 0;
  const PublishedRule* const chosen =
      rule ? &shelf_.rules[static_cast<std::size_t>(rule_->currentIndex())] : nullptr;
  rule_->setEnabled(rule);
  material_->setEnabled(rule && material_->count() > 0);
  lower_by_->setEnabled(rule && lower_by_->count() > 1);
  thickness_->setEnabled(chosen && chosen->needs_thickness());
  for (QLineEdit* line : {hold_, hold_time_}) line->setEnabled(chosen && chosen->hold_is_left_open());
  sample_->setEnabled(from() == From::sample);
  const Result<std::string> made = drafted();
  QStringList problems;
  if (made)
    text_ = made.value();
  else
    for (const Problem& problem : made.problems()) problems.append(drafting_text(problem));
  problem_->setText(problems.join(u'\n'));
  preview_->setPlainText(made ? QString::fromStdString(made.value()) : QString());
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(made.ok());
}

}  // namespace soakwright::gui
