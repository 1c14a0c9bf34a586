// SPDX-License-Identifier: GPL-3.0-or-later
// Parts of the window and how they are laid out; what is wired to what is in window_wiring.cpp.

#include "app/gui/main_window.h"

#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QResizeEvent>
#include <QScreen>
#include <QSplitter>
#include <QStackedWidget>
#include <QStatusBar>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/panes/detail_panel.h"
#include "app/gui/panes/finding_pane.h"
#include "app/gui/panes/forms/review_form.h"
#include "app/gui/panes/import_settings_pane.h"
#include "app/gui/panes/job_pane.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/panes/procedure_pane.h"
#include "app/gui/panes/start_page.h"
#include "app/gui/parts/error_bar.h"
#include "app/gui/parts/find_bar.h"
#include "app/gui/parts/message_strip.h"
#include "app/gui/parts/summary_bar.h"
#include "app/gui/window_actions.h"

namespace soakwright::gui {
namespace {

constexpr int kLayoutDelay_ms = 800;
// The chart is what a record is looked at on: the lists get no more than this of the room of both.
constexpr double kListShare = 0.22;
constexpr int kLeastLists = 112;
constexpr int kMostLists = 230;
constexpr int kLeastList = 40;
constexpr int kBusyDelay_ms = 120;  ///< quicker work shows no progress

}  // namespace

MainWindow::MainWindow(SavedSettings& memory, QWidget* parent) : QMainWindow(parent), memory_(memory) {
  setWindowTitle(tr("Soakwright"));
  setAcceptDrops(true);
  actions_ = std::make_unique<WindowActions>(*this, session_.edits());
  build();
  buildStatus();
  layout_timer_.setSingleShot(true);
  layout_timer_.setInterval(kLayoutDelay_ms);
  connect(&layout_timer_, &QTimer::timeout, this, &MainWindow::keepLayout);
  busy_timer_.setSingleShot(true);
  busy_timer_.setInterval(kBusyDelay_ms);
  wireActions();
  wireSession();
  wirePanes();
  wireSaving();
  wireChannels();
  wireMoments();
  wireFinding();
  wireMeasuring();
  wireComparing();
  wireReview();
  wireProcedure();
  wireJob();
  wireReports();
  wireLimits();
  wireHelp();
  wirePreferences();
  restoreLayout();
  showCase(true);
}

MainWindow::~MainWindow() = default;

void MainWindow::build() {
  verdict_ = new SummaryBar(this);
  refusal_ = new ErrorBar(this);
  unsaved_ = new MessageStrip(tr("Unsaved changes"), {tr("Undo"), tr("Save in the job…")}, this);
  left_ =
      new MessageStrip(tr("Changes of an earlier session"), {tr("Restore"), tr("Discard"), tr("Show")}, this);
  stale_ = new MessageStrip(tr("Files changed on disk"), {tr("Reload")}, this);
  from_report_ = new MessageStrip(tr("Report that is open"), {tr("Show the checks")}, this);
  continued_ = new MessageStrip(tr("Previous records"), {tr("Show")}, this);
  continued_->setSign(style()->standardIcon(QStyle::SP_MessageBoxInformation));
  start_ = new StartPage(this);
  chart_ = new ChartPane(this);
  channels_ = new ChannelPane(this);
  reading_ = new ImportSettingsPane(this);

  beside_chart_ = new QSplitter(Qt::Horizontal, this);
  beside_chart_->addWidget(channels_);
  beside_chart_->addWidget(chart_);
  beside_chart_->setStretchFactor(0, 0);
  beside_chart_->setStretchFactor(1, 1);
  beside_chart_->setSizes({250, 1030});
  beside_chart_->setChildrenCollapsible(false);
  pages_ = new QTabWidget(this);
  pages_->setDocumentMode(true);
  pages_->addTab(beside_chart_, tr("Chart"));
  pages_->addTab(reading_, tr("Import settings"));
  job_ = new JobPane(this);
  pages_->addTab(job_, tr("Job"));
  procedure_ = new ProcedurePane(this);
  pages_->addTab(procedure_, tr("Procedure"));

  buildLists();
  above_lists_ = new QSplitter(Qt::Vertical, this);
  above_lists_->addWidget(pages_);
  above_lists_->addWidget(beside_lists_);
  above_lists_->setStretchFactor(0, 1);
  above_lists_->setStretchFactor(1, 0);
  above_lists_->installEventFilter(this);
  above_lists_->setChildrenCollapsible(false);
  middle_ = new QStackedWidget(this);
  middle_->addWidget(start_);
  middle_->addWidget(above_lists_);

  auto* central = new QWidget(this);
  auto* layout = new QVBoxLayout(central);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(verdict_);
  for (QWidget* strip :
       {static_cast<QWidget*>(unsaved_), static_cast<QWidget*>(left_), static_cast<QWidget*>(from_report_),
        static_cast<QWidget*>(continued_), static_cast<QWidget*>(stale_), static_cast<QWidget*>(refusal_)})
    layout->addWidget(strip);
  layout->addWidget(middle_, 1);
  setCentralWidget(central);
}

void MainWindow::setFolders(const DataFolders& folders) {
  folders_ = folders;
  offerRecent();
}

void MainWindow::buildLists() {
  requirements_ = new ListPane(tr("Requirements"), this);
  finding_pane_ = new FindingPane(this);
  findings_ = finding_pane_->list();
  deviations_ = new ListPane(tr("Deviations"), this);
  phases_ = new ListPane(tr("Phases"), this);
  suspects_ = new ListPane(tr("Suspect thermocouples"), this);
  notices_ = new ListPane(tr("File warnings"), this);
  between_ = new ListPane(tr("Between cursors"), this);
  lists_ = new QTabWidget(this);
  lists_->setDocumentMode(true);
  for (ListPane* list : {requirements_, findings_, deviations_, phases_, suspects_, notices_, between_})
    lists_->addTab(list == findings_ ? static_cast<QWidget*>(finding_pane_) : list, list->accessibleName());
  card_ = new DetailPanel(this);
  beside_lists_ = new QSplitter(Qt::Horizontal, this);
  find_bar_ = new FindBar(this);
  auto* found_in = new QWidget(this);
  auto* over = new QVBoxLayout(found_in);
  over->setContentsMargins(0, 0, 0, 0);
  over->setSpacing(0);
  over->addWidget(lists_, 1);
  over->addWidget(find_bar_);
  beside_lists_->addWidget(found_in);
  review_form_ = new ReviewForm(this);
  auto* side = new QWidget(this);
  auto* below = new QVBoxLayout(side);
  below->setContentsMargins(0, 0, 0, 0);
  below->setSpacing(0);
  below->addWidget(card_, 1);
  below->addWidget(review_form_);
  beside_lists_->addWidget(side);
  // Their own least heights would take the chart's room in a low window.
  for (QWidget* part : {found_in, side}) part->setMinimumHeight(kLeastLists);
  for (ListPane* list : {requirements_, findings_, deviations_, phases_, suspects_, notices_, between_})
    list->setMinimumHeight(kLeastList);
  card_->setMinimumHeight(kLeastList);
  beside_lists_->setStretchFactor(0, 1);
  beside_lists_->setStretchFactor(1, 0);
  beside_lists_->setSizes({880, 400});
  beside_lists_->setChildrenCollapsible(false);
}

void MainWindow::buildStatus() {
  status_ = new QLabel(this);
  status_->setTextFormat(Qt::PlainText);
  progress_ = new QProgressBar(this);
  progress_->setRange(0, 100);
  progress_->setFixedWidth(180);
  progress_->setAccessibleName(tr("Progress"));
  cancel_ = new QPushButton(tr("Cancel"), this);
  cancel_->setToolTip(tr("Cancel reading; the open record is kept (Escape)"));
  statusBar()->addWidget(status_, 1);
  statusBar()->addPermanentWidget(progress_);
  statusBar()->addPermanentWidget(cancel_);
  progress_->hide();
  cancel_->hide();
}

void MainWindow::restoreLayout() {
  const QRect room = screen()->availableGeometry();
  if (!restoreGeometry(memory_.layout(QStringLiteral("window"))))
    resize(QSize(1280, 800).boundedTo(room.size() - QSize(16, 48)));
  beside_chart_->restoreState(memory_.layout(QStringLiteral("beside-chart")));
  lists_sized_ = above_lists_->restoreState(memory_.layout(QStringLiteral("above-lists")));
  beside_lists_->restoreState(memory_.layout(QStringLiteral("beside-lists")));
}

void MainWindow::keepLayout() {
  memory_.keepLayout(QStringLiteral("window"), saveGeometry());
  memory_.keepLayout(QStringLiteral("beside-chart"), beside_chart_->saveState());
  if (lists_sized_) memory_.keepLayout(QStringLiteral("above-lists"), above_lists_->saveState());
  memory_.keepLayout(QStringLiteral("beside-lists"), beside_lists_->saveState());
}

bool MainWindow::eventFilter(QObject* watched, QEvent* event) {
  if (watched == above_lists_ && event->type() == QEvent::Resize && !lists_sized_) fitLists();
  return QMainWindow::eventFilter(watched, event);
}

void MainWindow::fitLists() {
  const int room = above_lists_->height();
  const int lists = std::clamp(static_cast<int>(kListShare * room), kLeastLists, kMostLists);
  above_lists_->setSizes({room - lists, lists});
}

void MainWindow::resizeEvent(QResizeEvent* event) {
  QMainWindow::resizeEvent(event);
  layout_timer_.start();
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!mayLeave()) {
    event->ignore();
    return;
  }
  keepLayout();
  QMainWindow::closeEvent(event);
}

}  // namespace soakwright::gui
