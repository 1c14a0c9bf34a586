// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/manual_window.h"

#include <QDesktopServices>
#include <QDialogButtonBox>
#include <QDir>
#include <QFile>
#include <QPushButton>
#include <QTabWidget>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace soakwright::gui {
namespace {

const char* const kPage = "manual-page";
const QString kFirstPage = QStringLiteral("README.md");

}  // namespace

ManualWindow::ManualWindow(const QString& folder, QWidget* parent)
    : QDialog(parent), folder_(folder), text_(new QTextBrowser(this)) {
  setWindowTitle(tr("Soakwright manual"));
  text_->setAccessibleName(tr("Page of the manual"));
  text_->setOpenLinks(false);
  text_->document()->setDocumentMargin(14);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
  QPushButton* contents = buttons->addButton(tr("Contents"), QDialogButtonBox::ActionRole);
  connect(contents, &QPushButton::clicked, this, [this] { show(kFirstPage); });
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  auto* layout = new QVBoxLayout(this);
  layout->addWidget(text_, 1);
  layout->addWidget(buttons);
  resize(760, 640);
  connect(text_, &QTextBrowser::anchorClicked, this, [this](const QUrl& link) {
    const QString page = link.path();
    if (link.scheme().isEmpty() && page.endsWith(u".md") && !page.contains(u'/'))
      show(page);
    else if (link.scheme() == u"https")
      QDesktopServices::openUrl(link);
  });
}

void ManualWindow::show(const QString& page) {
  page_ = page;
  QFile file(QDir(folder_).filePath(page));
  if (!folder_.isEmpty() && file.open(QIODevice::ReadOnly))
    text_->setMarkdown(QString::fromUtf8(file.readAll()));
  else
    text_->setPlainText(tr("The page %1 of the manual is not installed.").arg(page));
  QDialog::show();
  raise();
  text_->setFocus();
}

QString manual_page_of(const QWidget* focus) {
  for (; focus; focus = focus->parentWidget()) {
    if (const auto* tabs = qobject_cast<const QTabWidget*>(focus); tabs && tabs->currentWidget())
      if (QString page = tabs->currentWidget()->property(kPage).toString(); !page.isEmpty()) return page;
    if (QString page = focus->property(kPage).toString(); !page.isEmpty()) return page;
  }
  return kFirstPage;
}

void set_manual_page(QWidget* part, const QString& page) { part->setProperty(kPage, page); }

}  // namespace soakwright::gui
