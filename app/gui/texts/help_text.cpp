// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/texts/help_text.h"

#include <QDialog>
#include <QDialogButtonBox>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "app/gui/texts/window_text.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

QString list_of(const QStringList& lines) {
  QString html = QStringLiteral("<ul>");
  for (const QString& line : lines) html += QStringLiteral("<li>%1</li>").arg(line);
  return html + QStringLiteral("</ul>");
}

}  // namespace

QString keys_text() {
  const auto row = [](const QString& key, const QString& what) {
    return QStringLiteral("<tr><td style='padding-right:18px'><b>%1</b></td><td>%2</td></tr>").arg(key, what);
  };
  return tr("<h3>On the chart</h3>") + QStringLiteral("<table>") +
         row(tr("wheel"), tr("zoom in time at the pointer")) +
         row(tr("Ctrl + wheel"), tr("zoom in temperature")) + row(tr("Shift + wheel"), tr("move in time")) +
         row(tr("drag"), tr("move")) + row(tr("right drag, Shift + drag"), tr("zoom into the frame")) +
         row(tr("drag a limit"),
             tr("change a limit of the procedure; Escape leaves it as it was, Ctrl + Z takes it back")) +
         row(tr("double click"), tr("the whole record")) +
         row(tr("right click, menu key"),
             tr("what can be done there: a remark, cursors, exclude, differences")) +
         row(tr("drag the frame below the chart"), tr("show another time; its ends: more time or less")) +
         row(tr("click"), tr("choose a trace, or a finding, phase or stage below the chart")) +
         row(tr("Ctrl + click, Shift + click"), tr("set cursor A, cursor B; drag a cursor to move it")) +
         row(tr("A, B"), tr("set cursor A, cursor B at the reading line")) +
         row(tr("Ctrl + C"), tr("copy what lies between the cursors")) +
         row(tr("Ctrl + drag"), tr("choose a time: zoom to it, measure it, exclude it")) +
         row(tr("1 to 9"), tr("show that stage")) +
         row(tr("Alt + Left, Alt + Right"), tr("go back to the view before, and forward again")) +
         row(tr("arrows"), tr("move")) + row(tr("+ and −"), tr("zoom in time")) +
         row(tr("Ctrl + Up, Ctrl + Down"), tr("zoom in temperature")) +
         row(tr("Home"), tr("the whole record")) + row(tr("F"), tr("fit the temperature axis")) +
         row(tr(", and ."), tr("move the cursor by one row, with Shift by ten")) +
         row(tr("Escape"), tr("clear the reading line and the chosen trace, then the cursors")) +
         QStringLiteral("</table>") + tr("<h3>Everywhere</h3>") + QStringLiteral("<table>") +
         row(tr("F1"), tr("the manual's page about what has the focus")) + row(tr("F6"), tr("next pane")) +
         row(tr("Alt + Down, Alt + Up"), tr("next or previous requirement")) +
         row(tr("F3, Shift + F3"), tr("next or previous finding")) +
         row(tr("F9, Shift + F9, Ctrl + F9"),
             tr("show or hide the spread pane, the rate pane, the difference pane")) +
         row(tr("Ctrl + F"),
             tr("find text in the list that is shown; Enter and Shift + Enter go on and back")) +
         row(tr("Ctrl + M"), tr("add a remark at the reading line")) +
         row(tr("Ctrl + D"), tr("exclude a thermocouple in whole or in part, with a reason")) +
         row(tr("Ctrl + S"), tr("save what is changed in job, procedure or review")) +
         row(tr("Ctrl + Z, Ctrl + Shift + Z"), tr("undo, redo")) +
         row(tr("F5"), tr("reload files that changed on disk, and evaluate again")) +
         row(tr("Ctrl + E"), tr("export the report")) +
         row(tr("Escape"), tr("cancel reading; dismiss a message")) + QStringLiteral("</table>");
}

QString cautions_text(const Report* report) {
  QStringList lines;
  if (report)
    for (const std::string& caution : report->cautions)
      lines.append(pdf::shown_text(caution).toHtmlEscaped());
  if (lines.isEmpty())
    lines = {
        tr("The program compares a record with the limits of the procedure file. It does not know "
           "the "
           "code, the contract or the work, and releases nothing."),
        tr("It reads what the recorder wrote. Whether each thermocouple sat where the job says, was attached "
           "well and was in calibration cannot be seen in a log."),
        tr("A verdict is only as good as the procedure file. Check its limits against the document that they "
           "come from.")};
  return tr("<h3>Cautions</h3>") + list_of(lines);
}

QString about_text() {
  return tr("<h3>Soakwright %1</h3><p>Chart-record analyser for heat treatment of welds.</p>"
            "<p>Free software under the GNU General Public License, version 3 or later. It comes without any "
            "warranty.</p>")
             .arg(QLatin1String(SOAKWRIGHT_VERSION)) +
         cautions_text(nullptr);
}

void show_text(QWidget* parent, const QString& title, const QString& html) {
  auto* dialog = new QDialog(parent);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setWindowTitle(title);
  auto* text = new QTextBrowser(dialog);
  text->setFrameShape(QFrame::NoFrame);
  text->setHtml(html);
  text->setAccessibleName(title);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, dialog);
  auto* layout = new QVBoxLayout(dialog);
  layout->addWidget(text);
  layout->addWidget(buttons);
  QObject::connect(buttons, &QDialogButtonBox::rejected, dialog, &QDialog::close);
  dialog->resize(600, 440);
  dialog->open();
}

}  // namespace soakwright::gui
