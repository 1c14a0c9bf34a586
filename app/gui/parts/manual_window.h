// SPDX-License-Identifier: GPL-3.0-or-later
// The manual, page by page, beside the window.
#pragma once

#include <QDialog>

class QTextBrowser;

namespace soakwright::gui {

class ManualWindow : public QDialog {
  Q_OBJECT

 public:
  explicit ManualWindow(const QString& folder, QWidget* parent = nullptr);

  /// A page by its file's name; one that is not there is said to be missing.
  void show(const QString& page);
  [[nodiscard]] QString page() const { return page_; }
  [[nodiscard]] QTextBrowser* text() const { return text_; }

 private:
  QString folder_;
  QString page_;
  QTextBrowser* text_;
};

/// The page about what has the focus: the nearest around it that names one, of tabs the one that is shown;
/// else the first page.
QString manual_page_of(const QWidget* focus);
/// Names the page about a part of the window.
void set_manual_page(QWidget* part, const QString& page);

}  // namespace soakwright::gui
