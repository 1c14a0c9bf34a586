// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that can be done from menus and keys, named once. What an action does is wired by the window.
#pragma once

#include <QObject>

class QAction;
class QMainWindow;
class QMenu;
class QUndoStack;

namespace soakwright::gui {

struct WindowActions {
  /// Makes the actions and puts them into the menu bar and the tool bar of `window`.
  WindowActions(QMainWindow& window, QUndoStack& edits);

  QAction* open_log;
  QAction* open_procedure;
  QAction* open_job;
  QAction* new_procedure;
  QAction* new_job;
  QAction* save;
  QAction* save_job_as;
  QAction* save_procedure_as;
  QAction* exclude;
  QAction* add_remark;
  QAction* find;
  QAction* preferences;
  QAction* reload;
  QAction* close_job;
  QAction* close_all;
  QAction* export_report;
  QAction* export_result;
  QAction* export_picture;
  QAction* print_preview;
  QAction* print;
  QAction* verify_report;
  QAction* sign_report;
  QAction* quit;
  QAction* zoom_in;
  QAction* zoom_out;
  QAction* reset_view;
  QAction* fit_temperature;
  QAction* previous_view;
  QAction* next_view;
  QAction* cursor_a;
  QAction* cursor_b;
  QAction* clear_cursors;
  QAction* copy_between;
  QAction* copy_chart;
  QAction* unit_as_specified;
  QAction* unit_celsius;
  QAction* unit_fahrenheit;
  QAction* both_units;
  QAction* time_of_recorder;
  QAction* time_of_record;
  QAction* time_of_hold;
  QAction* show_chart;
  QAction* show_reading;
  QAction* show_job;
  QAction* show_procedure;
  QAction* show_channels;
  QAction* show_lists;
  QAction* show_spread;
  QAction* show_rate;
  QAction* show_difference;
  QAction* show_required;
  QAction* show_overview;
  QAction* full_screen;
  QAction* next_pane;
  QAction* next_requirement;
  QAction* previous_requirement;
  QAction* next_finding;
  QAction* previous_finding;
  QAction* next_open_finding;
  QAction* people;
  QAction* open_review;
  QAction* save_review;
  QAction* compare;
  QAction* stop_comparing;
  QAction* compare_settings;
  QAction* previous_records;
  QAction* manual;
  QAction* keys;
  QAction* cautions;
  QAction* about;
  QMenu* recent;

  /// What is open: what is missing there, and what cannot be changed, disables actions.
  struct Open {
    bool record = false;
    bool evaluated = false;
    bool job = false;
    bool anything = false;
    bool read_only = false;
  };
  void enableFor(const Open& open);
};

}  // namespace soakwright::gui
