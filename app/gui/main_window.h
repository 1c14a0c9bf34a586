// SPDX-License-Identifier: GPL-3.0-or-later
// The window. It only wires: the session holds the state, the panes show it.
#pragma once

#include <QMainWindow>
#include <QTimer>
#include <memory>

#include "app/gui/background/curve_work.h"
#include "app/gui/background/export_work.h"
#include "app/gui/background/file_watch.h"
#include "app/gui/background/other_record.h"
#include "app/gui/chart/chart_scene.h"
#include "app/gui/data_folders.h"
#include "app/gui/saved_settings.h"
#include "app/gui/session.h"

class QLabel;
class QMenu;
class QProgressBar;
class QPushButton;
class QSplitter;
class QStackedWidget;
class QTabWidget;

namespace soakwright::gui {

class ChannelPane;
class ChartPane;
class DetailPanel;
class ListPane;
class ImportSettingsPane;
class ErrorBar;
class JobPane;
class FindBar;
class FindingPane;
class ManualWindow;
class MessageStrip;
class ProcedurePane;
class ReportChecks;
class ReviewForm;
class PreviousRecordsDialog;
class SettingsComparison;
class StartPage;
class SummaryBar;
struct WindowActions;

class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  explicit MainWindow(SavedSettings& memory, QWidget* parent = nullptr);
  ~MainWindow() override;

  [[nodiscard]] Session& session() { return session_; }
  /// Where rules, samples and the manual are, in place of the installed ones.
  void setFolders(const DataFolders& folders);
  /// Each begins to write a file and tells by exported() how it went; one at a time.
  void exportReport(const QString& path);
  void exportResult(const QString& path);
  void exportPicture(const QString& path);
  /// Writes what was changed by hand into the job at `path`, a new one where there is none.
  void writeJob(const QString& path);
  /// A new job for the open log, with a line for each thermocouple, takes the place of the open one.
  void startJob();
  /// Writes the job as it is wanted now into another file and goes on with that one. False where that cannot
  /// be.
  bool writeJobAs(const QString& path);
  /// Writes what was decided into the review at `path`. False where it cannot be written.
  bool writeReview(const QString& path);
  /// A procedure that is in no file yet takes the place of the open one, and is shown.
  void startProcedure(const std::string& text, const QString& words);
  /// Writes the procedure as it is wanted now and goes on with that file. False where it cannot be written.
  bool writeProcedure(const QString& path);
  /// Lays the log at `path`, or the log of the job there, over the open record.
  void compareWith(const QString& path);
  [[nodiscard]] const OtherRecord& otherRecord() const { return other_record_; }
  /// Shows what verifying the report at `path` finds; what is open stays.
  void verifyReport(const QString& path);
  /// Opens what is named: of several of one kind the one that the user chooses, and nothing before unsaved
  /// changes are saved or discarded.
  void openPaths(const QStringList& paths);

 signals:
  void exported(const QString& path, bool written);

