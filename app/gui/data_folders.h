// SPDX-License-Identifier: GPL-3.0-or-later
// Where the files are that come with the program: published rules, samples, the manual,
// modules.
#pragma once

#include <QString>
#include <QStringList>

namespace soakwright::gui {

struct DataFolders {
  QStringList rules;     ///< the program's own, then the user's
  QString samples;       ///< empty: not installed
  QString manual;        ///< likewise
  QString modules = {};  ///< of the signing module; empty: beside the program, or where modules are installed

  /// Beside the program, or under share once it is installed.
  static DataFolders installed();
};

/// The jobs of the samples, in the order of their folders: each is a whole case.
QStringList sample_jobs(const QString& samples);

}  // namespace soakwright::gui
