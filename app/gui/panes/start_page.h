// SPDX-License-Identifier: GPL-3.0-or-later
// What the middle shows while no record is open: where to begin, what was open last, recent files.
#pragma once

#include <QStringList>
#include <QWidget>

class QCommandLinkButton;
class QLabel;
class QListWidget;

namespace soakwright::gui {

class StartPage : public QWidget {
  Q_OBJECT

 public:
  explicit StartPage(QWidget* parent = nullptr);

  /// `last` are the files of the session before; files that are gone are left out.
  void offer(const QStringList& last, const QStringList& recent);
  /// Jobs that come with the program, each a whole case to look at; empty: none are installed.
  void offerSamples(const QStringList& jobs);
  /// What is already open and waits for a log; empty: nothing.
  void setWaiting(const QString& text);
  [[nodiscard]] QStringList last() const { return last_; }

 signals:
  void logWanted();
  void jobWanted();
  void procedureWanted();
  void filesWanted(const QStringList& paths);

 private:
  QLabel* waiting_;
  QCommandLinkButton* open_log_;
  QCommandLinkButton* open_job_;
  QCommandLinkButton* new_procedure_;
  QCommandLinkButton* again_;
  QLabel* sample_title_;
  QListWidget* samples_;
  QLabel* recent_title_;
  QListWidget* recent_;
  QStringList last_;
};

}  // namespace soakwright::gui
