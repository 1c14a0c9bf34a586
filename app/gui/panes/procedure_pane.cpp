// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/procedure_pane.h"

#include <QFile>
#include <QFileInfo>
#include <QGroupBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>

#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/forms/problems_of_form.h"
#include "app/gui/panes/forms/procedure_keys.h"
#include "app/gui/panes/forms/stage_card.h"
#include "app/gui/parts/plain_tip.h"
#include "app/gui/parts/read_only_look.h"
#include "app/gui/parts/source_text.h"
#include "app/gui/texts/problem_text.h"
#include "app/pdf/shown_text.h"
#include "core/procedure/toml/toml_edit.h"

namespace soakwright::gui {
namespace {

constexpr int kHeadFieldsInARow = 2;

QString title_of(const TomlTableName& table) {
  if (table.entry) return ProcedurePane::tr("stage %1").arg(*table.entry + 1);
  return table.name.empty() ? ProcedurePane::tr("procedure") : QString::fromStdString(table.name);
}

/// What was changed, in words.
QString words_of(const std::vector<TomlTableName>& tables, const std::string& key,
                 const std::optional<std::string>& value) {
  QStringList titles;
  for (const TomlTableName& table : tables) titles.append(title_of(table));
  const QString name = QString::fromStdString(key).replace(u'_', u' ');
  const QString now = value ? pdf::shown_text(*value) : ProcedurePane::tr("not given");
  return ProcedurePane::tr("%1: %2 %3")
      .arg(titles.join(QStringLiteral(", ")), name, QString(now).remove(u'"'));
}

}  // namespace

ProcedurePane::ProcedurePane(QWidget* parent)
    : QWidget(parent),
      file_(new QLabel(this)),
      source_(new SourceText(tr("Text of the procedure"), tr("What is wrong with the procedure"),
                             tr("Evaluate with this text; it is saved with Save"), this)),
      save_(new QPushButton(tr("&Save…"), this)),
      save_as_(new QPushButton(tr("Save &as…"), this)),
      editor_(new QPushButton(tr("&Open in a text editor"), this)),
      fresh_(new QPushButton(tr("&New…"), this)),
      add_(new QPushButton(tr("Add s&tage"), this)) {
  build();
  connect(save_, &QPushButton::clicked, this, &ProcedurePane::saveWanted);
  connect(save_as_, &QPushButton::clicked, this, &ProcedurePane::saveAsWanted);
  connect(editor_, &QPushButton::clicked, this, &ProcedurePane::editorWanted);
  connect(source_, &SourceText::applied, this,
          [this](const std::string& text) { emit changed(text, tr("procedure text changed")); });
}

void ProcedurePane::build() {
  file_->setTextFormat(Qt::PlainText);
  file_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  editor_->setToolTip(tr("Changes made there are noticed; Reload evaluates with them"));
  save_->setToolTip(tr("Show what changes in the procedure file and save it"));
  save_as_->setToolTip(tr("Save the procedure in another file and go on with that one"));
  fresh_->setToolTip(tr("A procedure from a published rule, from the open log, from a sample, or empty"));
  connect(fresh_, &QPushButton::clicked, this, &ProcedurePane::newWanted);

  fields_ = new QWidget(this);
  auto* column = new QVBoxLayout(fields_);
  column->setContentsMargins(8, 4, 8, 4);
  for (const auto& [table, title] : std::initializer_list<std::pair<const char*, QString>>{
           {"", tr("Procedure")}, {"record", tr("Record")}, {"evaluation", tr("Evaluation")}}) {
    auto* box = new QGroupBox(title, fields_);
    auto* inner = new QVBoxLayout(box);
    auto* form = new KeyForm(procedure_keys(table), kHeadFieldsInARow, box);
    inner->addWidget(form);
    sections_.push_back({table, form});
    connect(
        form, &KeyForm::changed, this,
        [this, name = std::string(table)](const std::string& key, const std::optional<std::string>& value) {
          setKey({name, std::nullopt}, key, value);
        });
    column->addWidget(box);
    // Stages stand between what the procedure is and how the record is evaluated.
    if (std::string_view{table}.empty()) {
      stage_column_ = new QVBoxLayout;
      column->addLayout(stage_column_);
      auto* row = new QHBoxLayout;
      row->addWidget(add_);
      row->addStretch(1);
      column->addLayout(row);
    }
  }
  column->addStretch(1);
  auto* kinds = new QMenu(add_);
  for (const auto& [kind, name] : stage_kinds())
    connect(kinds->addAction(name), &QAction::triggered, this, [this, kind = kind] { addStage(kind); });
  add_->setMenu(kinds);
  auto* scroll = new QScrollArea(this);
  scroll->setWidget(fields_);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setFocusPolicy(Qt::NoFocus);

  auto* both = new QSplitter(Qt::Horizontal, this);
  both->addWidget(scroll);
  both->addWidget(source_);
  both->setStretchFactor(0, 3);
  both->setStretchFactor(1, 2);
  both->setChildrenCollapsible(false);

  auto* head = new QHBoxLayout;
  head->setContentsMargins(8, 4, 8, 0);
  head->addWidget(file_, 1);
  for (QPushButton* button : {fresh_, editor_, save_as_, save_}) head->addWidget(button);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  layout->addLayout(head);
  layout->addWidget(both, 1);
}

bool ProcedurePane::typed() const { return source_->typed(); }

QString ProcedurePane::message() const { return source_->problems(); }

QPlainTextEdit* ProcedurePane::text() const { return source_->editor(); }

KeyForm* ProcedurePane::form(const std::string& table) const {
  for (const Section& section : sections_)
    if (section.table == table) return section.form;
  return nullptr;
}

void ProcedurePane::show(const Session& session) {
  const QString path = session.procedureFile();
  now_ = session.procedureText();
  name_ = path.isEmpty() ? unwritten_procedure_name().toStdString() : QFile::encodeName(path).toStdString();
  const bool unsaved = session.draft().has_value();
  QString said = now_.empty()     ? tr("No procedure is open.")
                 : path.isEmpty() ? unwritten_procedure_name()
                                  : QFileInfo(path).fileName();
  if (unsaved && !path.isEmpty()) said = tr("%1 (changed, not saved)").arg(said);
  file_->setText(said);
  fixed_ = session.open().read_only();
  file_->setToolTip(plain_tip(fixed_ ? read_only_words(session.open()) : path));
  Problems problems;
  for (const Problem& problem : session.problems())
    if (problem.file == name_) problems.push_back(problem);
  save_->setEnabled(unsaved && problems.empty());
  save_as_->setEnabled(!now_.empty() && problems.empty() && !fixed_);
  editor_->setEnabled(!path.isEmpty() && !fixed_);
  fresh_->setEnabled(!fixed_);
  show_as_read_only(fields_, fixed_);
  source_->show(now_, !now_.empty() && !fixed_);
  showForm(problems);
}

void ProcedurePane::showForm(const Problems& problems) {
  source_->say(problem_texts(problems));

  const auto shown = shown_toml_tables(now_, name_);
  // What is no TOML can be put right in the text only.
  fields_->setEnabled(!now_.empty() && shown.ok() && !fixed_);
  if (!shown) return;
  const std::vector<TomlShownTable>& tables = shown.value();
  matchStages(tables);
  const TomlShownKey* const unit = tables.front().find("unit");
  const QString degree = unit && unit->value == "F" ? QStringLiteral("F") : QStringLiteral("C");
  const auto problems_of = [&](const TomlShownTable& table, const KeyForm& form) {
    return problems_of_table(problems, tables, table, form);
  };
  for (const Section& section : sections_) {
    const TomlShownTable* mine = nullptr;
    for (const TomlShownTable& table : tables)
      if (table.table.name == section.table && !table.table.entry) mine = &table;
    section.form->show(mine, degree);
    section.form->say(mine ? problems_of(*mine, *section.form).of_keys : std::map<std::string, QString>{});
  }
  for (const TomlShownTable& table : tables) {
    if (table.table.name != "stage" || !table.table.entry) continue;
    StageCard* card = stages_[*table.table.entry];
    card->show(table, degree, *table.table.entry + 1 == stages_.size());
    const TableProblems found = problems_of(table, *card->form());
    card->say(found.of_keys, found.of_table);
  }
}

/// As many cards as there are stages, each of its stage's kind; those that fit stay, with what is being
/// typed.
void ProcedurePane::matchStages(const std::vector<TomlShownTable>& tables) {
  std::vector<std::string> kinds;
  for (const TomlShownTable& table : tables) {
    if (table.table.name != "stage" || !table.table.entry) continue;
    const TomlShownKey* const kind = table.find("kind");
    kinds.resize(std::max(kinds.size(), *table.table.entry + 1));
    kinds[*table.table.entry] = kind ? kind->value : std::string();
  }
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    if (i < stages_.size() && stages_[i]->kind() == kinds[i]) continue;
    auto* card = new StageCard(i, kinds[i], fields_);
    connect(card->form(), &KeyForm::changed, this,
            [this, i](const std::string& key, const std::optional<std::string>& value) {
              setKey({"stage", i}, key, value);
            });
    connect(card, &StageCard::removeWanted, this, [this, i] {
      take(without_toml_entry(now_, "stage", i, name_), tr("remove stage %1").arg(i + 1));
    });
    connect(card, &StageCard::moveWanted, this, [this, i](bool down) {
      take(with_toml_entries_swapped(now_, "stage", down ? i : i - 1, name_), tr("move stage %1").arg(i + 1));
    });
    if (i < stages_.size()) {
      delete stage_column_->replaceWidget(stages_[i], card);
      stages_[i]->hide();
      stages_[i]->deleteLater();
      stages_[i] = card;
    } else {
      stage_column_->addWidget(card);
      stages_.push_back(card);
    }
  }
  while (stages_.size() > kinds.size()) {
    stages_.back()->hide();
    stage_column_->removeWidget(stages_.back());
    stages_.back()->deleteLater();
    stages_.pop_back();
  }
}

void ProcedurePane::setKey(const TomlTableName& table, const std::string& key,
                           const std::optional<std::string>& value) {
  take(with_toml_key(now_, table, key, value, name_), words_of({table}, key, value));
}

void ProcedurePane::change(const std::vector<TomlTableName>& tables, const std::string& key,
                           const std::string& value) {
  Result<std::string> text = now_;
  for (const TomlTableName& table : tables)
    if (text) text = with_toml_key(std::string(text.value()), table, key, value, name_);
  take(text, words_of(tables, key, value));
}

void ProcedurePane::addStage(const std::string& kind) {
  take(with_toml_entry(now_, "stage", {{"kind", toml_words(kind)}}, name_),
       tr("add a stage: %1").arg(QString::fromStdString(kind)));
}

void ProcedurePane::take(const Result<std::string>& text, const QString& words) {
  if (text && text.value() != now_) emit changed(text.value(), words);
}

}  // namespace soakwright::gui
