// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/forms/stage_card.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/gui/panes/forms/problem_label.h"
#include "app/gui/panes/forms/procedure_keys.h"

namespace soakwright::gui {
namespace {

constexpr int kFieldsInARow = 2;

QString name_of(const std::string& kind) {
  for (const auto& [word, name] : stage_kinds())
    if (word == kind) return name;
  return StageCard::tr("kind not known");
}

QToolButton* button(const QString& text, const QString& name, QWidget* parent) {
  auto* made = new QToolButton(parent);
  made->setText(text);
  made->setAccessibleName(name);
  made->setToolTip(name);
  made->setFocusPolicy(Qt::StrongFocus);
  return made;
}

}  // namespace

StageCard::StageCard(std::size_t entry, const std::string& kind, QWidget* parent)
    : QFrame(parent),
      entry_(entry),
      kind_(kind),
      problem_(new ProblemLabel(this)),
      up_(button(tr("Up"), tr("Move stage %1 up").arg(entry + 1), this)),
      down_(button(tr("Down"), tr("Move stage %1 down").arg(entry + 1), this)),
      form_(new KeyForm(stage_keys(kind), kFieldsInARow, this)) {
  setFrameShape(QFrame::StyledPanel);
  const QString title = tr("Stage %1: %2").arg(entry + 1).arg(name_of(kind));
  setAccessibleName(title);
  auto* name = new QLabel(title, this);
  QFont bold = name->font();
  bold.setBold(true);
  name->setFont(bold);
  auto* remove = button(tr("Remove"), tr("Remove stage %1").arg(entry + 1), this);
  auto* head = new QHBoxLayout;
  head->addWidget(name, 1);
  for (QToolButton* one : {up_, down_, remove}) head->addWidget(one);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(8, 4, 8, 6);
  layout->setSpacing(4);
  layout->addLayout(head);
  layout->addWidget(problem_);
  layout->addWidget(form_);
  connect(up_, &QToolButton::clicked, this, [this] { emit moveWanted(false); });
  connect(down_, &QToolButton::clicked, this, [this] { emit moveWanted(true); });
  connect(remove, &QToolButton::clicked, this, &StageCard::removeWanted);
}

void StageCard::show(const TomlShownTable& table, const QString& degree, bool last) {
  up_->setEnabled(entry_ > 0);
  down_->setEnabled(!last);
  form_->show(&table, degree);
}

void StageCard::say(const std::map<std::string, QString>& problems, const QString& whole) {
  form_->say(problems);
  problem_->say(whole);
}

QString StageCard::problem() const { return problem_->said(); }

}  // namespace soakwright::gui
