// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/window_actions.h"

#include <QAction>
#include <QActionGroup>
#include <QKeySequence>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>
#include <QToolBar>
#include <QUndoStack>

#include "app/gui/texts/window_text.h"

namespace soakwright::gui {
namespace {

QAction* make(QMainWindow& window, const QString& text, const QKeySequence& key, const QString& tip) {
  auto* action = new QAction(text, &window);
  action->setShortcut(key);
  const QString shown =
      key.isEmpty() ? tip : QStringLiteral("%1 (%2)").arg(tip, key.toString(QKeySequence::NativeText));
  action->setToolTip(shown);
  action->setStatusTip(tip);
  return action;
}

QAction* make_switch(QMainWindow& window, const QString& text, const QKeySequence& key, const QString& tip) {
  QAction* action = make(window, text, key, tip);
  action->setCheckable(true);
  action->setChecked(true);
  return action;
}

}  // namespace

WindowActions::WindowActions(QMainWindow& w, QUndoStack& edits)
    : open_log(make(w, tr("Open &log…"), QKeySequence::Open, tr("Open the log of a heat treatment"))),
      open_procedure(
          make(w, tr("Open &procedure…"), tr("Ctrl+Shift+O"), tr("Evaluate the record against a procedure"))),
      open_job(make(w, tr("Open &job…"), tr("Ctrl+J"),
                    tr("Open a job: what was heated and where each thermocouple sat"))),
      new_procedure(make(w, tr("Ne&w procedure…"), tr("Ctrl+Shift+N"),
                         tr("A procedure from a published rule, from the log, from a sample, or empty"))),
      new_job(make(w, tr("&New job"), QKeySequence::New,
                   tr("A job for the open log, with a line for each of its thermocouples"))),
      save(make(w, tr("&Save…"), QKeySequence::Save,
                tr("Show what changes in job, procedure or review and save it"))),
      save_job_as(make(w, tr("Save job &as…"), {}, tr("Save the job in another file"))),
      save_procedure_as(make(w, tr("Save proce&dure as…"), {}, tr("Save the procedure in another file"))),
      exclude(make(w, tr("&Exclude…"), tr("Ctrl+D"),
                   tr("Exclude a thermocouple in whole or in part, with a reason"))),
      add_remark(make(w, tr("Add re&mark…"), tr("Ctrl+M"),
                      tr("Write a remark at the reading line, else in the middle of what is shown"))),
      find(make(w, tr("&Find in the list…"), QKeySequence::Find, tr("Find text in the list that is shown"))),
      preferences(make(w, tr("&Preferences…"), QKeySequence::Preferences,
                       tr("Colours, size of text, temperatures, time axis, trusted certificates"))),
      reload(make(w, tr("&Reload"), tr("F5"), tr("Reload files that changed on disk, and evaluate again"))),
      close_job(make(w, tr("Close jo&b"), {}, tr("Close the job; log and procedure stay open"))),
      close_all(make(w, tr("&Close all"), tr("Ctrl+W"), tr("Close log, procedure and job"))),
      export_report(make(w, tr("&Export report…"), tr("Ctrl+E"), tr("Write the report as PDF"))),
      export_result(make(w, tr("Export resul&t…"), tr("Ctrl+Shift+E"), tr("Write the result as JSON"))),
      export_picture(make(w, tr("Export pict&ure of the chart…"), tr("Ctrl+Shift+P"),
                          tr("Write the chart as it is shown as PNG"))),
      print_preview(
          make(w, tr("Print pre&view…"), {}, tr("Show the report's pages as they will be printed"))),
      print(make(w, tr("Pr&int report…"), QKeySequence::Print, tr("Print the report"))),
      verify_report(make(w, tr("Verif&y report…"), {},
                         tr("Open a report, verify it, and read the case inside; nothing can be changed"))),
      sign_report(make(w, tr("Si&gn report…"), {}, tr("Sign a report with your key"))),
      quit(make(w, tr("&Quit"), QKeySequence::Quit, tr("Quit Soakwright"))),
      zoom_in(make(w, tr("Zoom &in"), QKeySequence::ZoomIn, tr("Show less time"))),
      zoom_out(make(w, tr("Zoom &out"), QKeySequence::ZoomOut, tr("Show more time"))),
      reset_view(make(w, tr("&Whole record"), tr("Ctrl+0"), tr("Show the whole record"))),
      fit_temperature(make(w, tr("&Fit temperature"), tr("Ctrl+Shift+F"),
                           tr("Fit the temperature axis to what is in view"))),
      previous_view(
          make(w, tr("Previous vie&w"), {}, tr("Go back to the view before (Alt+Left on the chart)"))),
      next_view(make(w, tr("Next v&iew"), {}, tr("Go forward again (Alt+Right on the chart)"))),
      cursor_a(make(w, tr("Set cursor &A"), {}, tr("Set cursor A at the reading line (A, or Ctrl+click)"))),
      cursor_b(make(w, tr("Set cursor &B"), {}, tr("Set cursor B at the reading line (B, or Shift+click)"))),
      clear_cursors(make(w, tr("&Clear cursors"), {}, tr("Take both cursors away"))),
      copy_between(make(w, tr("&Copy between cursors"), tr("Ctrl+Shift+C"),
                        tr("Copy times, temperatures and rates between A and B as text"))),
      copy_chart(make(w, tr("Copy chart as &picture"), {}, tr("Copy the chart as it is shown"))),
      unit_as_specified(make(w, tr("As in the &procedure"), {}, tr("Temperatures in the procedure's unit"))),
      unit_celsius(make(w, tr("°&C"), {}, tr("Temperatures in degrees Celsius"))),
      unit_fahrenheit(make(w, tr("°&F"), {}, tr("Temperatures in degrees Fahrenheit"))),
      both_units(make_switch(w, tr("Certificate in °C &and °F"), {},
                             tr("Give the certificate's figures in the other unit as well"))),
      time_of_recorder(
          make(w, tr("As the &recorder shows it"), {}, tr("Times of the log on the chart's axis"))),
      time_of_record(make(w, tr("From the &start of the record"), {},
                          tr("Count the time on the chart's axis from the first reading"))),
      time_of_hold(make(w, tr("From the start of the &hold"), {},
                        tr("Count the time on the chart's axis from the start of the first hold"))),
      show_chart(make(w, tr("&Chart"), tr("Ctrl+1"), tr("Show the chart"))),
      show_reading(make(w, tr("&Import settings"), tr("Ctrl+2"), tr("Show how the file was read"))),
      show_job(make(w, tr("&Job"), tr("Ctrl+3"), tr("Show and edit the job"))),
      show_procedure(make(w, tr("Procedu&re"), tr("Ctrl+4"), tr("Show and edit the procedure"))),
      show_channels(
          make_switch(w, tr("C&hannels"), tr("F7"), tr("Show or hide the channels beside the chart"))),
      show_lists(make_switch(w, tr("&Lists"), tr("F8"), tr("Show or hide the lists below the chart"))),
      show_spread(
          make_switch(w, tr("&Spread pane"), tr("F9"), tr("Show or hide the spread between thermocouples"))),
      show_rate(
          make_switch(w, tr("&Rate pane"), tr("Shift+F9"), tr("Show or hide the rate of each thermocouple"))),
      show_difference(make_switch(w, tr("&Difference pane"), tr("Ctrl+F9"),
                                  tr("Show or hide the difference of each channel from one of them"))),
      show_required(make_switch(
          w, tr("Re&quired cycle"), {},
          tr("Show or hide the fastest permitted ramps and the required hold time on the chart"))),
      show_overview(make_switch(w, tr("&Overview of the record"), {},
                                tr("Show or hide the whole record as a strip below the chart"))),
      full_screen(make(w, tr("F&ull screen"), QKeySequence::FullScreen, tr("Use the whole screen"))),
      next_pane(make(w, tr("&Next pane"), tr("F6"), tr("Move to the next pane"))),
      next_requirement(make(w, tr("Ne&xt requirement"), tr("Alt+Down"), tr("Choose the next requirement"))),
      previous_requirement(
          make(w, tr("Pre&vious requirement"), tr("Alt+Up"), tr("Choose the previous requirement"))),
      next_finding(make(w, tr("Next fin&ding"), tr("F3"), tr("Choose the next finding"))),
      previous_finding(make(w, tr("Previous f&inding"), tr("Shift+F3"), tr("Choose the previous finding"))),
      next_open_finding(make(w, tr("Next &open finding"), tr("F4"),
                             tr("Choose the next finding that needs a decision and has none"))),
      people(make(w, tr("&Performed, reviewed, witnessed by…"), {},
                  tr("The names on the report's signature lines"))),
      open_review(make(w, tr("Open &review…"), {}, tr("Open the review of this result"))),
      save_review(
          make(w, tr("&Save review…"), tr("Ctrl+Shift+S"), tr("Save the decisions in a review file"))),
      compare(
          make(w, tr("With another &record…"), {},
               tr("Lay another log, or the log of a job, over this one, aligned on the start of the hold"))),
      stop_comparing(make(w, tr("&Stop comparing"), {}, tr("Take the other record off the chart"))),
      compare_settings(make(w, tr("With other &evaluation settings…"), {},
                            tr("Evaluate this record with other settings, side by side; nothing is saved"))),
      previous_records(make(w, tr("Pre&vious records…"), {},
                            tr("Chart and lists of each previous record that counts with this one"))),
      manual(make(w, tr("&Manual"), QKeySequence::HelpContents,
                  tr("Show the manual's page about what has the focus"))),
      keys(make(w, tr("&Keyboard and mouse"), tr("Shift+F1"), tr("Keyboard and mouse"))),
      cautions(make(w, tr("&Cautions"), {}, tr("What a verdict does not say"))),
      about(make(w, tr("&About Soakwright"), {}, tr("Version, licence, cautions"))),
      recent(nullptr) {
  QMenu* file = w.menuBar()->addMenu(tr("&File"));
  file->addActions({new_job, new_procedure});
  file->addSeparator();
  file->addActions({open_log, open_procedure, open_job});
  recent = file->addMenu(tr("Recent &files"));
  file->addSeparator();
  file->addActions({save, save_job_as, save_procedure_as});
  file->addSeparator();
  file->addActions({reload, close_job, close_all});
  file->addSeparator();
  file->addActions({export_report, export_result, export_picture, print_preview, print});
  file->addSeparator();
  file->addActions({verify_report, sign_report});
  file->addSeparator();
  file->addAction(quit);
  QMenu* edit = w.menuBar()->addMenu(tr("&Edit"));
  QAction* undo = edits.createUndoAction(&w, tr("&Undo"));
  undo->setShortcut(QKeySequence::Undo);
  QAction* redo = edits.createRedoAction(&w, tr("&Redo"));
  redo->setShortcuts({QKeySequence(tr("Ctrl+Shift+Z")), QKeySequence(tr("Ctrl+Y"))});
  edit->addActions({undo, redo});
  edit->addSeparator();
  edit->addAction(copy_chart);
  edit->addSeparator();
  edit->addActions({exclude, add_remark});
  edit->addSeparator();
  edit->addAction(find);
  edit->addSeparator();
  edit->addAction(preferences);
  QMenu* view = w.menuBar()->addMenu(tr("&View"));
  view->addActions({show_chart, show_reading, show_job, show_procedure});
  view->addSeparator();
  view->addActions({zoom_in, zoom_out, reset_view, fit_temperature, previous_view, next_view});
  // Exactly one of these is checked, at first the first.
  const auto choices = [&w](QMenu* menu, const QList<QAction*>& actions) {
    auto* group = new QActionGroup(&w);
    for (QAction* action : actions) {
      action->setCheckable(true);
      group->addAction(action);
      menu->addAction(action);
    }
    actions.front()->setChecked(true);
  };
  QMenu* unit = view->addMenu(tr("&Temperature unit"));
  choices(unit, {unit_as_specified, unit_celsius, unit_fahrenheit});
  unit->addSeparator();
  both_units->setChecked(false);
  unit->addAction(both_units);
  choices(view->addMenu(tr("Ti&me axis")), {time_of_recorder, time_of_record, time_of_hold});
  view->addSeparator();
  view->addActions({previous_requirement, next_requirement, previous_finding, next_finding, next_pane});
  view->addSeparator();
  view->addActions({show_channels, show_lists, show_spread, show_rate, show_difference, show_required,
                    show_overview, full_screen});
  QMenu* measure = w.menuBar()->addMenu(tr("&Measure"));
  measure->addActions({cursor_a, cursor_b, clear_cursors, copy_between});
  QMenu* comparing = w.menuBar()->addMenu(tr("&Compare"));
  comparing->addActions({compare, stop_comparing});
  comparing->addSeparator();
  comparing->addAction(compare_settings);
  comparing->addSeparator();
  comparing->addAction(previous_records);
  QMenu* review = w.menuBar()->addMenu(tr("&Review"));
  review->addActions({previous_finding, next_finding, next_open_finding});
  review->addSeparator();
  review->addAction(people);
  review->addSeparator();
  review->addActions({open_review, save_review});
  QMenu* help = w.menuBar()->addMenu(tr("&Help"));
  help->addActions({manual, keys, cautions, about});

  auto* bar = new QToolBar(tr("Tools"), &w);
  bar->setObjectName(QStringLiteral("tools"));
  bar->setMovable(false);
  bar->addActions({open_log, open_procedure, open_job, reload});
  bar->addSeparator();
  bar->addActions({export_report});
  bar->addSeparator();
  bar->addActions({zoom_in, zoom_out, reset_view, fit_temperature});
  w.addToolBar(bar);
}

void WindowActions::enableFor(const Open& open) {
  for (QAction* action : {export_result, export_picture,
                          zoom_in,       zoom_out,
                          reset_view,    fit_temperature,
                          show_chart,    show_reading,
                          show_channels, show_lists,
                          next_pane,     previous_view,
                          next_view,     cursor_a,
                          cursor_b,      clear_cursors,
                          copy_between,  show_spread,
                          show_rate,     show_difference,
                          compare,       print,
                          print_preview, copy_chart,
                          show_overview, find})
    action->setEnabled(open.record);
  for (QAction* action : {next_requirement, previous_requirement, next_finding, previous_finding,
                          show_required, compare_settings})
    action->setEnabled(open.evaluated);
  for (QAction* action : {exclude, add_remark, new_job, export_report})
    action->setEnabled(open.record && !open.read_only);
  new_procedure->setEnabled(!open.read_only);
  close_job->setEnabled(open.job && !open.read_only);
  for (QAction* action : {reload, close_all}) action->setEnabled(open.anything);
}

}  // namespace soakwright::gui
