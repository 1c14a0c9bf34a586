// SPDX-License-Identifier: GPL-3.0-or-later
// What verifying a report found: one line for each check, with its state as a sign and as a word.
#pragma once

#include <QDialog>
#include <optional>

#include "app/gui/background/report_verification.h"
#include "app/gui/verdict_sign.h"

class QLabel;
class QPlainTextEdit;
class QProgressBar;
class QPushButton;

namespace soakwright::gui {

class ListPane;

class ReportChecks : public QDialog {
  Q_OBJECT

 public:
  explicit ReportChecks(QWidget* parent = nullptr);

  /// Verifies the report and shows what is found; what was shown before is gone.
  void verify(const QString& report, const QString& modules);
  /// Nothing more is found out about it.
  void forget();
  void setColours(const ChartColours& colours);
  [[nodiscard]] bool busy() const { return work_.busy(); }
  [[nodiscard]] const QString& report() const { return report_; }
  /// Of all checks together, in a sentence; while they run, that they do.
  [[nodiscard]] QString summary() const;
  /// None while they run, and where the report could not be looked at.
  [[nodiscard]] std::optional<Sign> sign() const { return sign_; }
  [[nodiscard]] ListPane* list() const { return list_; }
  /// Report, summary and every check, to be pasted elsewhere.
  [[nodiscard]] QString text() const;

 signals:
  /// Another summary.
  void changed();

 private:
  void build();
  void take(const FoundChecks& found);
  void say(const QString& summary, std::optional<Sign> sign);
  void showLine(std::size_t line);
  void drawSign();

  ReportVerification work_;
  QString report_;
  std::vector<CheckLine> lines_;
  std::optional<Sign> sign_;
  ChartColours colours_;
  QLabel* mark_;
  QLabel* summary_;
  QLabel* file_;
  QProgressBar* progress_;
  ListPane* list_;
  QPlainTextEdit* line_;  ///< all of the chosen line
  QPushButton* copy_;
};

}  // namespace soakwright::gui
