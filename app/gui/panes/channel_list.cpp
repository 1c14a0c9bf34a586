// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/channel_list.h"

#include <QFont>
#include <QPainter>
#include <QPixmap>
#include <utility>

#include "app/gui/parts/plain_tip.h"
#include "app/gui/texts/reading_text.h"
#include "app/pdf/shown_text.h"
#include "core/units/printed_quantity.h"

namespace soakwright::gui {
namespace {

constexpr int kSwatchWidth = 26;
constexpr int kSwatchHeight = 12;
constexpr int kSwatchScale = 2;

QPixmap swatch(QPen pen) {
  QPixmap pixmap(kSwatchWidth * kSwatchScale, kSwatchHeight * kSwatchScale);
  pixmap.setDevicePixelRatio(kSwatchScale);
  pixmap.fill(Qt::transparent);
  pen.setWidthF(2.0);
  pen.setCosmetic(false);
  QPainter painter(&pixmap);
  painter.setPen(pen);
  painter.drawLine(QPointF(1, 0.5 * kSwatchHeight), QPointF(kSwatchWidth - 1, 0.5 * kSwatchHeight));
  return pixmap;
}

}  // namespace

void ChannelListModel::setReport(std::shared_ptr<const Report> report) {
  beginResetModel();
  report_ = std::move(report);
  reading_.reset();
  endResetModel();
}

void ChannelListModel::setPens(std::vector<QPen> pens) {
  pens_ = std::move(pens);
  if (rowCount() > 0) emit dataChanged(index(0, 0), index(rowCount() - 1, 0));
}

void ChannelListModel::setVisible(std::vector<bool> visible) {
  visible_ = std::move(visible);
  if (rowCount() > 0) emit dataChanged(index(0, 0), index(rowCount() - 1, 1));
}

void ChannelListModel::setReading(std::optional<PointerReading> reading) {
  reading_ = std::move(reading);
  if (rowCount() > 0) emit dataChanged(index(0, 1), index(rowCount() - 1, columnCount() - 1));
}

void ChannelListModel::setFigures(const Figures& figures) {
  if (figures_ == figures) return;
  beginResetModel();
  figures_ = figures;
  endResetModel();
}

ChannelListModel::Column ChannelListModel::columnAt(int column) const {
  if (column < 2) return column == 0 ? Column::name : Column::reading;
  return column == 2 && figures_.rates ? Column::rate : Column::difference;
}

/// The number alone: its unit stands in the header.
QVariant ChannelListModel::figure(Column column, std::size_t channel) const {
  const auto said = [&](const auto& figures) -> QVariant {
    if (channel >= figures.size() || !figures[channel]) return QStringLiteral("–");
    return QString::fromStdString(printed_number(*figures[channel], {report_->unit}, 1));
  };
  return column == Column::rate ? said(reading_->rates) : said(reading_->differences);
}

std::optional<std::size_t> ChannelListModel::channelAt(int row) const {
  if (!report_ || row < 0 || row >= rowCount()) return std::nullopt;
  return report_->chart.traces[static_cast<std::size_t>(row)].channel;
}

int ChannelListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() || !report_ ? 0 : static_cast<int>(report_->chart.traces.size());
}

int ChannelListModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : 2 + (figures_.rates ? 1 : 0) + (figures_.differences ? 1 : 0);
}

QVariant ChannelListModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const auto row = static_cast<std::size_t>(index.row());
  const ChartTrace& trace = report_->chart.traces[row];
  const bool shown = trace.channel < visible_.size() && visible_[trace.channel];
  const Column column = columnAt(index.column());
  if (column != Column::name) {
    if (role == Qt::TextAlignmentRole) return static_cast<int>(Qt::AlignVCenter | Qt::AlignRight);
    if (!reading_) return {};
    if (column != Column::reading)
      return role == Qt::DisplayRole ? figure(column, trace.channel) : QVariant();
    if (role == Qt::DisplayRole) return temperature_text(reading_->celsius[trace.channel], report_->unit);
    if (role == Qt::FontRole && (reading_->hottest == trace.channel || reading_->coldest == trace.channel)) {
      QFont bold;
      bold.setBold(true);
      return bold;
    }
    return {};
  }
  switch (role) {
    case Qt::DisplayRole:
      return pdf::shown_text(trace.name);
    case Qt::ToolTipRole:
      return plain_tip(pdf::shown_text(trace.legend));
    case Qt::AccessibleTextRole:
      return QStringLiteral("%1, %2").arg(pdf::shown_text(trace.legend), shown ? tr("shown") : tr("hidden"));
    case Qt::DecorationRole:
      return row < pens_.size() ? QVariant(swatch(pens_[row])) : QVariant();
    case Qt::CheckStateRole:
      return shown ? Qt::Checked : Qt::Unchecked;
    case Qt::FontRole:
      if (trace.role == ChartTrace::Role::evaluated) return {};
      {
        QFont slanted;
        slanted.setItalic(true);
        return slanted;
      }
    default:
      return {};
  }
}

bool ChannelListModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::CheckStateRole || !index.isValid()) return false;
  const auto channel = channelAt(index.row());
  if (!channel) return false;
  emit visibleWanted(*channel, value.toInt() == Qt::Checked);
  return true;
}

QString ChannelListModel::headerTip(Column column) {
  switch (column) {
    case Column::name:
      break;
    case Column::reading:
      return tr("What the channel reads at the pointer");
    case Column::rate:
      return tr("Slope of the window of the evaluation about the pointer");
    case Column::difference:
      return tr("Reading at the pointer, less that of the channel named above the difference pane");
  }
  return {};
}

QVariant ChannelListModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation == Qt::Horizontal && role == Qt::ToolTipRole && section > 0)
    return headerTip(columnAt(section));
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  const QString degree = unit_sign(report_ ? report_->unit : TemperatureUnit::celsius);
  switch (columnAt(section)) {
    case Column::name:
      return tr("Channel");
    case Column::reading:
      return columnCount() == 2 ? tr("At the pointer") : tr("Reading");
    case Column::rate:
      return tr("Rate, %1/h").arg(degree);
    case Column::difference:
      return tr("Diff., %1").arg(degree);
  }
  return {};
}

Qt::ItemFlags ChannelListModel::flags(const QModelIndex& index) const {
  if (!index.isValid()) return {};
  Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
  if (index.column() == 0) flags |= Qt::ItemIsUserCheckable;
  return flags;
}

}  // namespace soakwright::gui
