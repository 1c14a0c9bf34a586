// SPDX-License-Identifier: GPL-3.0-or-later
// The whole text of a TOML file, to be typed in and then applied or reverted, with what is wrong with it
// above.
#pragma once

#include <QWidget>
#include <string>

class QLabel;
class QPlainTextEdit;
class QPushButton;

namespace soakwright::gui {

class SourceText : public QWidget {
  Q_OBJECT

 public:
  /// `name` is the editor's and `problems_name` that of what is wrong, for screen readers.
  SourceText(const QString& name, const QString& problems_name, const QString& apply_tip,
             QWidget* parent = nullptr);

  /// What is being typed stays.
  void show(const std::string& text, bool editable);
  /// None: nothing is wrong.
  void say(const QStringList& problems);
  [[nodiscard]] QPlainTextEdit* editor() const { return text_; }
  /// What say() was given, a line each; empty if nothing is wrong.
  [[nodiscard]] QString problems() const;
  /// Typed and not applied.
  [[nodiscard]] bool typed() const;

 signals:
  /// The whole text as it is to be, with the line ends that it had.
  void applied(const std::string& text);

 private:
  void apply();

  QLabel* problems_;
  QPlainTextEdit* text_;
  QPushButton* apply_;
  QPushButton* revert_;
  QString shown_;  ///< as the editor has it: every line end is one character
  bool crlf_ = false;
};

}  // namespace soakwright::gui
