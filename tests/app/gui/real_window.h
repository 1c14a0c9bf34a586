// SPDX-License-Identifier: GPL-3.0-or-later
// The real window for a test: settings in a folder of its own, shown, and waited for.
#pragma once

#include <QTemporaryDir>
#include <QtTest>
#include <memory>

#include "app/gui/main_window.h"

namespace soakwright::gui {

class RealWindow {
 public:
  RealWindow() : memory(folder.filePath(QStringLiteral("gui.ini"))), window(memory) {
    window.setFolders({{QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/resources/rules")},
                       QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/sample-logs"),
                       QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/resources/manual")});
    window.resize(1280, 800);
    window.show();
  }

  /// Waits until nothing is being read. False where it takes a minute.
  [[nodiscard]] bool settled() {
    return QTest::qWaitFor([this] { return !window.session().busy(); }, 60'000);
  }
  bool open(const QStringList& paths) {
    window.session().openFiles(paths);
    return settled();
  }
  /// The part of that type, by its accessible name where there are several.
  template <typename T>
  [[nodiscard]] T* part(const QString& name = {}) const {
    for (T* found : window.findChildren<T*>())
      if (name.isEmpty() || found->accessibleName() == name) return found;
    return nullptr;
  }
  [[nodiscard]] QAction* action(const QString& text) const {
    for (QAction* found : window.findChildren<QAction*>())
      if (found->text().remove(u'&') == text) return found;
    return nullptr;
  }

  QTemporaryDir folder;
  SavedSettings memory;
  MainWindow window;
};

}  // namespace soakwright::gui
