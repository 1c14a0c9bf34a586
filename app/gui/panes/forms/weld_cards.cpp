// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/forms/weld_cards.h"

#include <QFrame>
#include <QGroupBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/gui/panes/forms/job_keys.h"
#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/forms/problem_label.h"
#include "app/gui/panes/forms/problems_of_form.h"
#include "core/procedure/toml/toml_edit.h"

namespace soakwright::gui {
namespace {

const char* const kWeld = "weld";
const char* const kComposition = "composition";

/// The keys of a table in braces; none where the value is anything else.
std::optional<std::vector<TomlShownKey>> keys_in_line(const std::string& value) {
  const auto shown = shown_toml_tables(std::string(kComposition) + " = " + value, {});
  if (!shown || shown.value().size() != 2) return std::nullopt;
  return shown.value().back().keys;
}

std::optional<std::string> in_line(const std::vector<TomlShownKey>& keys) {
  if (keys.empty()) return std::nullopt;
  std::string table = "{ ";
  for (const TomlShownKey& key : keys) {
    if (&key != &keys.front()) table += ", ";
    table.append(key.key).append(" = ").append(toml_as_typed(key.value));
  }
  return table + " }";
}

}  // namespace

WeldCards::WeldCards(QWidget* parent) : QWidget(parent) {
  auto* box = new QGroupBox(tr("Welds"), this);
  column_ = new QVBoxLayout(box);
  auto* add = new QPushButton(tr("Add &weld"), box);
  auto* row = new QHBoxLayout;
  row->addWidget(add);
  row->addStretch(1);
  column_->addLayout(row);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(box);
  connect(add, &QPushButton::clicked, this, [this] {
    take(with_toml_entry(now_, kWeld, {{"number", toml_words("")}}, name_));
  });
}

QString WeldCards::problemOf(std::size_t entry) const { return cards_[entry].problem->said(); }

void WeldCards::show(const std::string& text, const std::string& name, const Problems& problems) {
  now_ = text;
  name_ = name;
  const auto shown = shown_toml_tables(now_, name_);
  // What is no TOML can be put right in the text only.
  setEnabled(!now_.empty() && shown.ok());
  if (!shown) return;
  const std::vector<TomlShownTable>& tables = shown.value();
  const bool in_the_head = tables.front().find(kWeld) != nullptr;
  setVisible(!now_.empty() && !in_the_head);
  std::vector<const TomlShownTable*> welds;
  for (const TomlShownTable& table : tables)
    if (table.table.name == kWeld && table.table.entry) welds.push_back(&table);
  match(welds.size());
  for (std::size_t i = 0; i < welds.size(); ++i) {
    Card& card = cards_[i];
    const TableProblems found = problems_of_table(problems, tables, *welds[i], *card.form);
    card.form->show(welds[i], {});
    card.form->say(found.of_keys);
    showComposition(card, *welds[i]);
    card.problem->say(found.of_table);
  }
}

void WeldCards::showComposition(Card& card, const TomlShownTable& weld) {
  const TomlShownKey* const written = weld.find(kComposition);
  const auto keys = written && !written->spread ? keys_in_line(written->value)
                                                : std::optional<std::vector<TomlShownKey>>(std::in_place);
  // Written as a table of its own, or as what it cannot be, it is edited in the text.
  card.composition->setEnabled(keys && !(written && written->spread));
  card.elements = keys.value_or(std::vector<TomlShownKey>{});
  TomlShownTable table;
  table.table.name = kComposition;
  table.keys = card.elements;
  card.composition->show(&table, {});
}

/// As many cards as the job has welds; those that are there stay, with what is being typed.
void WeldCards::match(std::size_t count) {
  while (cards_.size() > count) {
    cards_.back().frame->hide();
    cards_.back().frame->deleteLater();
    cards_.pop_back();
  }
  while (cards_.size() < count) cards_.push_back(makeCard(cards_.size()));
}

WeldCards::Card WeldCards::makeCard(std::size_t entry) {
  Card card;
  card.frame = new QFrame(this);
  card.frame->setFrameShape(QFrame::StyledPanel);
  card.form = new KeyForm(job_keys(kWeld), 1, card.frame);
  card.composition = new KeyForm(job_keys(kComposition), kElementsInARow, card.frame);
  card.problem = new ProblemLabel(card.frame);
  auto* remove = new QPushButton(tr("Remove"), card.frame);
  remove->setAccessibleName(tr("Remove weld %1").arg(entry + 1));
  auto* head = new QHBoxLayout;
  head->addWidget(new QLabel(tr("Weld %1").arg(entry + 1), card.frame), 1);
  head->addWidget(remove);
  auto* inner = new QVBoxLayout(card.frame);
  inner->addLayout(head);
  inner->addWidget(card.problem);
  inner->addWidget(card.form);
  inner->addWidget(new QLabel(tr("Composition of its steel, in place of the job's"), card.frame));
  inner->addWidget(card.composition);
  connect(remove, &QPushButton::clicked, this,
          [this, entry] { take(without_toml_entry(now_, kWeld, entry, name_)); });
  connect(card.form, &KeyForm::changed, this,
          [this, entry](const std::string& key, const std::optional<std::string>& value) {
            take(with_toml_key(now_, {kWeld, entry}, key, value, name_));
          });
  connect(card.composition, &KeyForm::changed, this,
          [this, entry](const std::string& element, const std::optional<std::string>& value) {
            setElement(entry, element, value);
          });
  column_->insertWidget(static_cast<int>(entry), card.frame);
  return card;
}

void WeldCards::setElement(std::size_t entry, const std::string& element,
                           const std::optional<std::string>& value) {
  std::vector<TomlShownKey> elements = cards_[entry].elements;
  const auto known = std::find_if(elements.begin(), elements.end(),
                                  [&](const TomlShownKey& key) { return key.key == element; });
  if (known != elements.end() && value)
    known->value = *value;
  else if (known != elements.end())
    elements.erase(known);
  else if (value)
    elements.push_back({element, *value});
  take(with_toml_key(now_, {kWeld, entry}, kComposition, in_line(elements), name_));
}

void WeldCards::take(const Result<std::string>& text) {
  if (text && text.value() != now_) emit changed(text.value());
}

}  // namespace soakwright::gui
