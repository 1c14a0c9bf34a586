// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/settings_comparison.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/forms/procedure_keys.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/texts/problem_text.h"
#include "app/pdf/shown_text.h"
#include "core/procedure/toml/toml_edit.h"

namespace soakwright::gui {
namespace {

constexpr int kSettingsInARow = 2;
const char* const kEvaluation = "evaluation";

/// The row of the same requirement; null where the other evaluation has none.
const RequirementRow* same_row(const Report& report, const RequirementRow& row) {
  for (const RequirementRow& other : report.requirements)
    if (other.id == row.id && other.weld == row.weld) return &other;
  return nullptr;
}

}  // namespace

SettingsComparison::SettingsComparison(QWidget* parent)
    : QDialog(parent),
      settings_(new KeyForm(procedure_keys(kEvaluation), kSettingsInARow, this)),
      requirements_(new ListPane(tr("Requirements under both settings"), this)),
      summary_(new QLabel(this)),
      problem_(new QLabel(this)) {
  setWindowTitle(tr("Other evaluation settings"));
  for (QLabel* label : {summary_, problem_}) {
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
  }
  summary_->setAccessibleName(tr("Verdict under both settings"));
  problem_->setAccessibleName(tr("What is wrong with the settings"));
  problem_->hide();
  auto* note = new QLabel(
      tr("For comparison only. Nothing is saved; the verdict is that of the procedure's own settings."),
      this);
  note->setWordWrap(true);
  auto* reset = new QPushButton(tr("&Reset"), this);
  reset->setToolTip(tr("Back to the procedure's own settings"));
  auto* done = new QPushButton(tr("&Close"), this);
  auto* buttons = new QHBoxLayout;
  buttons->addStretch(1);
  for (QPushButton* button : {reset, done}) {
    // Enter in a field applies it and presses no button.
    button->setAutoDefault(false);
    buttons->addWidget(button);
  }
  connect(reset, &QPushButton::clicked, this, [this] { show(open_); });
  connect(done, &QPushButton::clicked, this, &QDialog::close);
  auto* layout = new QVBoxLayout(this);
  layout->addWidget(note);
  layout->addWidget(settings_);
  layout->addWidget(problem_);
  layout->addWidget(summary_);
  layout->addWidget(requirements_, 1);
  layout->addLayout(buttons);
  resize(860, 560);
  connect(settings_, &KeyForm::changed, this, &SettingsComparison::change);
  connect(&work_, &BackgroundWork::finished, this, [this](const BackgroundWork::Outcome& outcome) {
    const QStringList texts = outcome->open ? QStringList() : problem_texts(outcome->open.problems());
    problem_->setText(texts.join(u'\n'));
    problem_->setVisible(!texts.isEmpty());
    if (outcome->open && outcome->open.value().report) showRequirements(*outcome->open.value().report);
  });
}

QString SettingsComparison::summary() const { return summary_->text(); }

QString SettingsComparison::problem() const { return problem_->isHidden() ? QString() : problem_->text(); }

void SettingsComparison::show(const OpenCase& open) {
  if (!open.analysis.verdicts || !open.report) return;
  work_.cancel();
  open_ = open;
  // Evaluating again needs none of the files inside a report, which are to go with the case.
  open_.from_report.reset();
  text_ = open.procedure_source;
  problem_->hide();
  showSettings();
  showRequirements(*open_.report);
  QDialog::show();
  raise();
}

void SettingsComparison::showSettings() {
  const auto shown = shown_toml_tables(text_, open_.analysis.procedure->file);
  if (!shown) return;
  const TomlShownTable* mine = nullptr;
  for (const TomlShownTable& table : shown.value())
    if (table.table == TomlTableName{kEvaluation}) mine = &table;
  settings_->show(mine, open_.analysis.procedure->unit == TemperatureUnit::fahrenheit ? QStringLiteral("F")
                                                                                      : QStringLiteral("C"));
}

void SettingsComparison::change(const std::string& key, const std::optional<std::string>& value) {
  auto text = with_toml_key(text_, {kEvaluation}, key, value, open_.analysis.procedure->file);
  if (!text) return;
  text_ = std::move(text).value();
  showSettings();
  work_.start([open = open_, text = text_](const Watch&) {
    return WorkOutcome{
        evaluate_case_again(open, open.procedure_path, DraftText{text, !open.procedure_path.isEmpty()})};
  });
}

void SettingsComparison::showRequirements(const Report& other) {
  const Report& own = *open_.report;
  ListContent content;
  content.headers = {tr("Requirement"),     tr("Stage"),         tr("Weld"),
                     tr("Limit"),           tr("Measured"),      tr("Verdict"),
                     tr("Other: measured"), tr("Other: verdict")};
  content.numbers = {3, 4, 6};
  content.stretch = 7;
  for (std::size_t i = 0; i < own.requirements.size(); ++i) {
    const RequirementRow& row = own.requirements[i];
    const RequirementRow* const changed = same_row(other, row);
    content.lines.push_back(
        {{pdf::shown_text(row.label), pdf::shown_text(row.stage), pdf::shown_text(row.weld),
          pdf::shown_text(row.limit), pdf::shown_text(row.measured), pdf::shown_text(row.verdict_text),
          changed ? pdf::shown_text(changed->measured) : QString(),
          changed ? pdf::shown_text(changed->verdict_text) : QString()},
         sign_of(changed ? changed->verdict : row.verdict),
         i});
  }
  requirements_->setColours(ChartColours::of(palette()));
  requirements_->setContent(std::move(content));
  summary_->setText(tr("Procedure's own settings: %1. These settings: %2.")
                        .arg(pdf::shown_text(own.verdict_text), pdf::shown_text(other.verdict_text)));
}

}  // namespace soakwright::gui
