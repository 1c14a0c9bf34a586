// SPDX-License-Identifier: GPL-3.0-or-later
// window_picture_files FOLDER: a picture of every state of the window, taken off the screen. Started by
// tests/app/gui/pictures.

#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QLineEdit>
#include <QPixmap>
#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>
#include <QStyleFactory>
#include <QTabWidget>
#include <QtTest>
#include <cstdio>
#include <functional>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/detail_panel.h"
#include "app/gui/panes/forms/key_form.h"
#include "app/gui/panes/forms/stage_card.h"
#include "app/gui/panes/import_settings_pane.h"
#include "app/gui/panes/job_pane.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/panes/procedure_pane.h"
#include "app/gui/panes/settings_comparison.h"
#include "app/gui/parts/new_procedure_dialog.h"
#include "app/gui/texts/help_text.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

namespace {

QDir folder;

void take(MainWindow& window, const QString& name) {
  QTest::qWait(250);
  window.screen()->grabWindow(window.winId()).save(folder.filePath(name + QStringLiteral(".png")));
  std::printf("%s\n", qPrintable(name));
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

QPalette dark_palette() {
  QPalette p;
  const QColor ground(0x1d, 0x21, 0x26);
  const QColor raised(0x2a, 0x2f, 0x36);
  const QColor ink(0xe6, 0xe9, 0xec);
  p.setColor(QPalette::Window, raised);
  p.setColor(QPalette::WindowText, ink);
  p.setColor(QPalette::Base, ground);
  p.setColor(QPalette::AlternateBase, QColor(0x22, 0x27, 0x2d));
  p.setColor(QPalette::Text, ink);
  p.setColor(QPalette::PlaceholderText, QColor(0x9a, 0xa2, 0xaa));
  p.setColor(QPalette::Button, raised);
  p.setColor(QPalette::ButtonText, ink);
  p.setColor(QPalette::ToolTipBase, raised);
  p.setColor(QPalette::ToolTipText, ink);
  p.setColor(QPalette::Highlight, QColor(0x3d, 0x6f, 0x9e));
  p.setColor(QPalette::HighlightedText, Qt::white);
  for (const QPalette::ColorRole role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    p.setColor(QPalette::Disabled, role, QColor(0x70, 0x77, 0x80));
  p.setColor(QPalette::Link, QColor(0x8f, 0xc1, 0xf0));
  return p;
}

std::string wanted;  ///< a part of the names of the states that are wanted; empty: all

void state(const QString& name, const std::function<void(RealWindow&)>& lead) {
  if (!wanted.empty() && name.toStdString().find(wanted) == std::string::npos) return;
  RealWindow real;
  lead(real);
  take(real.window, name);
}

struct Files {
  QString clean, dip, many, large, cut, fast, either, emf, lost;  ///< logs
  QString procedure, strict, bad, job, heated, placed, welds;
};

void make_logs(Files& f, const QString& at) {
  made::Run dipped;
  dipped.dip = made::Run::Dip{};
  dipped.set_point = true;
  f.clean = made::log(at, QStringLiteral("d3-n2.csv"), {});
  f.dip = made::log(at, QStringLiteral("d3-n3.csv"), dipped);
  made::Run day;
  day.channels = 24;
  day.interval_s = 5;
  day.heating = 70;
  day.hold_h = 4;
  day.cooling = 80;
  day.until_h = 24;
  f.many = made::log(at, QStringLiteral("d3-all-seams.csv"), day);
  day.interval_s = 1;
  f.large = made::log(at, QStringLiteral("d3-day.csv"), day);
  QFile whole(f.clean);
  if (!whole.open(QIODevice::ReadOnly)) qFatal("no log");
  const QByteArray lines = whole.readAll();
  f.cut = made::write(at, QStringLiteral("d3-n4-cut.csv"),
                      QString::fromUtf8(lines.left(lines.size() * 52 / 100)).section(u'\n', 0, -2) + u'\n');
  made::Run faster;
  faster.heating = 125;
  f.fast = made::log(at, QStringLiteral("d3-n8.csv"), faster);
}

void make_odd_logs(Files& f, const QString& at) {
  f.either = made::write(
      at, QStringLiteral("d3-n5.csv"),
      QStringLiteral("Recorder: Port Ellery bay 2\nTime,TC1 (°C),TC2 (°C)\n02/04/2031 06:00,20.1,20.4\n"
                     "02/04/2031 06:01,21.3,21.2\n02/04/2031 06:02,22.0,22.1\n"));
  f.emf = made::write(
      at, QStringLiteral("d3-n6-emf.csv"),
      QStringLiteral("Time,TC1 (°C),TC2 (mV),Terminals (°C),Output (%)\n06:00:00,20.1,0.10,22.8,40\n"
                     "06:01:00,21.3,0.15,22.9,41\n06:02:00,22.0,0.20,22.9,41\n"));
  f.lost = made::write(at, QStringLiteral("d3-n7-no-time.csv"),
                       QStringLiteral("TC1 (°C);TC2 (°C);TC3 (°C);TC4 (°C);TC5 (°C);TC6 (°C);"
                                      "TC7 (°C);TC8 (°C);TC9 (°C);Minutes run\n") +
                           QStringLiteral("20;20;20;20;20;20;20;20;20;0\n").repeated(9));
}

void make_procedures_and_jobs(Files& f, const QString& at) {
  f.procedure = made::procedure(at, QStringLiteral("htp-021.toml"), 140, 100);
  f.strict = made::procedure(at, QStringLiteral("htp-022.toml"), 100, 100);
  f.job = made::job(at, QStringLiteral("d3-n2.toml"), QStringLiteral("d3-n2.csv"),
                    QStringLiteral("htp-021.toml"));
  QFile of_job(f.job);
  if (!of_job.open(QIODevice::ReadOnly)) qFatal("no job");
  f.heated = made::write(
      at, QStringLiteral("d3-n2-heat.toml"),
      QString::fromUtf8(of_job.readAll()) +
          QStringLiteral("\n[composition]\nC = 0.18\nSi = 0.3\nMn = 1.2\n\n[[band]]\ndiameter = \"508 mm\"\n"
                         "wall = \"38 mm\"\nsoak_band = \"150 mm\"\nheated_band = \"500 mm\"\n\n[qualified]\n"
                         "parameter = 18.6\nsource = \"PQR 14\"\n\n[hydrogen]\nshape = \"plate\"\n"
                         "thickness = \"38 mm\"\ndiffusivity = \"Coe and Moreton 1969\"\n"));
  of_job.seek(0);
  QString placed = QString::fromUtf8(of_job.readAll());
  const char* const angles[] = {"0", "90", "200"};
  for (int i = 0; i < 3; ++i)
    placed.replace(QStringLiteral("column = \"TC%1\"\n").arg(i + 1),
                   QStringLiteral("column = \"TC%1\"\nposition = \"%2 mm\"\nangle = \"%3 deg\"\n")
                       .arg(i + 1)
                       .arg(150 * i)
                       .arg(QLatin1String(angles[i])));
  placed += QStringLiteral(
      "\n[[band]]\ndiameter = \"508 mm\"\nwall = \"38 mm\"\nsoak_band = \"300 mm\"\n"
      "heated_band = \"600 mm\"\ncentre = \"150 mm\"\n");
  f.placed = made::write(at, QStringLiteral("d3-n2-placed.toml"), placed);
  of_job.seek(0);
  f.welds = made::write(at, QStringLiteral("d3-two-welds.toml"),
                        QString::fromUtf8(of_job.readAll()).remove(QStringLiteral("weld = \"W-117\"\n")) +
                            QStringLiteral("\n[[weld]]\nnumber = \"W-117\"\nthickness = \"38 mm\"\n"
                                           "composition = { C = 0.18, Mn = 1.2 }\n\n"
                                           "[[weld]]\nnumber = \"W-118\"\nthickness = \"45 mm\"\n"));
  f.bad =
      made::write(at, QStringLiteral("htp-bad.toml"),
                  QStringLiteral("soakwright = \"procedure 1\"\nnumber = \"X\"\nunit = \"C\"\ncolour = 3\n"
                                 "[[stage]]\nkind = \"hold\"\nlow = 620\nhigh = 590\ntime_min = \"1 h\"\n"));
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

void verdict_states(const Files& f) {
  state(QStringLiteral("01-empty"), [](RealWindow&) {});
  state(QStringLiteral("02-waiting-for-a-log"), [&](RealWindow& r) { r.open({f.procedure}); });
  state(QStringLiteral("03-loading"), [&](RealWindow& r) {
    r.window.session().openFiles({f.large, f.procedure});
    QTest::qWait(60);
    for (int i = 0; i < 40 && r.window.session().busy(); ++i) QTest::qWait(5);
  });
  state(QStringLiteral("04-log-alone"), [&](RealWindow& r) { r.open({f.clean}); });
  state(QStringLiteral("05-met"), [&](RealWindow& r) { r.open({f.job}); });
  state(QStringLiteral("06-not-met-rate-chosen"), [&](RealWindow& r) {
    r.open({f.clean, f.strict});
    choose(r, "stage-1.heating-rate");
  });
  state(QStringLiteral("07-not-met-hold-chosen"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    choose(r, "stage-2.hold-time");
  });
  state(QStringLiteral("08-spread-chosen"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    choose(r, "stage-2.spread");
  });
  state(QStringLiteral("09-finding-chosen"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    r.window.session().select({Selection::Kind::finding, 0});
  });
  state(QStringLiteral("10-inconclusive"), [&](RealWindow& r) {
    r.open({f.cut, f.procedure});
    choose(r, "stage-2.hold-time");
  });
  state(QStringLiteral("11-refused"), [&](RealWindow& r) {
    r.open({f.job});
    r.open({f.bad});
  });
}

void chart_states(const Files& f) {
  state(QStringLiteral("13-hidden-channels"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    r.window.session().setVisible(0, false);
    r.window.session().setVisible(2, false);
    r.part<ChartPane>()->stepPointer(0);
  });
  state(QStringLiteral("14-24-channels"), [&](RealWindow& r) {
    r.open({f.many, f.procedure});
    r.part<ChartPane>()->stepPointer(0);
  });
  state(QStringLiteral("15-24-channels-rate"), [&](RealWindow& r) {
    r.open({f.many, f.procedure});
    choose(r, "stage-1.heating-rate");
  });
  state(QStringLiteral("16-small-window"), [&](RealWindow& r) {
    r.window.resize(900, 600);
    r.open({f.dip, f.procedure});
    choose(r, "stage-2.excursion-time");
  });
  state(QStringLiteral("17-keys"), [&](RealWindow& r) {
    r.open({f.job});
    show_text(&r.window, QStringLiteral("Keyboard and mouse"), keys_text());
  });
  state(QStringLiteral("18-guarded-budget"), [&](RealWindow& r) {
    r.open({QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-117-stress-relief/job-guarded.toml")});
    choose(r, "stage-2.over-temperature");
    QScrollBar* down = r.part<DetailPanel>()->verticalScrollBar();
    down->setValue(down->maximum() * 2 / 5);
  });
  state(QStringLiteral("49-small-screen"), [&](RealWindow& r) {
    r.window.resize(1024, 700);
    r.open({f.dip, f.procedure});
    choose(r, "stage-2.hold-time");
  });
}

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

void show_preview(RealWindow& r, const Files& f) {
  r.open({f.job});
  QTimer::singleShot(3000, qApp, [] {
    QWidget* dialog = QApplication::activeModalWidget();
    if (!dialog) return;
    dialog->grab().save(folder.filePath(QStringLiteral("56-print-preview.png")));
    dialog->close();
  });
  r.action(QStringLiteral("Print preview…"))->trigger();
}

void paper_and_weld_states(const Files& f) {
  state(QStringLiteral("56-print-preview-closed"), [&](RealWindow& r) { show_preview(r, f); });
  state(QStringLiteral("58-job-welds"), [&](RealWindow& r) {
    r.open({f.welds});
    r.action(QStringLiteral("Job"))->trigger();
    QTest::qWait(100);
    for (auto* area : r.part<JobPane>()->findChildren<QScrollArea*>())
      area->verticalScrollBar()->setValue(area->verticalScrollBar()->maximum() / 3);
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

void comparing_states(const Files& f) {
  state(QStringLiteral("46-deviations"), [&](RealWindow& r) {
    r.open({QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/sample-logs/w-118-late-and-dipping/job.toml")});
    auto* list = r.part<ListPane>(QStringLiteral("Deviations"));
    qobject_cast<QTabWidget*>(list->parentWidget()->parentWidget())->setCurrentWidget(list);
  });
  state(QStringLiteral("47-another-record"), [&](RealWindow& r) { lay_over(r, f); });
  state(QStringLiteral("48-other-settings"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    r.action(QStringLiteral("With other evaluation settings…"))->trigger();
    QLineEdit* allowed = r.part<SettingsComparison>()->settings()->line("excursion_allowed");
    allowed->setText(QStringLiteral("15 min"));
    QTest::keyClick(allowed, Qt::Key_Return);
    while (r.part<SettingsComparison>()->busy()) QTest::qWait(10);
  });
}

void dark_states(const Files& f) {
  state(QStringLiteral("20-dark-met"), [&](RealWindow& r) { r.open({f.job}); });
  state(QStringLiteral("21-dark-hold-chosen"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    choose(r, "stage-2.hold-time");
  });
  state(QStringLiteral("22-dark-import-settings"), [&](RealWindow& r) {
    r.open({f.dip, f.procedure});
    r.action(QStringLiteral("Import settings"))->trigger();
  });
  state(QStringLiteral("23-dark-import-refused-log"), [&](RealWindow& r) { r.open({f.either}); });
  state(QStringLiteral("24-dark-import-changed"), [&](RealWindow& r) { change_by_hand(r, f); });
  state(QStringLiteral("25-dark-import-time-column"), [&](RealWindow& r) { show_columns(r, f); });
  state(QStringLiteral("26-dark-empty"), [](RealWindow&) {});
  state(QStringLiteral("27-dark-refused"), [&](RealWindow& r) {
    r.open({f.job});
    r.open({f.bad});
  });
  state(QStringLiteral("50-dark-procedure"), [&](RealWindow& r) { show_procedure(r, f); });
  state(QStringLiteral("51-dark-job-heat"), [&](RealWindow& r) { show_heat(r, f); });
  state(QStringLiteral("52-dark-another-record"), [&](RealWindow& r) { lay_over(r, f); });
  state(QStringLiteral("28-dark-channels"), [&](RealWindow& r) { r.open({f.many, f.procedure}); });
}

}  // namespace

int main(int argc, char** argv) {
  QApplication application(argc, argv);
  if (argc < 2) return 64;
  folder = QDir(QString::fromLocal8Bit(argv[1]));
  folder.mkpath(QStringLiteral("."));
  if (argc > 2) wanted = argv[2];
  QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
  QTemporaryDir made_here;
  Files files;
  make_logs(files, made_here.path());
  make_odd_logs(files, made_here.path());
  make_procedures_and_jobs(files, made_here.path());
  verdict_states(files);
  chart_states(files);
  import_states(files);
  editor_states(files);
  comparing_states(files);
  paper_and_weld_states(files);
  place_states(files, {});
  const QPalette light = QApplication::palette();
  QApplication::setPalette(dark_palette());
  dark_states(files);
  place_states(files, QStringLiteral("dark-"));
  QApplication::setPalette(light);
  return 0;
}
