// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/channel_pane.h"

#include <QFocusEvent>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QPushButton>
#include <QTreeView>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/gui/parts/table_copy.h"
#include "app/gui/texts/reading_text.h"
#include "app/pdf/shown_text.h"
#include "core/units/printed_quantity.h"

namespace soakwright::gui {
namespace {

constexpr int kSwatchAndBox = 70;
constexpr int kLettersOfName = 6;

}  // namespace

ChannelPane::ChannelPane(QWidget* parent)
    : QWidget(parent),
      model_(new ChannelListModel(this)),
      list_(new QTreeView(this)),
      moment_(new QLabel(this)),
      hottest_(new QLabel(this)),
      coldest_(new QLabel(this)),
      spread_(new QLabel(this)),
      all_(new QPushButton(tr("Show all"), this)),
      none_(new QPushButton(tr("Hide all"), this)),
      more_(new QPushButton(tr("More…"), this)) {
  list_->setModel(model_);
  list_->setAccessibleName(tr("Channels"));
  list_->setToolTip(tr("Space shows or hides a channel; choosing channels brings their traces forward."));
  list_->setRootIsDecorated(false);
  list_->setUniformRowHeights(true);
  list_->setAllColumnsShowFocus(true);
  list_->setTabKeyNavigation(false);
  list_->setSelectionMode(QAbstractItemView::ExtendedSelection);
  list_->setIconSize(QSize(26, 12));
  list_->setFrameShape(QFrame::NoFrame);
  list_->header()->setStretchLastSection(false);
  fitColumns();
  all_->setToolTip(tr("Show every channel on the chart"));
  none_->setToolTip(tr("Hide every channel"));
  more_->setToolTip(tr("Show only some channels: the chosen ones, a weld's, those that are evaluated"));
  for (QLabel* label : {moment_, hottest_, coldest_, spread_}) {
    label->setTextFormat(Qt::PlainText);
    // The pane must not move under the pointer when a longer name is read.
    label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  }
  moment_->setAccessibleName(tr("Time at the pointer"));
  spread_->setAccessibleName(tr("Spread between evaluated channels at the pointer"));
  hottest_->setAccessibleName(tr("Hottest evaluated channel at the pointer"));
  coldest_->setAccessibleName(tr("Coldest evaluated channel at the pointer"));

  auto* reading = new QFormLayout;
  reading->setContentsMargins(8, 6, 8, 6);
  reading->setVerticalSpacing(2);
  reading->setHorizontalSpacing(12);
  reading->addRow(tr("At"), moment_);
  reading->addRow(tr("Hottest"), hottest_);
  reading->addRow(tr("Coldest"), coldest_);
  reading->addRow(tr("Spread"), spread_);
  auto* buttons = new QHBoxLayout;
  buttons->setContentsMargins(6, 4, 6, 6);
  buttons->addWidget(all_);
  buttons->addWidget(none_);
  buttons->addWidget(more_);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addLayout(reading);
  layout->addWidget(list_, 1);
  layout->addLayout(buttons);

  connect(model_, &ChannelListModel::visibleWanted, this, &ChannelPane::visibleWanted);
  list_->setContextMenuPolicy(Qt::CustomContextMenu);
  connect(list_, &QTreeView::customContextMenuRequested, this, [this](const QPoint& at) {
    const QModelIndex row = list_->indexAt(at);
    if (row.isValid())
      emit menuWanted(static_cast<std::size_t>(row.row()), list_->viewport()->mapToGlobal(at));
  });
  list_->viewport()->installEventFilter(this);
  list_->installEventFilter(this);
  connect(all_, &QPushButton::clicked, this, [this] { emit allWanted(true); });
  connect(none_, &QPushButton::clicked, this, [this] { emit allWanted(false); });
  connect(more_, &QPushButton::clicked, this,
          [this] { emit groupsWanted(more_->mapToGlobal(QPoint(0, more_->height()))); });
  connect(list_->selectionModel(), &QItemSelectionModel::selectionChanged, this, [this] {
    if (marking_) return;
    telling_ = true;
    emit tracesChosen(chosen());
    telling_ = false;
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
  const bool both = reading && reading->hottest && reading->coldest && reading->hottest != reading->coldest;
  spread_->setText(both ? QString::fromStdString(printed(reading->spread, {report_->unit}))
                        : QStringLiteral("–"));
  model_->setReading(std::move(reading));
}

QString ChannelPane::readingText() const {
  return QStringLiteral("%1 | %2 | %3").arg(moment_->text(), hottest_->text(), coldest_->text());
}

/// Coming in by keyboard picks nothing out; a click beside the rows and Escape let go.
bool ChannelPane::eventFilter(QObject* watched, QEvent* event) {
  if (watched == list_ && event->type() == QEvent::FocusIn) {
    const auto reason = static_cast<QFocusEvent*>(event)->reason();
    if (reason != Qt::MouseFocusReason && !list_->currentIndex().isValid()) {
      marking_ = true;
      // The list makes its first row current once it has the focus.
      QMetaObject::invokeMethod(
          this, [this] { marking_ = false; }, Qt::QueuedConnection);
    }
  }
  if (watched == list_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->matches(QKeySequence::Copy)) {
    copy_chosen_rows(*model_, list_->selectionModel()->selectedRows());
    return true;
  }
  if (watched == list_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape && list_->currentIndex().isValid()) {
    emit tracesChosen({});
    return true;
  }
  if (watched == list_->viewport() && event->type() == QEvent::MouseButtonPress &&
      !list_->indexAt(static_cast<QMouseEvent*>(event)->pos()).isValid())
    emit tracesChosen({});
  return QWidget::eventFilter(watched, event);
}

void ChannelPane::setFigures(const ChannelListModel::Figures& figures) {
  marking_ = true;
  const std::vector<std::size_t> kept = chosen();
  model_->setFigures(figures);
  fitColumns();
  markTraces(kept);
}

void ChannelPane::fitColumns() {
  list_->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
  list_->header()->setSectionResizeMode(0, QHeaderView::Stretch);
  // With more figures than the temperature the names would have no room left.
  int width = 0;
  if (model_->columnCount() > 2) {
    width = kSwatchAndBox + kLettersOfName * fontMetrics().averageCharWidth();
    for (int column = 1; column < model_->columnCount(); ++column)
      width += std::max(list_->header()->sectionSizeHint(column),
                        fontMetrics().horizontalAdvance(QStringLiteral("  1000.0 °C")));
  }
  list_->setMinimumWidth(width);
}

std::vector<std::size_t> ChannelPane::chosen() const {
  std::vector<std::size_t> traces;
  for (const QModelIndex& row : list_->selectionModel()->selectedRows())
    traces.push_back(static_cast<std::size_t>(row.row()));
  std::sort(traces.begin(), traces.end());
  return traces;
}

void ChannelPane::markTraces(const std::vector<std::size_t>& traces) {
  // Just chosen here.
  if (telling_ && traces == chosen()) return;
  marking_ = true;
  list_->selectionModel()->clear();
  for (const std::size_t trace : traces)
    list_->selectionModel()->setCurrentIndex(model_->index(static_cast<int>(trace), 0),
                                             QItemSelectionModel::Select | QItemSelectionModel::Rows);
  marking_ = false;
}

}  // namespace soakwright::gui
