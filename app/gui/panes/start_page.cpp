// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/start_page.h"

#include <QCommandLinkButton>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/gui/parts/plain_tip.h"

namespace soakwright::gui {
namespace {

constexpr int kColumnWidth = 520;
constexpr int kMostRecent = 8;

QStringList still_there(QStringList paths) {
  paths.erase(std::remove_if(paths.begin(), paths.end(),
                             [](const QString& path) { return !QFileInfo::exists(path); }),
              paths.end());
  return paths;
}

QString names_of(const QStringList& paths) {
  QStringList names;
  for (const QString& path : paths) names.append(QFileInfo(path).fileName());
  return names.join(QStringLiteral("  ·  "));
}

}  // namespace

StartPage::StartPage(QWidget* parent)
    : QWidget(parent),
      waiting_(new QLabel(this)),
      open_log_(new QCommandLinkButton(tr("Open a log"), tr("Any text file from a recorder or a spreadsheet"),
                                       this)),
      open_job_(new QCommandLinkButton(tr("Open a job"),
                                       tr("Names the log, the procedure and the thermocouples"), this)),
      again_(new QCommandLinkButton(tr("Restore last session"), QString(), this)),
      recent_title_(new QLabel(tr("Recent files"), this)),
      recent_(new QListWidget(this)) {
  auto* title = new QLabel(tr("Soakwright"), this);
  QFont big = title->font();
  big.setPointSizeF(big.pointSizeF() * 2.0);
  title->setFont(big);
  auto* saying = new QLabel(tr("Drop a log, a procedure and a job on this window, together or one by one. "
                               "Each is taken as what it says "
                               "it is; a log alone shows its course, with a procedure it gets a verdict."),
                            this);
  saying->setWordWrap(true);
  waiting_->setTextFormat(Qt::PlainText);
  waiting_->setWordWrap(true);
  recent_->setAccessibleName(tr("Recent files"));
  recent_->setMaximumHeight(190);
  recent_->setFrameShape(QFrame::NoFrame);
  recent_->setTextElideMode(Qt::ElideMiddle);

  auto* column = new QWidget(this);
  column->setFixedWidth(kColumnWidth);
  auto* inner = new QVBoxLayout(column);
  inner->setSpacing(6);
  for (QWidget* widget : std::initializer_list<QWidget*>{title, saying, waiting_, again_, open_log_,
                                                         open_job_, recent_title_, recent_})
    inner->addWidget(widget);
  auto* layout = new QVBoxLayout(this);
  // Between stretches rather than aligned: what is aligned is not asked for its height at that width, and the
  // links' second lines were cut.
  auto* row = new QHBoxLayout;
  row->addStretch(1);
  row->addWidget(column);
  row->addStretch(1);
  layout->addStretch(1);
  layout->addLayout(row);
  layout->addStretch(2);

  connect(open_log_, &QCommandLinkButton::clicked, this, &StartPage::logWanted);
  connect(open_job_, &QCommandLinkButton::clicked, this, &StartPage::jobWanted);
  connect(again_, &QCommandLinkButton::clicked, this, [this] { emit filesWanted(last_); });
  connect(recent_, &QListWidget::itemActivated, this,
          [this](const QListWidgetItem* item) { emit filesWanted({item->data(Qt::UserRole).toString()}); });
  setWaiting({});
  offer({}, {});
}

void StartPage::offer(const QStringList& last, const QStringList& recent) {
  last_ = still_there(last);
  again_->setVisible(!last_.isEmpty());
  again_->setDescription(names_of(last_));
  recent_->clear();
  for (const QString& path : still_there(recent).mid(0, kMostRecent)) {
    const QFileInfo info(path);
    auto* item = new QListWidgetItem(QStringLiteral("%1   (%2)").arg(info.fileName(), info.path()), recent_);
    item->setData(Qt::UserRole, path);
    item->setToolTip(plain_tip(path));
  }
  recent_title_->setVisible(recent_->count() > 0);
  recent_->setVisible(recent_->count() > 0);
}

void StartPage::setWaiting(const QString& text) {
  waiting_->setText(text);
  waiting_->setVisible(!text.isEmpty());
}

}  // namespace soakwright::gui
