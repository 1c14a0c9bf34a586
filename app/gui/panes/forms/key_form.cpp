// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/forms/key_form.h"

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>

#include "app/gui/parts/choice_box.h"
#include "app/gui/parts/plain_tip.h"
#include "app/gui/verdict_sign.h"
#include "core/procedure/toml/toml_edit.h"

namespace soakwright::gui {
namespace {

constexpr int kColumnsOfAField = 3;  ///< name, field, unit
constexpr int kShortestField_characters = 9;

}  // namespace

KeyForm::KeyForm(std::vector<FormKey> keys, int columns, QWidget* parent)
    : QWidget(parent), keys_(std::move(keys)) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(6);
  grid->setVerticalSpacing(3);
  int place = 0;
  for (const FormKey& key : keys_) {
    add(grid, key, 2 * (place / columns), kColumnsOfAField * (place % columns));
    ++place;
  }
  for (int column = 0; column < columns; ++column) grid->setColumnStretch(kColumnsOfAField * column + 1, 1);
}

void KeyForm::add(QGridLayout* grid, const FormKey& key, int row, int column) {
  Field field;
  QWidget* widget = nullptr;
  if (key.kind == FormKey::Kind::choice) {
    widget = field.box = new ChoiceBox(this);
    field.box->addItem(tr("not given"), QString());
    for (const auto& [words, value] : key.choices) field.box->addItem(words, value);
    connect(field.box, &QComboBox::activated, this, [this, key] { finish(key); });
  } else {
    widget = field.line = new QLineEdit(this);
    field.line->setMinimumWidth(kShortestField_characters * field.line->fontMetrics().averageCharWidth());
    connect(field.line, &QLineEdit::editingFinished, this, [this, key] { finish(key); });
  }
  widget->setAccessibleName(key.name);
  widget->setObjectName(QString::fromStdString(key.key));
  const QString tip = QStringLiteral("`%1`").arg(QString::fromStdString(key.key));
  widget->setToolTip(plain_tip(key.tip.isEmpty() ? tip : tip + QStringLiteral(": ") + key.tip));
  auto* label = new QLabel(key.name, this);
  label->setBuddy(widget);
  field.unit = new QLabel(this);
  field.problem = new QLabel(this);
  field.problem->setTextFormat(Qt::PlainText);
  field.problem->setWordWrap(true);
  field.problem->hide();
  grid->addWidget(label, row, column);
  grid->addWidget(widget, row, column + 1);
  grid->addWidget(field.unit, row, column + 2);
  grid->addWidget(field.problem, row + 1, column + 1, 1, 2);
  fields_[key.key] = field;
}

void KeyForm::finish(const FormKey& key) {
  Field& field = fields_.at(key.key);
  const QString typed =
      field.box ? field.box->currentData().toString() : QString(field.line->text()).trimmed();
  if (typed == field.shown) return;
  field.shown = typed;
  if (field.line) field.line->setModified(false);
  std::optional<std::string> value;
  if (!typed.isEmpty())
    value = key.kind == FormKey::Kind::value ? toml_as_typed(typed.toStdString())
                                             : toml_words(typed.toStdString());
  emit changed(key.key, value);
}

void KeyForm::show(const TomlShownTable* table, const QString& degree) {
  for (const FormKey& key : keys_) {
    Field& field = fields_.at(key.key);
    const TomlShownKey* const said = table ? table->find(key.key) : nullptr;
    field.unit->setText(key.unit.contains(u"%1") ? key.unit.arg(degree) : key.unit);
    field.shown = said ? QString::fromStdString(said->value) : QString();
    if (field.box) {
      int place = field.box->findData(field.shown);
      // A word that is not known stays, and is refused with the words that there are.
      if (place < 0) {
        field.box->addItem(field.shown, field.shown);
        place = field.box->count() - 1;
      }
      field.box->setCurrentIndex(place);
      continue;
    }
    field.line->setEnabled(!(said && said->spread));
    field.line->setPlaceholderText(said && said->spread ? tr("a table of its own: see the text") : QString());
    // What is being typed is not taken away by a change elsewhere.
    if (field.line->hasFocus() && field.line->isModified()) continue;
    if (field.line->text() != field.shown) field.line->setText(field.shown);
  }
}

void KeyForm::say(const std::map<std::string, QString>& problems) {
  const QColor red = colour_of(Sign::not_met, ChartColours::of(palette()));
  for (auto& [key, field] : fields_) {
    const auto found = problems.find(key);
    const bool wrong = found != problems.end();
    field.problem->setText(wrong ? found->second : QString());
    field.problem->setVisible(wrong);
    QPalette ink = field.problem->palette();
    ink.setColor(QPalette::WindowText, red);
    field.problem->setPalette(ink);
    QWidget* widget = field.box ? static_cast<QWidget*>(field.box) : field.line;
    widget->setAccessibleDescription(wrong ? found->second : QString());
  }
}

QString KeyForm::problemOf(const std::string& key) const {
  const auto found = fields_.find(key);
  return found == fields_.end() || found->second.problem->isHidden() ? QString()
                                                                     : found->second.problem->text();
}

}  // namespace soakwright::gui
