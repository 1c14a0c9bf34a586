// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/forms/review_form.h"

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "app/gui/parts/choice_box.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {

ReviewForm::ReviewForm(QWidget* parent)
    : QFrame(parent),
      count_(new QLabel(this)),
      decision_(new ChoiceBox(this)),
      reason_(new QLineEdit(this)),
      decide_(new QPushButton(tr("&Decide"), this)) {
  setFrameShape(QFrame::StyledPanel);
  setAccessibleName(tr("Review of the chosen finding"));
  decision_->setAccessibleName(tr("Decision"));
  decision_->addItem(tr("Not decided"));
  decision_->addItem(tr("Accepted"), static_cast<int>(FindingReview::Disposition::accepted));
  decision_->addItem(tr("To be repeated"), static_cast<int>(FindingReview::Disposition::repeat));
  decision_->addItem(tr("Rejected"), static_cast<int>(FindingReview::Disposition::rejected));
  reason_->setAccessibleName(tr("Reason of the decision"));
  reason_->setPlaceholderText(tr("reason, required"));
  count_->setTextFormat(Qt::PlainText);
  count_->setWordWrap(true);
  count_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  auto* layout = new QGridLayout(this);
  layout->setContentsMargins(8, 4, 8, 6);
  // Low, since it takes its height from the chart.
  layout->setVerticalSpacing(3);
  layout->addWidget(count_, 0, 0, 1, 3);
  layout->addWidget(decision_, 1, 0);
  layout->addWidget(reason_, 1, 1);
  layout->addWidget(decide_, 1, 2);
  layout->setColumnStretch(1, 1);
  connect(decision_, &QComboBox::currentIndexChanged, this, &ReviewForm::check);
  connect(reason_, &QLineEdit::textChanged, this, &ReviewForm::check);
  const auto tell = [this] {
    if (!decide_->isEnabled()) return;
    const QVariant chosen = decision_->currentData();
    if (chosen.isValid())
      emit decided(static_cast<FindingReview::Disposition>(chosen.toInt()), reason_->text().trimmed());
    else
      emit decided(std::nullopt, {});
  };
  connect(decide_, &QPushButton::clicked, this, tell);
  connect(reason_, &QLineEdit::returnPressed, this, tell);
  hide();
}

void ReviewForm::show(std::optional<FindingReview> now, const QString& count, const QString& why_not) {
  possible_ = why_not.isEmpty();
  count_->setText(possible_ ? count : why_not);
  const int place = now ? decision_->findData(static_cast<int>(now->disposition)) : 0;
  decision_->setCurrentIndex(place);
  reason_->setText(now ? QString::fromStdString(now->reason) : QString());
  for (QWidget* part : {static_cast<QWidget*>(decision_), static_cast<QWidget*>(reason_)})
    part->setEnabled(possible_);
  check();
  setVisible(true);
}

void ReviewForm::check() {
  const bool decision = decision_->currentData().isValid();
  decide_->setEnabled(possible_ && (!decision || !reason_->text().trimmed().isEmpty()));
}

}  // namespace soakwright::gui
