// SPDX-License-Identifier: GPL-3.0-or-later
// window_picture_files FOLDER [ONLY]: a picture of every state of the window, taken off the screen. Started
// by tests/app/gui/pictures.

#include <QApplication>
#include <QStyleFactory>

#include "app/gui/looks.h"
#include "tests/app/gui/pictured_states.h"

using namespace soakwright::gui::pictured;

int main(int argc, char** argv) {
  QApplication application(argc, argv);
  if (argc < 2) return 64;
  const QDir folder(QString::fromLocal8Bit(argv[1]));
  folder.mkpath(QStringLiteral("."));
  take_into(folder, argc > 2 ? argv[2] : "");
  QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
  QTemporaryDir made_here;
  const Files files = make_files(made_here.path());
  verdict_states(files);
  chart_states(files);
  import_states(files);
  editor_states(files);
  comparing_states(files);
  weld_states(files);
  place_states(files, {});
  channel_states(files, {});
  report_states(files, {});
  const QPalette light = QApplication::palette();
  QApplication::setPalette(soakwright::gui::dark_palette());
  dark_states(files);
  place_states(files, QStringLiteral("dark-"));
  channel_states(files, QStringLiteral("dark-"));
  report_states(files, QStringLiteral("dark-"));
  QApplication::setPalette(light);
  return 0;
}
