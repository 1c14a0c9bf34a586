// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/message_strip.h"

#include <QAccessible>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStyle>

#include "app/gui/chart/chart_colours.h"
#include "app/gui/parts/plain_tip.h"

namespace soakwright::gui {
namespace {

constexpr int kSignSize = 18;

}  // namespace

MessageStrip::MessageStrip(const QString& name, const QStringList& buttons, QWidget* parent)
    : QFrame(parent), sign_(new QLabel(this)), words_(new QLabel(this)) {
  setAccessibleName(name);
  setFrameShape(QFrame::StyledPanel);
  setAutoFillBackground(true);
  words_->setTextFormat(Qt::PlainText);
  words_->setAccessibleName(name);
  words_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  setSign(style()->standardIcon(QStyle::SP_MessageBoxWarning));
  auto* layout = new QHBoxLayout(this);
  layout->setContentsMargins(12, 3, 8, 3);
  layout->addWidget(sign_);
  layout->addWidget(words_, 1);
  for (const QString& text : buttons) {
    auto* button = new QPushButton(text, this);
    const std::size_t index = buttons_.size();
    connect(button, &QPushButton::clicked, this, [this, index] { emit pressed(index); });
    layout->addWidget(button);
    buttons_.push_back(button);
  }
  colour();
  hide();
}

void MessageStrip::say(const QString& text, const QString& tip) {
  const bool news = text != text_ && !text.isEmpty();
  text_ = text;
  words_->setToolTip(plain_tip(tip.isEmpty() ? text : tip));
  setVisible(!text.isEmpty());
  fit();
  if (!news) return;
  words_->setAccessibleDescription(text);
  QAccessibleEvent alert(this, QAccessible::Alert);
  QAccessible::updateAccessibility(&alert);
}

void MessageStrip::setSign(const QIcon& sign) {
  sign_->setPixmap(sign.pixmap(QSize(kSignSize, kSignSize), devicePixelRatioF()));
}

QString MessageStrip::text() const { return isHidden() ? QString() : text_; }

/// The window must not grow with a long text.
void MessageStrip::fit() {
  words_->setText(words_->fontMetrics().elidedText(text_, Qt::ElideRight, words_->width()));
}

void MessageStrip::resizeEvent(QResizeEvent* event) {
  QFrame::resizeEvent(event);
  fit();
}

void MessageStrip::changeEvent(QEvent* event) {
  QFrame::changeEvent(event);
  if (event->type() == QEvent::PaletteChange && !colouring_) colour();
}

void MessageStrip::colour() {
  colouring_ = true;
  const QPalette base = parentWidget() ? parentWidget()->palette() : palette();
  QPalette own = base;
  const ChartColours colours = ChartColours::of(base);
  own.setColor(QPalette::Window, mixed(colours.inconclusive, colours.background, colours.dark ? 0.30 : 0.22));
  own.setColor(QPalette::WindowText, colours.ink);
  setPalette(own);
  colouring_ = false;
}

}  // namespace soakwright::gui
