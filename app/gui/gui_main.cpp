// SPDX-License-Identifier: GPL-3.0-or-later
// soakwright-gui [LOG] [PROCEDURE] [JOB], soakwright-gui REPORT: the window, with what is named opened.

#include <QApplication>
#include <QCommandLineParser>
#include <QIcon>
#include <csignal>

#include "app/gui/main_window.h"
#include "app/gui/saved_settings.h"

int main(int argc, char** argv) {
#ifndef _WIN32
  std::signal(SIGXFSZ,
              SIG_IGN);  // a limit on the size of files is a problem of the export, not the window's end
#endif
  QApplication application(argc, argv);
  QApplication::setApplicationName(QStringLiteral("soakwright-gui"));
  QApplication::setApplicationDisplayName(QStringLiteral("Soakwright"));
  QApplication::setApplicationVersion(QStringLiteral(SOAKWRIGHT_VERSION));
  QApplication::setDesktopFileName(QStringLiteral("soakwright"));
  QIcon icon;
  for (const int size : {32, 64, 128, 256})
    icon.addFile(QStringLiteral(":/soakwright/icons/soakwright-%1.png").arg(size));
  QApplication::setWindowIcon(icon);
  QCommandLineParser parser;
  parser.setApplicationDescription(
      QStringLiteral("Looks at the log of a weld heat treatment and holds it against a "
                     "procedure."));
  parser.addPositionalArgument(QStringLiteral("FILES"),
                               QStringLiteral("a log, a procedure, a job, in any order; or a report"),
                               QStringLiteral("[FILES...]"));
  parser.addHelpOption();
  parser.addVersionOption();
  parser.process(application);

  soakwright::gui::SavedSettings memory;
  soakwright::gui::MainWindow window(memory);
  window.show();
  window.openPaths(parser.positionalArguments());
  return QApplication::exec();
}
