// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/summary_bar.h"

#include <QAccessible>
#include <QFileInfo>
#include <QGridLayout>
#include <QLabel>

#include "app/gui/parts/plain_tip.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr int kVerdictSignSize = 34;

/// What the verdict is about: work, welds, log, procedure.
QString subject_of(const OpenCase& open) {
  QStringList parts;
  if (open.analysis.job && open.analysis.job->work) parts.append(pdf::shown_text(*open.analysis.job->work));
  if (open.analysis.job && open.analysis.job->weld) parts.append(pdf::shown_text(*open.analysis.job->weld));
  if (!open.log_path.isEmpty()) parts.append(QFileInfo(open.log_path).fileName());
  if (open.analysis.procedure) {
    QString procedure = pdf::shown_text(open.analysis.procedure->number);
    if (open.analysis.procedure->revision)
      procedure += SummaryBar::tr(" rev. %1").arg(pdf::shown_text(*open.analysis.procedure->revision));
    parts.append(procedure);
  }
  return parts.join(QStringLiteral("  ·  "));
}

}  // namespace

SummaryBar::SummaryBar(QWidget* parent)
    : QWidget(parent),
      sign_(new QLabel(this)),
      word_(new QLabel(this)),
      sentence_(new QLabel(this)),
      subject_(new QLabel(this)),
      caution_(new QLabel(this)) {
  setAccessibleName(tr("Verdict"));
  sign_->setFixedSize(kVerdictSignSize, kVerdictSignSize);
  QFont big = font();
  big.setPointSizeF(big.pointSizeF() * 1.55);
  big.setBold(true);
  word_->setFont(big);
  word_->setAccessibleName(tr("Verdict in one word"));
  for (QLabel* label : {word_, sentence_, subject_}) label->setTextFormat(Qt::PlainText);
  sentence_->setWordWrap(true);
  sentence_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  sentence_->setAccessibleName(tr("Verdict in a sentence"));
  subject_->setAccessibleName(tr("What the verdict is about"));
  // Neither a long sentence nor long names may make the window wider.
  sentence_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  subject_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  subject_->setAlignment(Qt::AlignRight | Qt::AlignTop);
  subject_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  QFont small = font();
  small.setPointSizeF(small.pointSizeF() * 0.9);
  caution_->setFont(small);
  caution_->setAccessibleName(tr("Caution"));
  caution_->setTextFormat(Qt::RichText);
  caution_->setTextInteractionFlags(Qt::LinksAccessibleByMouse | Qt::LinksAccessibleByKeyboard);
  connect(caution_, &QLabel::linkActivated, this, &SummaryBar::cautionsWanted);

  auto* layout = new QGridLayout(this);
  layout->setContentsMargins(12, 7, 12, 7);
  layout->setHorizontalSpacing(10);
  layout->setVerticalSpacing(1);
  layout->addWidget(sign_, 0, 0, 2, 1, Qt::AlignVCenter);
  layout->addWidget(word_, 0, 1, 2, 1, Qt::AlignVCenter);
  layout->addWidget(sentence_, 0, 2);
  layout->addWidget(subject_, 0, 3);
  layout->addWidget(caution_, 1, 2, 1, 2);
  layout->setColumnStretch(2, 3);
  layout->setColumnStretch(3, 2);
}

void SummaryBar::show(const OpenCase& open, const State& state) {
  const QString before = word();
  const Report* report = open.report.get();
  verdict_.reset();
  if (report && report->verdict) {
    verdict_ = sign_of(*report->verdict);
    word_->setText(pdf::shown_text(report->verdict_text));
    sentence_->setText(pdf::shown_text(report->verdict_sentence));
  } else if (report) {
    word_->setText(tr("No verdict"));
    sentence_->setText(tr("Not evaluated yet: open a procedure (Ctrl+Shift+O).") +
                       pdf::shown_text(report->verdict_sentence).section(u'.', 1));
  } else if (open.analysis.procedure) {
    word_->setText(tr("No record"));
    sentence_->setText(tr("The procedure is open. Open the log to evaluate (Ctrl+O)."));
  } else {
    word_->setText(state.refused ? tr("Log not readable") : QString());
    sentence_->setText(QString());
  }
  if (open.read_only()) {
    QString source = read_only_words(open);
    source[0] = source[0].toUpper();
    sentence_->setText(QStringLiteral("%1 %2.").arg(sentence_->text(), source).trimmed());
  }
  QStringList doubts;
  if (state.out_of_date) doubts.append(tr("out of date"));
  if (state.unsaved) doubts.append(tr("not saved"));
  if (report && !doubts.isEmpty())
    word_->setText(tr("%1 (%2)").arg(word_->text(), doubts.join(QStringLiteral(", "))));
  subject_text_ = subject_of(open);
  subject_->setToolTip(plain_tip(subject_text_));
  fitSubject();
  if (word() != before) {
    word_->setAccessibleDescription(sentence_->text());
    QAccessibleEvent news(word_, QAccessible::NameChanged);
    QAccessible::updateAccessibility(&news);
    QAccessibleEvent alert(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
  }
  QString caution;
  if (report && !report->cautions.empty()) {
    caution = pdf::shown_text(report->cautions.front()).toHtmlEscaped();
    if (report->cautions.size() > 1)
      caution +=
          tr(" <a href=\"cautions\">All %n cautions</a>", nullptr, static_cast<int>(report->cautions.size()));
  }
  caution_->setText(caution);
  caution_->setVisible(!caution.isEmpty());
  drawSign();
}

void SummaryBar::setColours(const ChartColours& colours) {
  colours_ = colours;
  drawSign();
}

void SummaryBar::drawSign() {
  sign_->setVisible(verdict_.has_value());
  QPalette inked = palette();
  if (verdict_) {
    sign_->setPixmap(sign_icon(*verdict_, colours_, kVerdictSignSize)
                         .pixmap(QSize(kVerdictSignSize, kVerdictSignSize), devicePixelRatioF()));
    inked.setColor(QPalette::WindowText, colour_of(*verdict_, colours_));
  }
  word_->setPalette(inked);
}

void SummaryBar::fitSubject() {
  subject_->setText(subject_->fontMetrics().elidedText(subject_text_, Qt::ElideMiddle, subject_->width()));
}

void SummaryBar::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  layout()->activate();
  fitSubject();
}

QString SummaryBar::sentence() const { return sentence_->text(); }

QString SummaryBar::word() const { return word_->text(); }

QString SummaryBar::cautionText() const { return caution_->text(); }

}  // namespace soakwright::gui
