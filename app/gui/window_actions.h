// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that can be done from menus and keys, named once. What an action does is wired by the window.
#pragma once

#include <QObject>

class QAction;
class QMainWindow;
class QMenu;

namespace soakwright::gui {

struct WindowActions {
  /// Makes the actions and puts them into the menu bar and the tool bar of `window`.
  explicit WindowActions(QMainWindow& window);

  QAction* open_log;
  QAction* open_procedure;
  QAction* open_job;
  QAction* reload;
  QAction* close_job;
  QAction* close_all;
  QAction* export_report;
  QAction* export_result;
  QAction* export_picture;
  QAction* quit;
  QAction* zoom_in;
  QAction* zoom_out;
  QAction* reset_view;
  QAction* fit_temperature;
  QAction* show_chart;
  QAction* show_reading;
  QAction* show_channels;
  QAction* show_lists;
  QAction* next_pane;
  QAction* next_requirement;
  QAction* previous_requirement;
  QAction* keys;
  QAction* cautions;
  QAction* about;
  QMenu* recent;

  /// What needs a record, a verdict, a job to make sense.
  void enableFor(bool record, bool evaluated, bool job, bool anything);
};

}  // namespace soakwright::gui
