// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/source_text.h"

#include <QFontDatabase>
#include <QHBoxLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/gui/verdict_sign.h"

namespace soakwright::gui {
namespace {

const QString kTwo = QStringLiteral("\r\n");
const QString kOne = QStringLiteral("\n");

}  // namespace

SourceText::SourceText(const QString& name, const QString& problems_name, const QString& apply_tip,
                       QWidget* parent)
    : QWidget(parent),
      problems_(new QLabel(this)),
      text_(new QPlainTextEdit(this)),
      apply_(new QPushButton(tr("A&pply text"), this)),
      revert_(new QPushButton(tr("Re&vert text"), this)) {
  text_->setAccessibleName(name);
  text_->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
  text_->setLineWrapMode(QPlainTextEdit::NoWrap);
  text_->setTabChangesFocus(true);
  problems_->setTextFormat(Qt::PlainText);
  problems_->setWordWrap(true);
  problems_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  problems_->setAccessibleName(problems_name);
  problems_->hide();
  apply_->setToolTip(apply_tip);
  revert_->setToolTip(tr("Take back what was typed and not applied"));
  auto* buttons = new QHBoxLayout;
  buttons->addStretch(1);
  buttons->addWidget(revert_);
  buttons->addWidget(apply_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(8, 4, 8, 4);
  column->addWidget(problems_);
  column->addWidget(text_, 1);
  column->addLayout(buttons);
  connect(apply_, &QPushButton::clicked, this, &SourceText::apply);
  connect(revert_, &QPushButton::clicked, this, [this] { text_->setPlainText(shown_); });
  const auto enable = [this] {
    apply_->setEnabled(typed());
    revert_->setEnabled(typed());
  };
  connect(text_, &QPlainTextEdit::textChanged, this, enable);
  enable();
}

bool SourceText::typed() const { return text_->toPlainText() != shown_; }

QString SourceText::problems() const { return problems_->isHidden() ? QString() : problems_->text(); }

void SourceText::show(const std::string& text, bool editable) {
  QString plain = QString::fromStdString(text);
  crlf_ = plain.contains(kTwo);
  plain.replace(kTwo, kOne);
  const bool being_typed = typed() && text_->hasFocus();
  text_->setReadOnly(!editable);
  if (plain == shown_) return;
  shown_ = plain;
  // A change elsewhere does not take away what is being typed here.
  if (!being_typed) text_->setPlainText(plain);
}

void SourceText::say(const QStringList& problems) {
  problems_->setText(problems.join(u'\n'));
  problems_->setVisible(!problems.isEmpty());
  QPalette ink = problems_->palette();
  ink.setColor(QPalette::WindowText, colour_of(Sign::not_met, ChartColours::of(palette())));
  problems_->setPalette(ink);
}

void SourceText::apply() {
  QString text = text_->toPlainText();
  if (crlf_) text.replace(kOne, kTwo);
  emit applied(text.toStdString());
}

}  // namespace soakwright::gui
