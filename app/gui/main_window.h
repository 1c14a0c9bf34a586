// SPDX-License-Identifier: GPL-3.0-or-later
// The window. It only wires: the session holds the state, the panes show it.
#pragma once

#include <QMainWindow>
#include <QTimer>
#include <memory>

#include "app/gui/export_work.h"
#include "app/gui/saved_settings.h"
#include "app/gui/session.h"

class QLabel;
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
class StartPage;
class SummaryBar;
struct WindowActions;

class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  explicit MainWindow(SavedSettings& memory, QWidget* parent = nullptr);
  ~MainWindow() override;

  [[nodiscard]] Session& session() { return session_; }
  /// Each begins to write a file and tells by exported() how it went; one at a time.
  void exportReport(const QString& path);
  void exportResult(const QString& path);
  void exportPicture(const QString& path);
  /// Writes what was changed by hand into the job at `path`, a new one where there is none.
  void writeJob(const QString& path);

 signals:
  void exported(const QString& path, bool written);

 protected:
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  void closeEvent(QCloseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void build();
  void buildLists();
  void buildStatus();
  void wireActions();
  void wireSession();
  void wirePanes();
  void restoreLayout();
  void keepLayout();

  void showCase(bool record);
  void showSelection();
  void showVisibility();
  void showColours();
  void showPointer(std::optional<double> at_s);
  void showBusy(bool busy);
  void pickTrace(std::optional<std::size_t> trace);
  void offerRecent();
  void stepRequirement(int step);
  void nextPane();
  void askToOpen(FileKind kind);
  void askToExport(const QString& title, const QString& filter, const QString& suffix,
                   void (MainWindow::*write)(const QString&));
  void showRefusedLog();
  void keepChanges();
  /// Of an earlier run, where nothing is wanted now.
  [[nodiscard]] std::vector<JobChange> changesLeft() const;
  void askToWriteJob();
  void showWritten(const QString& path, const Problems& problems);
  void openFromList(const QStringList& paths);
  [[nodiscard]] std::vector<bool> visibleChannels() const;

  SavedSettings& memory_;
  Session session_;
  ExportWork exports_;
  std::unique_ptr<WindowActions> actions_;
  SummaryBar* verdict_ = nullptr;
  ErrorBar* refusal_ = nullptr;
  QStackedWidget* middle_ = nullptr;
  StartPage* start_ = nullptr;
  QTabWidget* pages_ = nullptr;
  ImportSettingsPane* reading_ = nullptr;
  ChartPane* chart_ = nullptr;
  ChannelPane* channels_ = nullptr;
  QSplitter* beside_chart_ = nullptr;
  QSplitter* above_lists_ = nullptr;
  QSplitter* beside_lists_ = nullptr;
  QTabWidget* lists_ = nullptr;
  ListPane* requirements_ = nullptr;
  ListPane* findings_ = nullptr;
  ListPane* phases_ = nullptr;
  ListPane* suspects_ = nullptr;
  ListPane* notices_ = nullptr;
  DetailPanel* card_ = nullptr;
  QLabel* status_ = nullptr;
  QProgressBar* progress_ = nullptr;
  QPushButton* cancel_ = nullptr;
  QTimer layout_timer_;
  QTimer busy_timer_;
};

}  // namespace soakwright::gui
