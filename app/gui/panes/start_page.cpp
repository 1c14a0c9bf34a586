// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/start_page.h"

#include <QCommandLinkButton>
#include <QDir>
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
constexpr int kRecentHeight = 120;
constexpr int kSampleHeight = 140;

/// What a sample shows; its folder's name where it is another one.
QString sample_words(const QString& job) {
  QString folder = QFileInfo(job).dir().dirName();
  const std::pair<const char*, QString> known[] = {
      {"w-117", StartPage::tr("W-117: a stress relief that meets its procedure")},
      {"w-118", StartPage::tr("W-118: heated too fast, and the soak interrupted by a dip")},
      {"w-121-bake-out", StartPage::tr("W-121: a bake-out after welding")},
      {"w-121-preheat", StartPage::tr("W-121: preheat maintained during welding")},
      {"w-124", StartPage::tr("W-124: a thermocouple comes off and a spare takes over")},
      {"w-126", StartPage::tr("W-126: two heat treatments in one log")},
      {"w-128", StartPage::tr("W-128: one heat treatment over two days")}};
  for (const auto& [front, words] : known)
    if (folder.startsWith(QLatin1String(front))) return words;
  return folder;
}

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
      new_procedure_(new QCommandLinkButton(tr("New procedure"),
                                            tr("From a published rule, from a sample, or empty"), this)),
      again_(new QCommandLinkButton(tr("Restore last session"), QString(), this)),
      sample_title_(new QLabel(tr("Samples: a tour of what a record can show"), this)),
      samples_(new QListWidget(this)),
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
  samples_->setAccessibleName(tr("Samples"));
  recent_->setMaximumHeight(kRecentHeight);
  samples_->setMaximumHeight(kSampleHeight);
  for (QListWidget* list : {recent_, samples_}) {
    list->setFrameShape(QFrame::NoFrame);
    list->setTextElideMode(Qt::ElideMiddle);
    connect(list, &QListWidget::itemActivated, this,
            [this](const QListWidgetItem* item) { emit filesWanted({item->data(Qt::UserRole).toString()}); });
  }

  auto* column = new QWidget(this);
  column->setFixedWidth(kColumnWidth);
  auto* inner = new QVBoxLayout(column);
  inner->setSpacing(6);
  for (QWidget* widget :
       std::initializer_list<QWidget*>{title, saying, waiting_, again_, open_log_, open_job_, new_procedure_,
                                       recent_title_, recent_, sample_title_, samples_})
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
  connect(new_procedure_, &QCommandLinkButton::clicked, this, &StartPage::procedureWanted);
  setWaiting({});
  offer({}, {});
  offerSamples({});
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

void StartPage::offerSamples(const QStringList& jobs) {
  samples_->clear();
  for (const QString& path : jobs) {
    auto* item = new QListWidgetItem(sample_words(path), samples_);
    item->setData(Qt::UserRole, path);
    item->setToolTip(plain_tip(path));
  }
  sample_title_->setVisible(!jobs.isEmpty());
  samples_->setVisible(!jobs.isEmpty());
}

void StartPage::setWaiting(const QString& text) {
  waiting_->setText(text);
  waiting_->setVisible(!text.isEmpty());
}

}  // namespace soakwright::gui
