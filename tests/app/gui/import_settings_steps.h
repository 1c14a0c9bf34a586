// SPDX-License-Identifier: GPL-3.0-or-later
// Steps on the import settings, as a person takes them: a box set, and what became of it waited for.
#pragma once

#include <QAbstractItemView>
#include <QComboBox>

#include "app/gui/panes/import_settings_pane.h"
#include "tests/app/gui/real_window.h"

namespace soakwright::gui {

/// Opens the box and takes the line, as by keyboard.
inline void take(QComboBox* box, int place) {
  QVERIFY(place >= 0);
  box->setFocus();
  box->showPopup();
  box->view()->setCurrentIndex(box->model()->index(place, 0));
  QTest::keyClick(box->view(), Qt::Key_Return);
}

/// A setting of the file, as the job writes it; null: as found.
inline void choose(RealWindow& real, const std::string& key, const char* value) {
  QComboBox* box = real.part<ImportSettingsPane>()->settings()->box(key);
  const int place = value ? box->findData(QString::fromLatin1(value)) : 0;
  QVERIFY2(place >= 0, value);
  take(box, place);
  QVERIFY(real.settled());
}

/// In the row of a column.
inline void chooseIn(RealWindow& real, int row, ColumnTable::Part part, const QString& value) {
  auto* box = qobject_cast<QComboBox*>(real.part<ImportSettingsPane>()->columns()->cellWidget(row, part));
  QVERIFY(box);
  const std::size_t before = real.window.session().wanted().size();
  take(box, box->findData(value));
  QTRY_VERIFY(real.window.session().wanted().size() > before);
  QVERIFY(real.settled());
}

/// Everything that was changed into the job at `path`, which is then read again.
inline void writeInto(RealWindow& real, const QString& path) {
  QSignalSpy written(&real.window, &MainWindow::exported);
  real.window.writeJob(path);
  QCOMPARE(written.count(), 1);
  QVERIFY(written[0][1].toBool());
  QTRY_VERIFY(real.window.session().wanted().empty());
  QVERIFY(real.settled());
}

inline const Reading& reading(RealWindow& real) {
  return real.window.session().open().analysis.record->reading;
}

}  // namespace soakwright::gui
