// SPDX-License-Identifier: GPL-3.0-or-later
// Import settings, procedure and job.

#include <QLineEdit>
#include <QScrollArea>
#include <QScrollBar>
#include <cstdio>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/forms/stage_card.h"
#include "app/gui/panes/job_pane.h"
#include "app/gui/panes/procedure_pane.h"
#include "app/gui/parts/new_procedure_dialog.h"
#include "tests/app/gui/pictured_states.h"

namespace soakwright::gui::pictured {
namespace {

/// Half way through a drag of the range's upper edge.
void drag_a_limit(RealWindow& r, const Files& f) {
  r.open({f.dip, f.procedure});
  QTest::qWait(100);
  QWidget* plot = r.part<ChartPane>()->findChild<QWidget*>();
  for (int y = 0; y < plot->height(); ++y) {
    const QPoint at(plot->width() / 2, y);
    QTest::mouseMove(plot, at);
    if (!plot->toolTip().contains(QStringLiteral("High limit"))) continue;
    QTest::mousePress(plot, Qt::LeftButton, {}, at);
    for (int up = 2; up <= 16; up += 2) QTest::mouseMove(plot, at - QPoint(0, up));
    return;
  }
}

}  // namespace

void import_states(const Files& f) {
  state(QStringLiteral("12-import-settings"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    r.action(QStringLiteral("Import settings"))->trigger();
  });
  state(QStringLiteral("30-import-refused-log"), [&](RealWindow& r) { r.open({f.either}); });
  state(QStringLiteral("31-import-changed-by-hand"), [&](RealWindow& r) { change_by_hand(r, f); });
  state(QStringLiteral("32-import-emf-column"), [&](RealWindow& r) {
    r.open({f.emf});
    r.action(QStringLiteral("Import settings"))->trigger();
    r.window.session().change({ColumnNames{{"3"}}, "cold_junction", "Terminals"});
    if (r.settled()) r.window.session().change({ColumnNames{{"3"}}, "type", "N"});
    if (!r.settled()) std::fprintf(stderr, "not settled\n");
  });
  state(QStringLiteral("33-import-small-window"), [&](RealWindow& r) {
    r.window.resize(900, 600);
    change_by_hand(r, f);
  });
  state(QStringLiteral("34-import-time-column"), [&](RealWindow& r) { show_columns(r, f); });
}

void editor_states(const Files& f) {
  state(QStringLiteral("40-procedure"), [&](RealWindow& r) { show_procedure(r, f); });
  state(QStringLiteral("41-procedure-wrong"), [&](RealWindow& r) {
    show_procedure(r, f);
    QLineEdit* high = r.part<ProcedurePane>()->stages()[1]->form()->line("high");
    high->setText(QStringLiteral("580"));
    QTest::keyClick(high, Qt::Key_Return);
    if (!r.settled()) std::fprintf(stderr, "not settled\n");
  });
  state(QStringLiteral("42-new-procedure"), [&](RealWindow& r) {
    r.open({f.clean});
    auto* dialog = new NewProcedureDialog(r.window.session().open(),
                                          {{QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/resources/rules")},
                                           QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/sample-logs"),
                                           {}},
                                          &r.window);
    dialog->open();
  });
  state(QStringLiteral("43-job"), [&](RealWindow& r) {
    r.open({f.job});
    r.action(QStringLiteral("Job"))->trigger();
  });
  state(QStringLiteral("44-job-heat"), [&](RealWindow& r) { show_heat(r, f); });
  state(QStringLiteral("45-job-small-window"), [&](RealWindow& r) {
    r.window.resize(900, 600);
    show_heat(r, f);
  });
}

void place_states(const Files& f, const QString& dark) {
  const auto show = [&](RealWindow& r) {
    r.open({f.placed});
    r.action(QStringLiteral("Job"))->trigger();
  };
  state(QStringLiteral("53-%1job-sketch").arg(dark), show);
  state(QStringLiteral("54-%1job-sketch-small").arg(dark), [&](RealWindow& r) {
    r.window.resize(900, 600);
    show(r);
  });
  state(QStringLiteral("55-%1limit-dragged").arg(dark), [&](RealWindow& r) { drag_a_limit(r, f); });
  state(QStringLiteral("57-%1rate-pane").arg(dark), [&](RealWindow& r) {
    r.action(QStringLiteral("Rate pane"))->setChecked(true);
    lay_over(r, f);
    QTest::qWait(500);
  });
}

void weld_states(const Files& f) {
  state(QStringLiteral("58-job-welds"), [&](RealWindow& r) {
    r.open({f.welds});
    r.action(QStringLiteral("Job"))->trigger();
    QTest::qWait(100);
    for (auto* area : r.part<JobPane>()->findChildren<QScrollArea*>())
      area->verticalScrollBar()->setValue(area->verticalScrollBar()->maximum() / 3);
  });
}

}  // namespace soakwright::gui::pictured
