// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/list_pane.h"

#include <QAction>
#include <QFocusEvent>
#include <QHeaderView>
#include <QPainter>
#include <algorithm>
#include <utility>

#include "app/gui/parts/table_copy.h"

namespace soakwright::gui {
namespace {

constexpr int kWidestColumn = 260;

}  // namespace

ListPane::ListPane(const QString& name, QWidget* parent)
    : QTreeView(parent), model_(new ReportListModel(this)) {
  setAccessibleName(name);
  setModel(model_);
  setRootIsDecorated(false);
  setUniformRowHeights(true);
  setAlternatingRowColors(true);
  setAllColumnsShowFocus(true);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  // Several rows can be chosen to copy them; the last one chosen leads to its place.
  setSelectionMode(QAbstractItemView::ExtendedSelection);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  setTabKeyNavigation(false);
  setFrameShape(QFrame::NoFrame);
  header()->setStretchLastSection(false);
  header()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this](const QModelIndex& now) {
    if (!marking_) tell(now);
  });
  // A line that is current already leads there again: after a pan one wants back.
  connect(this, &QTreeView::clicked, this, &ListPane::tell);
  connect(this, &QTreeView::activated, this, &ListPane::tell);
  const QString key = QKeySequence(QKeySequence::Copy).toString(QKeySequence::NativeText);
  auto* rows = new QAction(tr("Copy &rows\t%1").arg(key), this);
  auto* table = new QAction(tr("Copy &table"), this);
  connect(rows, &QAction::triggered, this,
          [this] { copy_chosen_rows(*model_, selectionModel()->selectedRows()); });
  connect(table, &QAction::triggered, this, [this] { copy_table(*model_); });
  addActions({rows, table});
  setContextMenuPolicy(Qt::ActionsContextMenu);
}

void ListPane::tell(const QModelIndex& line) {
  if (!line.isValid() || model_->content().lines[static_cast<std::size_t>(line.row())].heading) return;
  telling_ = true;
  emit chosen(line.data(ReportListModel::kIndexRole).toULongLong());
  telling_ = false;
}

void ListPane::setContent(ListContent content) {
  marking_ = true;
  const int stretch = content.stretch;
  model_->setContent(std::move(content));
  for (QAction* copy : actions()) copy->setEnabled(model_->rowCount() > 0);
  for (int row = 0; row < model_->rowCount(); ++row)
    if (model_->content().lines[static_cast<std::size_t>(row)].heading) setFirstColumnSpanned(row, {}, true);
  for (int column = 0; column < model_->columnCount(); ++column) {
    setColumnHidden(column, model_->rowCount() > 0 && column != 0 && model_->columnEmpty(column));
    header()->setSectionResizeMode(column, QHeaderView::Interactive);
    resizeColumnToContents(column);
    if (column != stretch) setColumnWidth(column, std::min(columnWidth(column) + 10, kWidestColumn));
  }
  if (stretch >= 0) {
    const int needed = columnWidth(stretch);
    header()->setSectionResizeMode(stretch, QHeaderView::Stretch);
    header()->setMinimumSectionSize(std::min(needed, 60));
  }
  marking_ = false;
  viewport()->update();
}

void ListPane::mark(std::optional<std::size_t> index) {
  const auto line = index ? model_->lineOf(*index) : std::nullopt;
  // Just chosen here: the rows chosen with it stay.
  if (telling_ && line && currentIndex().row() == *line) return;
  marking_ = true;
  if (line) {
    // Whatever key is held: the view would add rows with Shift.
    selectionModel()->setCurrentIndex(model_->index(*line, 0),
                                      QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
    scrollTo(model_->index(*line, 0));
  } else {
    selectionModel()->clear();
  }
  marking_ = false;
}

bool ListPane::find(const QString& text, int step) {
  const int rows = model_->rowCount();
  const int now = std::max(0, currentIndex().row());
  for (int tried = 0; tried < rows; ++tried) {
    // Step 0 begins where one is; the others end there.
    const int away = step == 0 ? tried : step * (tried + 1);
    const int row = ((now + away) % rows + rows) % rows;
    const ListLine& line = model_->content().lines[static_cast<std::size_t>(row)];
    if (line.heading || line.cells.filter(text, Qt::CaseInsensitive).isEmpty()) continue;
    const QModelIndex found = model_->index(row, 0);
    if (found == currentIndex()) return true;
    selectionModel()->setCurrentIndex(found, QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
    scrollTo(found);
    return true;
  }
  return false;
}

void ListPane::keyPressEvent(QKeyEvent* event) {
  if (event->matches(QKeySequence::Copy)) {
    copy_chosen_rows(*model_, selectionModel()->selectedRows());
    return;
  }
  QTreeView::keyPressEvent(event);
}

void ListPane::focusInEvent(QFocusEvent* event) {
  // Coming in by keyboard must not choose a line by itself; the arrows then start at the first.
  marking_ = true;
  QTreeView::focusInEvent(event);
  marking_ = false;
}

void ListPane::paintEvent(QPaintEvent* event) {
  QTreeView::paintEvent(event);
  if (model_->rowCount() > 0) return;
  QPainter painter(viewport());
  painter.setPen(palette().color(QPalette::PlaceholderText));
  painter.drawText(viewport()->rect().adjusted(12, 8, -12, -8),
                   Qt::AlignTop | Qt::AlignLeft | Qt::TextWordWrap, model_->content().when_empty);
}

}  // namespace soakwright::gui
