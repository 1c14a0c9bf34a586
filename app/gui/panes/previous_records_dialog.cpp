// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/previous_records_dialog.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSplitter>
#include <QTabWidget>
#include <QVBoxLayout>

#include "app/gui/chart/chart_colours.h"
#include "app/gui/chart/chart_pane.h"
#include "app/gui/chart/trace_set.h"
#include "app/gui/panes/detail_panel.h"
#include "app/gui/panes/list_contents.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/parts/choice_box.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {

PreviousRecordsDialog::PreviousRecordsDialog(QWidget* parent)
    : QDialog(parent),
      choice_(new ChoiceBox(this)),
      verdict_(new QLabel(this)),
      chart_(new ChartPane(this)),
      requirements_(new ListPane(tr("Requirements of the previous record"), this)),
      findings_(new ListPane(tr("Findings of the previous record"), this)),
      suspects_(new ListPane(tr("Suspect thermocouples of the previous record"), this)),
      notices_(new ListPane(tr("File warnings of the previous record"), this)),
      card_(new DetailPanel(this)) {
  setWindowTitle(tr("Previous records"));
  choice_->setAccessibleName(tr("Previous record"));
  verdict_->setAccessibleName(tr("Verdict on the previous record by itself"));
  verdict_->setTextFormat(Qt::PlainText);
  verdict_->setWordWrap(true);
  auto* lists = new QTabWidget(this);
  lists->setDocumentMode(true);
  lists->addTab(requirements_, tr("Requirements"));
  lists->addTab(findings_, tr("Findings"));
  lists->addTab(suspects_, tr("Suspect thermocouples"));
  lists->addTab(notices_, tr("File warnings"));
  auto* below = new QSplitter(Qt::Horizontal, this);
  below->addWidget(lists);
  below->addWidget(card_);
  below->setStretchFactor(0, 3);
  below->setStretchFactor(1, 2);
  auto* halves = new QSplitter(Qt::Vertical, this);
  halves->addWidget(chart_);
  halves->addWidget(below);
  halves->setStretchFactor(0, 3);
  halves->setStretchFactor(1, 2);
  halves->setChildrenCollapsible(false);
  auto* done = new QPushButton(tr("&Close"), this);
  connect(done, &QPushButton::clicked, this, &QDialog::close);
  auto* top = new QHBoxLayout;
  top->addWidget(choice_);
  top->addWidget(verdict_, 1);
  top->addWidget(done);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(top);
  layout->addWidget(halves, 1);
  resize(980, 660);
  connect(choice_, &QComboBox::currentIndexChanged, this, &PreviousRecordsDialog::showRecord);
  connect(requirements_, &ListPane::chosen, this, [this](std::size_t index) {
    const Report& record = *report_->previous_records[static_cast<std::size_t>(choice_->currentIndex())];
    chart_->showEvidence(&record.requirements[index].evidence);
  });
}

void PreviousRecordsDialog::setCase(const OpenCase& open) {
  report_ = open.report;
  traces_ = open.previous_traces;
  const int before = choice_->currentIndex();
  {
    const QSignalBlocker quiet(choice_);
    choice_->clear();
    for (const auto& record : report_->previous_records) choice_->addItem(pdf::shown_text(record->subject));
    choice_->setCurrentIndex(before >= 0 && before < choice_->count() ? before : 0);
  }
  choice_->setEnabled(choice_->count() > 1);
  showRecord(choice_->currentIndex());
}

void PreviousRecordsDialog::showRecord(int index) {
  const std::shared_ptr<const Report>& record = report_->previous_records[static_cast<std::size_t>(index)];
  verdict_->setText(tr("By itself: %1").arg(pdf::shown_text(record->verdict_sentence)));
  chart_->show(record, nullptr, traces_[static_cast<std::size_t>(index)], false);
  requirements_->setContent(requirement_lines(record.get()));
  findings_->setContent(finding_lines(record.get()));
  suspects_->setContent(suspect_lines(record.get()));
  notices_->setContent(notice_lines(record.get()));
  card_->show(record, {});
  colour();
}

void PreviousRecordsDialog::colour() {
  const ChartColours colours = ChartColours::of(palette());
  for (ListPane* list : {requirements_, findings_, suspects_, notices_}) list->setColours(colours);
  card_->setColours(colours);
}

void PreviousRecordsDialog::changeEvent(QEvent* event) {
  QDialog::changeEvent(event);
  if (event->type() == QEvent::PaletteChange && report_) colour();
}

}  // namespace soakwright::gui