 protected:
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  void closeEvent(QCloseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void build();
  void buildLists();
  void buildStatus();
  void wireActions();
  void wireSession();
  void wirePanes();
  void restoreLayout();
  void keepLayout();
  void fitLists();

  void showCase(bool record);
  void showSelection();
  [[nodiscard]] QWidget* pageOf(ListPane* list) const;
  /// The list whose page is shown.
  [[nodiscard]] ListPane* shownList() const;
  void wireFinding();
  void showVisibility();
  void showColours();
  void showPointer(std::optional<double> at_s);
  void showBusy(bool busy);
  void offerRecent();
  void stepRequirement(int step);
  void nextPane();
  void askToOpen(FileKind kind);
  void askToExport(const QString& title, const QString& filter, const QString& suffix,
                   void (MainWindow::*write)(const QString&));
  void showRefusedLog();
  void keepChanges();
  // window_saving.cpp
  void wireSaving();
  [[nodiscard]] ChangesPlace changesPlace() const;
  /// True where nothing is unsaved, or the user saved or discarded it.
  bool mayLeave();
  /// False where something stays unsaved. With `preview`, what changes in a file is shown before.
  bool saveWhatIsUnsaved(bool preview);
  [[nodiscard]] QStringList unsavedWords() const;
  void offerLeftChanges();
  void answerLeftChanges(std::size_t button);
  void showUnsaved();
  /// The start page, or what is open.
  void showMiddle();
  void showChangedFiles(const QStringList& paths);
  void reloadFiles();
  bool saveJob(bool preview);
  [[nodiscard]] QString jobToSaveIn();
  void exclude();
  void askToExclude(std::optional<std::size_t> channel, std::optional<std::pair<double, double>> time);
  bool mayExport();
  // window_printing.cpp
  void printReport();
  void previewPrint();
  void sayNotPrinted(const Problems& problems);
  // window_measuring.cpp
  void wireMeasuring();
  void showCurves(CurveKind kind, bool shown);
  void workOutCurves();
  void showBetween();
  void copyBetween();
  void showStage(std::size_t stage);
  void copyChart();
  void stepFinding(int step);
  // window_moments.cpp
  void wireMoments();
  void askForRemark(double at_s);
  void offerForMoment(double at_s, std::optional<std::size_t> trace, const QPoint& at);
  void offerForTime(double from_s, double to_s, std::optional<std::size_t> trace, const QPoint& at);
  // window_preferences.cpp
  void wirePreferences();
  void applyPreferences(const Preferences& before);
  // window_channels.cpp
  void wireChannels();
  void pickTraces(const std::vector<std::size_t>& traces);
  [[nodiscard]] std::optional<std::size_t> channelOfReference() const;
  void showDifferencesFrom(std::size_t channel);
  void addGroups(QMenu& menu);
  void offerForTrace(std::size_t trace, const QPoint& at);
  // window_procedure.cpp
  void wireProcedure();
  bool saveProcedure(bool preview);
  bool saveProcedureAs();
  [[nodiscard]] QString askForProcedureFile();
  void askForNewProcedure();
  // window_comparing.cpp
  void wireComparing();
  void askToCompare();
  void showOtherRecord();
  void compareSettings();
  void followSettings();
  void lookAtPreviousRecords();
  void followPreviousRecords();
  // window_job.cpp
  void wireJob();
  void saveJobAs();
  // window_limits.cpp
  void wireLimits();
  void showMovableLimits();
  void moveLimit(const LimitLine& limit, double level_c);
  // window_help.cpp
  void wireHelp();
  // window_review.cpp
  void wireReview();
  void showReview();
  void decide(std::optional<FindingReview::Disposition> disposition, const QString& reason);
  void stepOpenFinding();
  void askForPeople();
  bool saveReview(bool preview);
  // window_report.cpp
  void wireReports();
  ReportChecks& checks();
  void followReport();
  void showReportChecks();
  void signReport();
  void showWritten(const QString& path, const Problems& problems);
  void openFromList(const QStringList& paths);
  [[nodiscard]] std::vector<bool> visibleChannels() const;

  SavedSettings& memory_;
  DataFolders folders_ = DataFolders::installed();
  Session session_;
  ExportWork exports_;
  std::unique_ptr<WindowActions> actions_;
  SummaryBar* verdict_ = nullptr;
  ErrorBar* refusal_ = nullptr;
  MessageStrip* unsaved_ = nullptr;
  MessageStrip* left_ = nullptr;
  MessageStrip* stale_ = nullptr;
  MessageStrip* from_report_ = nullptr;
  MessageStrip* continued_ = nullptr;          ///< the open record counts together with previous ones
  ReportChecks* checks_ = nullptr;             ///< made when a report is verified
  std::shared_ptr<const ReportFile> checked_;  ///< the open report whose checks are shown
  QString last_report_;                        ///< written or signed last: proposed for signing
  FileWatch watch_;
  QStringList changed_files_;
  QStackedWidget* middle_ = nullptr;
  StartPage* start_ = nullptr;
  QTabWidget* pages_ = nullptr;
  ImportSettingsPane* reading_ = nullptr;
  JobPane* job_ = nullptr;
  ProcedurePane* procedure_ = nullptr;
  ChartPane* chart_ = nullptr;
  ChannelPane* channels_ = nullptr;
  QSplitter* beside_chart_ = nullptr;
  QSplitter* above_lists_ = nullptr;
  QSplitter* beside_lists_ = nullptr;
  QTabWidget* lists_ = nullptr;
  FindBar* find_bar_ = nullptr;
  ListPane* requirements_ = nullptr;
  FindingPane* finding_pane_ = nullptr;
  ListPane* findings_ = nullptr;  ///< its list
  ListPane* deviations_ = nullptr;
  ListPane* phases_ = nullptr;
  ListPane* suspects_ = nullptr;
  ListPane* notices_ = nullptr;
  ListPane* between_ = nullptr;
  OtherRecord other_record_;
  SettingsComparison* settings_comparison_ = nullptr;  ///< made when it is asked for
  PreviousRecordsDialog* previous_records_ = nullptr;  ///< made when they are asked for
  CurveWork curve_work_;
  std::optional<std::size_t> reference_;  ///< the channel that differences were asked for from
  std::shared_ptr<const CurveSet> curves_;
  const Verdicts* curves_of_ = nullptr;  ///< whose limits the curves show
  DetailPanel* card_ = nullptr;
  ReviewForm* review_form_ = nullptr;
  ManualWindow* manual_ = nullptr;  ///< made when it is asked for
  QLabel* status_ = nullptr;
  QProgressBar* progress_ = nullptr;
  QPushButton* cancel_ = nullptr;
  QTimer layout_timer_;
  QTimer busy_timer_;
  bool had_verdict_ = false;
  bool lists_sized_ = false;  ///< by the user, now or in an earlier session
};

}  // namespace soakwright::gui
