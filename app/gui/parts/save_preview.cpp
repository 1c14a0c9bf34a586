// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/save_preview.h"

#include <QDialog>
#include <QDialogButtonBox>
#include <QFile>
#include <QFileInfo>
#include <QFontDatabase>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace soakwright::gui {

QString text_on_disk(const QString& path) {
  QFile file(path);
  return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

bool ask_to_save(QWidget* parent, const QString& path, bool is_new, const QStringList& words,
                 const QStringList& lines) {
  QDialog dialog(parent);
  dialog.setWindowTitle(QDialog::tr("Save %1").arg(QFileInfo(path).fileName()));
  const QString name = QFileInfo(path).fileName();
  auto* head =
      new QLabel(is_new ? QDialog::tr("The new job %1 will say:").arg(name)
                        : QDialog::tr("These lines of %1 change; all others stay as they are:").arg(name),
                 &dialog);
  head->setTextFormat(Qt::PlainText);
  head->setWordWrap(true);
  head->setToolTip(path);
  auto* changes = new QLabel(words.join(u'\n'), &dialog);
  changes->setTextFormat(Qt::PlainText);
  changes->setWordWrap(true);
  auto* text = new QPlainTextEdit(lines.join(u'\n'), &dialog);
  text->setReadOnly(true);
  text->setTabChangesFocus(true);
  text->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
  text->setAccessibleName(QDialog::tr("Lines that change"));
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Save | QDialogButtonBox::Cancel, &dialog);
  QObject::connect(buttons, &QDialogButtonBox::accepted, &dialog, &QDialog::accept);
  QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
  auto* layout = new QVBoxLayout(&dialog);
  layout->addWidget(changes);
  layout->addWidget(head);
  layout->addWidget(text, 1);
  layout->addWidget(buttons);
  dialog.resize(620, 360);
  buttons->button(QDialogButtonBox::Save)->setDefault(true);
  return dialog.exec() == QDialog::Accepted;
}

}  // namespace soakwright::gui
