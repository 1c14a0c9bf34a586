// SPDX-License-Identifier: GPL-3.0-or-later
// The logs, procedures, jobs and the report that the pictured states show.

#include <QFile>

#include "tests/app/gui/made_files.h"
#include "tests/app/gui/pictured_states.h"
#include "tests/app/gui/report_steps.h"

namespace soakwright::gui::pictured {
namespace {

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

}  // namespace

Files make_files(const QString& folder) {
  Files files;
  make_logs(files, folder);
  make_odd_logs(files, folder);
  make_procedures_and_jobs(files, folder);
  files.report = folder + QStringLiteral("/d3-n2.pdf");
  SigningWindow real;
  if (!real.exported(files.job, files.report)) qFatal("no report");
  return files;
}

}  // namespace soakwright::gui::pictured
