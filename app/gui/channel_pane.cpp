// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/channel_pane.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTreeView>
#include <QVBoxLayout>
#include <utility>

#include "app/gui/reading_text.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {

ChannelPane::ChannelPane(QWidget* parent)
    : QWidget(parent),
      model_(new ChannelListModel(this)),
      list_(new QTreeView(this)),
      moment_(new QLabel(this)),
      hottest_(new QLabel(this)),
      coldest_(new QLabel(this)),
      all_(new QPushButton(tr("Show all"), this)),
      none_(new QPushButton(tr("Hide all"), this)) {
  list_->setModel(model_);
  list_->setAccessibleName(tr("Channels"));
  list_->setToolTip(tr("Space shows or hides a channel; choosing one picks out its trace."));
  list_->setRootIsDecorated(false);
  list_->setUniformRowHeights(true);
  list_->setAllColumnsShowFocus(true);
  list_->setTabKeyNavigation(false);
  list_->setIconSize(QSize(26, 12));
  list_->setFrameShape(QFrame::NoFrame);
  list_->header()->setStretchLastSection(false);
  list_->header()->setSectionResizeMode(0, QHeaderView::Stretch);
  list_->header()->setSectionResizeMode(1, QHeaderView::ResizeToContents);
  all_->setToolTip(tr("Show every channel on the chart"));
  none_->setToolTip(tr("Hide every channel"));
  for (QLabel* label : {moment_, hottest_, coldest_}) label->setTextFormat(Qt::PlainText);
  moment_->setAccessibleName(tr("Time at the pointer"));
  hottest_->setAccessibleName(tr("Hottest evaluated channel at the pointer"));
  coldest_->setAccessibleName(tr("Coldest evaluated channel at the pointer"));

  auto* reading = new QFormLayout;
  reading->setContentsMargins(8, 6, 8, 6);
  reading->setVerticalSpacing(2);
  reading->setHorizontalSpacing(12);
  reading->addRow(tr("At"), moment_);
  reading->addRow(tr("Hottest"), hottest_);
  reading->addRow(tr("Coldest"), coldest_);
  auto* buttons = new QHBoxLayout;
  buttons->setContentsMargins(6, 4, 6, 6);
  buttons->addWidget(all_);
  buttons->addWidget(none_);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addLayout(reading);
  layout->addWidget(list_, 1);
  layout->addLayout(buttons);

  connect(model_, &ChannelListModel::visibleWanted, this, &ChannelPane::visibleWanted);
  connect(all_, &QPushButton::clicked, this, [this] { emit allWanted(true); });
  connect(none_, &QPushButton::clicked, this, [this] { emit allWanted(false); });
  connect(list_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          [this](const QModelIndex& now) {
            if (!marking_ && now.isValid()) emit traceChosen(static_cast<std::size_t>(now.row()));
          });
  setReading(std::nullopt);
}

void ChannelPane::setReport(std::shared_ptr<const Report> report) {
  marking_ = true;
  report_ = std::move(report);
  model_->setReport(report_);
  setReading(std::nullopt);
  marking_ = false;
}

void ChannelPane::setReading(std::optional<PointerReading> reading) {
  const auto said = [&](const std::optional<std::size_t>& channel) {
    if (!reading || !channel) return QStringLiteral("–");
    return QStringLiteral("%1  %2").arg(temperature_text(reading->celsius[*channel], report_->unit),
                                        pdf::shown_text(report_->chart.record->channels[*channel].name));
  };
  moment_->setText(reading ? reading->moment : QStringLiteral("–"));
  hottest_->setText(said(reading ? reading->hottest : std::nullopt));
  coldest_->setText(said(reading ? reading->coldest : std::nullopt));
  model_->setReading(std::move(reading));
}

QString ChannelPane::readingText() const {
  return QStringLiteral("%1 | %2 | %3").arg(moment_->text(), hottest_->text(), coldest_->text());
}

void ChannelPane::markTrace(std::optional<std::size_t> trace) {
  marking_ = true;
  if (trace)
    list_->setCurrentIndex(model_->index(static_cast<int>(*trace), 0));
  else
    list_->selectionModel()->clear();
  marking_ = false;
}

}  // namespace soakwright::gui
