// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/error_bar.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QStyle>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/gui/parts/plain_tip.h"

namespace soakwright::gui {
namespace {

constexpr int kMostShown = 6;

}  // namespace

ErrorBar::ErrorBar(QWidget* parent)
    : QFrame(parent), title_(new QLabel(this)), words_(new QLabel(this)), away_(new QToolButton(this)) {
  setAccessibleName(tr("Cannot be opened"));
  setFrameShape(QFrame::StyledPanel);
  setAutoFillBackground(true);
  QFont bold = title_->font();
  bold.setBold(true);
  title_->setFont(bold);
  title_->setTextFormat(Qt::PlainText);
  words_->setWordWrap(true);
  words_->setTextFormat(Qt::PlainText);
  words_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  words_->setAccessibleName(tr("What is wrong and what helps"));
  away_->setText(tr("Dismiss"));
  away_->setToolTip(tr("Dismiss this message (Escape)"));
  auto* sign = new QLabel(this);
  sign->setPixmap(style()->standardIcon(QStyle::SP_MessageBoxWarning).pixmap(22, 22));
  auto* text = new QVBoxLayout;
  text->addWidget(title_);
  text->addWidget(words_);
  auto* layout = new QHBoxLayout(this);
  layout->setContentsMargins(12, 6, 8, 6);
  layout->addWidget(sign, 0, Qt::AlignTop);
  layout->addLayout(text, 1);
  layout->addWidget(away_, 0, Qt::AlignTop);
  connect(away_, &QToolButton::clicked, this, &ErrorBar::putAway);
  hide();
}

void ErrorBar::say(const QString& title, const QStringList& texts) {
  texts_ = texts;
  title_->setText(title);
  QStringList shown = texts.mid(0, kMostShown);
  if (texts.size() > kMostShown) shown.append(tr("… and %1 more").arg(texts.size() - kMostShown));
  words_->setText(shown.join(u'\n'));
  words_->setToolTip(plain_tip(texts.size() > kMostShown ? texts.join(u'\n') : QString()));
  show();
  away_->setFocus(Qt::OtherFocusReason);
}

void ErrorBar::putAway() {
  texts_.clear();
  hide();
}

void ErrorBar::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return putAway();
  QFrame::keyPressEvent(event);
}

}  // namespace soakwright::gui
