// SPDX-License-Identifier: GPL-3.0-or-later
// How a state is pictured, and steps that several of them take.

#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>
#include <cstdio>

#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/import_settings_pane.h"
#include "app/gui/panes/job_pane.h"
#include "tests/app/gui/pictured_states.h"

namespace soakwright::gui::pictured {
namespace {

QDir into;
std::string part_of_name;

void take(MainWindow& window, const QString& name) {
  QTest::qWait(250);
  window.screen()->grabWindow(window.winId()).save(into.filePath(name + QStringLiteral(".png")));
  std::printf("%s\n", qPrintable(name));
}

}  // namespace

void take_into(const QDir& folder, const std::string& wanted) {
  into = folder;
  part_of_name = wanted;
}

bool is_wanted(const QString& name) { return name.toStdString().find(part_of_name) != std::string::npos; }

void keep(QWidget& widget, const QString& name) {
  QTest::qWait(50);
  widget.grab().save(into.filePath(name + QStringLiteral(".png")));
  std::printf("%s\n", qPrintable(name));
}

void state(const QString& name, const std::function<void(RealWindow&)>& lead) {
  if (!is_wanted(name)) return;
  RealWindow real;
  lead(real);
  take(real.window, name);
}

/// Chooses the requirement with that id.
bool choose(RealWindow& real, const std::string& id) {
  const Report* report = real.window.session().report();
  for (std::size_t i = 0; i < report->requirements.size(); ++i)
    if (report->requirements[i].id == id) {
      real.window.session().select({Selection::Kind::requirement, i});
      return true;
    }
  std::fprintf(stderr, "no requirement %s\n", id.c_str());
  return false;
}

void change_by_hand(RealWindow& r, const Files& f) {
  r.open({f.dip, f.procedure});
  r.action(QStringLiteral("Import settings"))->trigger();
  r.window.session().change({ColumnNames{{"3"}}, "role", "air"});
  if (r.settled()) r.window.session().change({std::nullopt, "decimal", "."});
  if (r.settled()) r.window.session().change({std::nullopt, "delimiter", ";"});
  if (!r.settled()) std::fprintf(stderr, "not settled\n");
}

void show_columns(RealWindow& r, const Files& f) {
  r.open({f.lost});
  r.part<ImportSettingsPane>()->settings()->box("time_column")->showPopup();
}

void show_procedure(RealWindow& r, const Files& f) {
  r.open({f.dip, f.procedure});
  r.action(QStringLiteral("Procedure"))->trigger();
}

void show_heat(RealWindow& r, const Files& f) {
  r.open({f.heated});
  r.action(QStringLiteral("Job"))->trigger();
  QTest::qWait(100);
  for (auto* area : r.part<JobPane>()->findChildren<QScrollArea*>())
    area->verticalScrollBar()->setValue(area->verticalScrollBar()->maximum());
}

void lay_over(RealWindow& r, const Files& f) {
  r.open({f.dip, f.procedure});
  r.window.compareWith(f.fast);
  while (r.window.otherRecord().busy()) QTest::qWait(10);
}

}  // namespace soakwright::gui::pictured
