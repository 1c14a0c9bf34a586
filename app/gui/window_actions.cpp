// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/window_actions.h"

#include <QAction>
#include <QKeySequence>
#include <QMainWindow>
#include <QMenu>
#include <QMenuBar>
#include <QToolBar>

namespace soakwright::gui {
namespace {

QString tr(const char* text) { return QMainWindow::tr(text); }

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

WindowActions::WindowActions(QMainWindow& w)
    : open_log(make(w, tr("&Open log…"), QKeySequence::Open, tr("Open the log of a heat treatment"))),
      open_procedure(
          make(w, tr("Open &procedure…"), tr("Ctrl+P"), tr("Evaluate the record against a procedure"))),
      open_job(make(w, tr("Open &job…"), tr("Ctrl+J"),
                    tr("Open a job: what was heated and where each thermocouple sat"))),
      reload(make(w, tr("Re&load"), tr("F5"), tr("Reload files that changed on disk, and evaluate again"))),
      close_job(make(w, tr("Close j&ob"), {}, tr("Close the job; log and procedure stay open"))),
      close_all(make(w, tr("&Close all"), tr("Ctrl+W"), tr("Close log, procedure and job"))),
      export_report(make(w, tr("&Export report…"), tr("Ctrl+E"), tr("Write the report as PDF"))),
      export_result(make(w, tr("Export &result…"), tr("Ctrl+Shift+E"), tr("Write the result as JSON"))),
      export_picture(make(w, tr("Export &picture of the chart…"), tr("Ctrl+Shift+P"),
                          tr("Write the chart as it is shown as PNG"))),
      quit(make(w, tr("&Quit"), QKeySequence::Quit, tr("Quit Soakwright"))),
      zoom_in(make(w, tr("Zoom &in"), tr("Ctrl+]"), tr("Show less time"))),
      zoom_out(make(w, tr("Zoom &out"), tr("Ctrl+["), tr("Show more time"))),
      reset_view(make(w, tr("&Whole record"), tr("Ctrl+0"), tr("Show the whole record"))),
      fit_temperature(
          make(w, tr("&Fit temperature"), tr("Ctrl+F"), tr("Fit the temperature axis to what is in view"))),
      show_chart(make(w, tr("&Chart"), tr("Ctrl+1"), tr("Show the chart"))),
      show_reading(make(w, tr("&Import settings"), tr("Ctrl+2"), tr("Show how the file was read"))),
      show_channels(
          make_switch(w, tr("C&hannels"), tr("F7"), tr("Show or hide the channels beside the chart"))),
      show_lists(make_switch(w, tr("&Lists"), tr("F8"), tr("Show or hide the lists below the chart"))),
      next_pane(make(w, tr("&Next pane"), tr("F6"), tr("Move to the next pane"))),
      next_requirement(make(w, tr("Ne&xt requirement"), tr("Alt+Down"), tr("Choose the next requirement"))),
      previous_requirement(
          make(w, tr("Pre&vious requirement"), tr("Alt+Up"), tr("Choose the previous requirement"))),
      keys(make(w, tr("&Keyboard and mouse"), tr("F1"), tr("Keyboard and mouse"))),
      cautions(make(w, tr("&Cautions"), {}, tr("What a verdict does not say"))),
      about(make(w, tr("&About Soakwright"), {}, tr("Version, licence, cautions"))),
      recent(nullptr) {
  QMenu* file = w.menuBar()->addMenu(tr("&File"));
  file->addActions({open_log, open_procedure, open_job});
  recent = file->addMenu(tr("&Recent files"));
  file->addSeparator();
  file->addActions({reload, close_job, close_all});
  file->addSeparator();
  file->addActions({export_report, export_result, export_picture});
  file->addSeparator();
  file->addAction(quit);
  QMenu* view = w.menuBar()->addMenu(tr("&View"));
  view->addActions({show_chart, show_reading});
  view->addSeparator();
  view->addActions({zoom_in, zoom_out, reset_view, fit_temperature});
  view->addSeparator();
  view->addActions({previous_requirement, next_requirement, next_pane});
  view->addSeparator();
  view->addActions({show_channels, show_lists});
  QMenu* help = w.menuBar()->addMenu(tr("&Help"));
  help->addActions({keys, cautions, about});

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

void WindowActions::enableFor(bool record, bool evaluated, bool job, bool anything) {
  for (QAction* action : {export_report, export_result, export_picture, zoom_in, zoom_out, reset_view,
                          fit_temperature, show_chart, show_reading, show_channels, show_lists, next_pane})
    action->setEnabled(record);
  for (QAction* action : {next_requirement, previous_requirement}) action->setEnabled(evaluated);
  close_job->setEnabled(job);
  for (QAction* action : {reload, close_all}) action->setEnabled(anything);
}

}  // namespace soakwright::gui
