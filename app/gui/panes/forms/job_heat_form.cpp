// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/forms/job_heat_form.h"

#include <QFrame>
#include <QGroupBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <utility>

#include "app/gui/panes/forms/job_keys.h"
#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/forms/problem_label.h"
#include "app/gui/panes/forms/problems_of_form.h"
#include "core/procedure/toml/toml_edit.h"

namespace soakwright::gui {
namespace {

// Beside the text in a narrow window there is no room for more.
constexpr int kHeatFieldsInARow = 1;
const char* const kBand = "band";

/// The entry of the list, or the table, as the text has it; null where there is none.
const TomlShownTable* table_named(const std::vector<TomlShownTable>& tables, const TomlTableName& name) {
  for (const TomlShownTable& table : tables)
    if (table.table == name) return &table;
  return nullptr;
}

}  // namespace

JobHeatForm::JobHeatForm(QWidget* parent)
    : QWidget(parent), add_band_(new QPushButton(tr("Add &band"), this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  const auto add = [&](QVBoxLayout* into, const std::string& table, int fields_in_a_row) {
    Section section{table, new KeyForm(job_keys(table), fields_in_a_row, this), new ProblemLabel(this)};
    into->addWidget(section.problem);
    into->addWidget(section.form);
    sections_.push_back(section);
    connect(section.form, &KeyForm::changed, this,
            [this, table](const std::string& key, const std::optional<std::string>& value) {
              setKey({table, std::nullopt}, key, value);
            });
  };
  const auto group = [&](const QString& title) {
    auto* box = new QGroupBox(title, this);
    column->addWidget(box);
    return new QVBoxLayout(box);
  };
  QVBoxLayout* preheat = group(tr("Preheat"));
  add(preheat, {}, 1);
  preheat->addWidget(new QLabel(tr("Composition of the steel"), this));
  add(preheat, "composition", kElementsInARow);
  band_column_ = group(tr("Bands of a local heat treatment"));
  auto* row = new QHBoxLayout;
  row->addWidget(add_band_);
  row->addStretch(1);
  band_column_->addLayout(row);
  add(group(tr("Qualified tempering")), "qualified", kHeatFieldsInARow);
  add(group(tr("Hydrogen")), "hydrogen", kHeatFieldsInARow);
  connect(add_band_, &QPushButton::clicked, this, [this] {
    take(with_toml_entry(now_, kBand, {{"diameter", toml_words("")}}, name_));
  });
}

KeyForm* JobHeatForm::form(const std::string& table) const {
  for (const Section& section : sections_)
    if (section.table == table) return section.form;
  return nullptr;
}

QString JobHeatForm::problemOf(const std::string& table) const {
  for (const Section& section : sections_)
    if (section.table == table) return section.problem->said();
  return {};
}

void JobHeatForm::show(const std::string& text, const std::string& name, const Problems& problems) {
  now_ = text;
  name_ = name;
  const auto shown = shown_toml_tables(now_, name_);
  // What is no TOML can be put right in the text only.
  setEnabled(!now_.empty() && shown.ok());
  if (!shown) return;
  const std::vector<TomlShownTable>& tables = shown.value();
  for (const Section& section : sections_) {
    const TomlShownTable* const table = table_named(tables, {section.table});
    section.form->show(table, {});
    // Written in one line of the head, the table is no table of its own in the text.
    section.form->setEnabled(section.table.empty() || table || !tables.front().find(section.table));
    TableProblems found;
    if (table) found = problems_of_table(problems, tables, *table, *section.form);
    section.form->say(found.of_keys);
    // What is wrong with the head as a whole is said above the job's text.
    section.problem->say(section.table.empty() ? QString() : found.of_table);
  }
  std::size_t bands = 0;
  while (table_named(tables, {kBand, bands})) ++bands;
  matchBands(bands);
  for (std::size_t i = 0; i < bands; ++i) {
    const TomlShownTable& table = *table_named(tables, {kBand, i});
    const TableProblems found = problems_of_table(problems, tables, table, *bands_[i].form);
    bands_[i].form->show(&table, {});
    bands_[i].form->say(found.of_keys);
    bands_[i].problem->say(found.of_table);
  }
}

/// As many cards as the job has bands; those that are there stay, with what is being typed.
void JobHeatForm::matchBands(std::size_t count) {
  while (bands_.size() > count) {
    bands_.back().card->hide();
    bands_.back().card->deleteLater();
    bands_.pop_back();
  }
  while (bands_.size() < count) {
    const std::size_t entry = bands_.size();
    Band band;
    band.card = new QFrame(this);
    band.card->setFrameShape(QFrame::StyledPanel);
    band.form = new KeyForm(job_keys(kBand), kHeatFieldsInARow, band.card);
    band.problem = new ProblemLabel(band.card);
    auto* remove = new QPushButton(tr("Remove"), band.card);
    remove->setAccessibleName(tr("Remove band %1").arg(entry + 1));
    auto* head = new QHBoxLayout;
    head->addWidget(new QLabel(tr("Band %1").arg(entry + 1), band.card), 1);
    head->addWidget(remove);
    auto* inner = new QVBoxLayout(band.card);
    inner->addLayout(head);
    inner->addWidget(band.problem);
    inner->addWidget(band.form);
    connect(remove, &QPushButton::clicked, this,
            [this, entry] { take(without_toml_entry(now_, kBand, entry, name_)); });
    connect(band.form, &KeyForm::changed, this,
            [this, entry](const std::string& key, const std::optional<std::string>& value) {
              setKey({kBand, entry}, key, value);
            });
    band_column_->insertWidget(static_cast<int>(entry), band.card);
    bands_.push_back(band);
  }
}

void JobHeatForm::setKey(const TomlTableName& table, const std::string& key,
                         const std::optional<std::string>& value) {
  // A table with nothing in it is refused for what it lacks: it goes with its last key.
  if (!value && !table.entry && !table.name.empty()) {
    const auto shown = shown_toml_tables(now_, name_);
    const TomlShownTable* const old = shown ? table_named(shown.value(), table) : nullptr;
    if (old && old->keys.size() == 1 && old->keys.front().key == key)
      return take(without_toml_table(now_, table.name, name_));
  }
  take(with_toml_key(now_, table, key, value, name_));
}

void JobHeatForm::take(const Result<std::string>& text) {
  if (text && text.value() != now_) emit changed(text.value());
}

}  // namespace soakwright::gui
