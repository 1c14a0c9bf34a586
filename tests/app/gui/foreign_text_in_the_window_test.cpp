// SPDX-License-Identifier: GPL-3.0-or-later
// Names and texts from files are shown as they are: no markup of theirs is followed, nothing is loaded for
// them.
#include <QAbstractItemView>
#include <QFileInfo>
#include <QHeaderView>
#include <QLabel>
#include <QTabWidget>
#include <QTextBrowser>

#include <sys/stat.h>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/panes/channel_pane.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/parts/summary_bar.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

namespace {

const QString kMarkup = QStringLiteral("<span style='font-size:26pt;color:#1f6f3f'><b>Met</b></span>");
const QString kImage = QStringLiteral("<img src='/dev/zero'>");

}  // namespace

class ForeignTextInTheWindow : public QObject {
  Q_OBJECT

 private slots:
  void init() {
    QVERIFY(folder_.isValid());
    const QString log = made::log(folder_.path(), QStringLiteral("log.csv"), {});
    QFile file(log);
    QVERIFY(file.open(QIODevice::ReadWrite));
    QByteArray bytes = file.readAll();
    QVERIFY(bytes.contains("TC1"));
    bytes.replace("TC1", QByteArray("TC1 ") + kImage.toUtf8());
    bytes.replace("TC2", QByteArray("TC2 \xE2\x80\xAE"
                                    "EVIL"));
    file.seek(0);
    file.write(bytes);
    file.close();
    const QString procedure = made::procedure(folder_.path(), QStringLiteral("p.toml"), 150, 90);
    job_ = made::write(
        folder_.path(), QStringLiteral("job.toml"),
        QStringLiteral("soakwright = \"job 1\"\nwork = \"%1\"\nlog = \"%2\"\nprocedure = \"%3\"\n")
            .arg(kMarkup, QFileInfo(log).fileName(), QFileInfo(procedure).fileName()));
  }

  void labels_show_markup_as_text() {
    RealWindow real;
    real.window.resize(3000, 800);
    QVERIFY(real.open({job_}));
    QVERIFY(real.window.session().open().has_record());
    int plain = 0;
    for (const QLabel* label : real.window.findChildren<QLabel*>()) {
      if (!label->text().contains(kMarkup)) continue;
      QCOMPARE(label->textFormat(), Qt::PlainText);
      ++plain;
    }
    QVERIFY(plain >= 1);  // the summary bar's subject
    // The pointer's reading names the hottest and the coldest channel.
    auto* chart = real.part<ChartPane>();
    chart->setFocus();
    QTest::keyClick(chart, Qt::Key_Period);
    int named = 0;
    for (const QLabel* label : real.part<ChannelPane>()->findChildren<QLabel*>()) {
      if (!label->text().contains(QStringLiteral("TC"))) continue;
      QCOMPARE(label->textFormat(), Qt::PlainText);
      ++named;
    }
    QCOMPARE(named, 2);
  }

  void tool_tips_show_markup_as_text() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    int tips = 0;
    for (const QAbstractItemView* view : real.window.findChildren<QAbstractItemView*>()) {
      const QAbstractItemModel* model = view->model();
      if (model == nullptr) continue;
      for (int row = 0; row < model->rowCount(); ++row)
        for (int column = 0; column < model->columnCount(); ++column) {
          const QString tip = model->index(row, column).data(Qt::ToolTipRole).toString();
          QVERIFY2(!tip.contains(QStringLiteral("<img")) && !tip.contains(QStringLiteral("<span")),
                   qPrintable(tip));
          if (tip.contains(QStringLiteral("&lt;img"))) ++tips;
        }
    }
    QVERIFY(tips >= 1);
  }

  void nothing_that_turns_the_direction_of_writing_is_left() {
    RealWindow real;
    QVERIFY(real.open({job_}));
    const auto clean = [](const QString& text) { return !text.contains(QChar(0x202E)); };
    int seen = 0;
    for (const QAbstractItemView* view : real.window.findChildren<QAbstractItemView*>()) {
      const QAbstractItemModel* model = view->model();
      // A header's cells are those of its table, which is looked at itself.
      if (qobject_cast<const QHeaderView*>(view) != nullptr) continue;
      // These two show the file as it is, a cell for each name.
      if (model == nullptr || view->accessibleName() == QStringLiteral("First lines of the file") ||
          view->accessibleName() == QStringLiteral("Columns of the file"))
        continue;
      for (int row = 0; row < model->rowCount(); ++row)
        for (int column = 0; column < model->columnCount(); ++column) {
          const QString text = model->index(row, column).data().toString();
          QVERIFY2(clean(text), qPrintable(view->accessibleName() + QStringLiteral(": ") + text));
          if (text.contains(QStringLiteral("EVIL"))) ++seen;
        }
    }
    QVERIFY(seen >= 1);
    for (const QTextBrowser* text : real.window.findChildren<QTextBrowser*>())
      QVERIFY(clean(text->toPlainText()));
  }

  void a_pipe_is_refused_and_does_not_stop_the_window() {
    RealWindow real;
    const QString pipe = folder_.filePath(QStringLiteral("pipe.toml"));
    QCOMPARE(mkfifo(pipe.toLocal8Bit().constData(), 0600), 0);
    QVERIFY(real.open({pipe}));
    QVERIFY(!real.window.session().open().has_record());
    QFile::remove(pipe);
  }

 private:
  QTemporaryDir folder_;
  QString job_;
};

QTEST_MAIN(ForeignTextInTheWindow)
#include "foreign_text_in_the_window_test.moc"
