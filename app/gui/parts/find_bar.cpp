// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/find_bar.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

namespace soakwright::gui {

FindBar::FindBar(QWidget* parent) : QFrame(parent), line_(new QLineEdit(this)), said_(new QLabel(this)) {
  setAccessibleName(tr("Find in the list"));
  line_->setAccessibleName(tr("Text to find in the list"));
  line_->setPlaceholderText(tr("Find in this list"));
  line_->setClearButtonEnabled(true);
  said_->setTextFormat(Qt::PlainText);
  auto* previous = new QPushButton(tr("Pre&vious"), this);
  auto* next = new QPushButton(tr("Ne&xt"), this);
  auto* close = new QPushButton(tr("Close"), this);
  previous->setToolTip(tr("Find the line before (Shift+Enter)"));
  next->setToolTip(tr("Find the next line (Enter)"));
  close->setToolTip(tr("Close (Escape)"));
  auto* layout = new QHBoxLayout(this);
  layout->setContentsMargins(6, 2, 6, 2);
  layout->addWidget(line_, 1);
  for (QPushButton* button : {previous, next}) layout->addWidget(button);
  layout->addWidget(said_);
  layout->addWidget(close);
  connect(line_, &QLineEdit::textChanged, this, [this](const QString& text) { emit wanted(text, 0); });
  connect(previous, &QPushButton::clicked, this, [this] { emit wanted(line_->text(), -1); });
  connect(next, &QPushButton::clicked, this, [this] { emit wanted(line_->text(), 1); });
  connect(close, &QPushButton::clicked, this, &FindBar::closed);
  hide();
}

void FindBar::start() {
  show();
  line_->selectAll();
  line_->setFocus(Qt::ShortcutFocusReason);
}

void FindBar::sayFound(bool found) {
  said_->setText(found || line_->text().isEmpty() ? QString() : tr("Not in this list"));
}

QString FindBar::said() const { return said_->text(); }

void FindBar::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return emit closed();
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
    return emit wanted(line_->text(), event->modifiers().testFlag(Qt::ShiftModifier) ? -1 : 1);
  QFrame::keyPressEvent(event);
}

}  // namespace soakwright::gui
