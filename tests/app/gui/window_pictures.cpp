// SPDX-License-Identifier: GPL-3.0-or-later
// window_picture_files FOLDER [ONLY]: a picture of every state of the window, taken off the screen. Started
// by tests/app/gui/pictures.

#include <QApplication>
#include <QStyleFactory>

#include "tests/app/gui/pictured_states.h"

using namespace soakwright::gui::pictured;

namespace {

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

}  // namespace

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
  QApplication::setPalette(dark_palette());
  dark_states(files);
  place_states(files, QStringLiteral("dark-"));
  channel_states(files, QStringLiteral("dark-"));
  report_states(files, QStringLiteral("dark-"));
  QApplication::setPalette(light);
  return 0;
}
