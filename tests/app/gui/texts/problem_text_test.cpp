// SPDX-License-Identifier: GPL-3.0-or-later
// The window has no command line: no text that a person meets there names an option of it.

#include "app/gui/texts/problem_text.h"

#include <QDirIterator>
#include <QPlainTextEdit>
#include <QRegularExpression>

#include "app/gui/parts/error_bar.h"
#include "app/pdf/shown_text.h"
#include "core/problems/command_line_problems.h"
#include "tests/app/gui/made_files.h"
#include "tests/app/gui/real_window.h"

using namespace soakwright;
using namespace soakwright::gui;

namespace {

const QString kSources = QStringLiteral(SOAKWRIGHT_SOURCE_DIR "/");

QString text_of(const QString& path) {
  QFile file(path);
  return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

/// Literals of code, with `--option` in them.
QStringList options_in(const QString& code) {
  static const QRegularExpression literal(QStringLiteral("\"(?:[^\"\\\\]|\\\\.)*\""));
  static const QRegularExpression option(QStringLiteral("--[a-z]+(?:-[a-z]+)*"));
  QStringList found;
  for (const QString& line : code.split(u'\n')) {
    if (line.trimmed().startsWith(u"//")) continue;
    for (auto at = literal.globalMatch(line); at.hasNext();)
      for (auto one = option.globalMatch(at.next().captured()); one.hasNext();)
        found.append(one.next().captured());
  }
  found.removeDuplicates();
  return found;
}

bool names_command_line(const QString& text) {
  return text.contains(QStringLiteral("--")) || text.contains(QStringLiteral("`soakwright "));
}

}  // namespace

class ProblemTextTest : public QObject {
  Q_OBJECT

 private slots:
  void each_help_of_the_command_line_has_words_of_the_window() {
    for (int i = 0; i <= static_cast<int>(kLastCommandLineHelp); ++i) {
      const auto help = static_cast<CommandLineHelp>(i);
      const Problem problem = helped_by({ProblemKind::bad_input, "d3.pdf", 0, "found", {}}, help);
      QVERIFY(problem.help == command_line_words(help));
      const QString shown = problem_text(problem);
      QVERIFY2(shown.startsWith(QStringLiteral("d3.pdf: found; ")) && !names_command_line(shown) &&
                   shown != pdf::shown_text(problem.text()),
               qPrintable(shown));
    }
  }

  void other_help_is_shown_as_it_is() {
    const Problem problem{ProblemKind::bad_input, "d3.csv", 7, "found --key", "look at the log"};
    QCOMPARE(problem_text(problem), QString::fromStdString(problem.text()));
  }

  void no_other_text_that_reaches_the_window_names_an_option() {
    // Drafting has fields for its options, see below; the others are of commands that the window has not.
    const QStringList apart{QStringLiteral("core/problems/command_line_problems.cpp"),
                            QStringLiteral("core/procedure/rules/rule_problems.cpp"),
                            QStringLiteral("core/procedure/job/import_texts.cpp"),
                            QStringLiteral("core/procedure/job/import_problems.cpp"),
                            QStringLiteral("core/batch/batch_problems.cpp"),
                            QStringLiteral("app/pdf/pdf_module.cpp")};
    int looked_at = 0;
    for (const char* folder : {"core", "app/signing", "app/evidence", "app/pdf", "app/modules", "app/gui"})
      for (QDirIterator in(kSources + QLatin1String(folder), {QStringLiteral("*.cpp")}, QDir::Files,
                           QDirIterator::Subdirectories);
           in.hasNext();) {
        const QString path = in.next();
        const QString name = path.mid(kSources.size());
        ++looked_at;
        const QStringList found = options_in(text_of(path));
        if (!apart.contains(name) && name != u"app/gui/texts/problem_text.cpp")
          QVERIFY2(found.isEmpty(), qPrintable(name + QStringLiteral(": ") + found.join(u' ')));
        if (apart.contains(name)) QVERIFY2(!found.isEmpty() || name.contains(u"import_"), qPrintable(name));
      }
    QVERIFY(looked_at > 300);
  }

  void drafting_names_its_fields() {
    const QStringList options =
        options_in(text_of(kSources + QStringLiteral("core/procedure/rules/rule_problems.cpp")));
    QVERIFY(options.size() >= 5);
    for (const QString& option : options) {
      const QString shown = drafting_text({ProblemKind::usage, {}, 0, "found", option.toStdString() + " 1"});
      QVERIFY2(!shown.contains(u'-'), qPrintable(shown));
    }
  }

  void dates_that_can_be_read_in_two_ways_are_settled_in_the_window() {
    QTemporaryDir files;
    const QString log = made::write(files.path(), QStringLiteral("d3.csv"),
                                    QStringLiteral("Time,TC1 (°C)\n01/02/2031 10:00:00,20\n"
                                                   "01/02/2031 10:00:30,21\n01/02/2031 10:01:00,22\n"));
    RealWindow real;
    real.window.openPaths({log});
    QVERIFY(real.settled());
    QStringList shown = real.part<ErrorBar>()->texts();
    for (const auto* text : real.window.findChildren<QPlainTextEdit*>()) shown.append(text->toPlainText());
    for (const auto* label : real.window.findChildren<QLabel*>()) shown.append(label->text());
    const QString all = shown.join(u'\n');
    QVERIFY2(all.contains(QStringLiteral("choose the order of the dates in the import settings")),
             qPrintable(all));
    QVERIFY2(!all.contains(QStringLiteral("--dates")), qPrintable(all));
  }
};

QTEST_MAIN(ProblemTextTest)
#include "problem_text_test.moc"
