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

  /// Verifies the report and shows what is found. Where that is cancelled, what was found before is shown
  /// again.
  void verify(const ReportVerification::Request& request);
  void cancel();
  /// Nothing more is found out about it, and nothing is kept.
  void forget();
  void setColours(const ChartColours& colours);
  [[nodiscard]] bool busy() const { return work_.busy(); }
  [[nodiscard]] const QString& report() const { return report_; }
  /// Of all checks together, in a sentence; while they run, that they do.
  [[nodiscard]] QString summary() const;
  /// None while they run, and where the report could not be looked at; inconclusive where that was cancelled.
  [[nodiscard]] std::optional<Sign> sign() const { return sign_; }
  [[nodiscard]] ListPane* list() const { return list_; }
  /// Report, summary and every check, to be pasted elsewhere.
  [[nodiscard]] QString text() const;

 signals:
  /// Another summary.
  void changed();
  /// The report is to be verified once more.
  void againWanted(const QString& report);

 private:
  struct Found {
    QString report;
    bool trusting = false;
    FoundChecks checks;
  };
  void build();
  void showBusy(bool busy);
  void showName();
  void showFound(const Found& found);
  void say(const QString& summary, std::optional<Sign> sign);
  void showLine(std::size_t line);
  void drawSign();

  ReportVerification work_;
  QString report_;
  bool trusting_ = false;       ///< certificates were named that vouch for the signers'
  std::optional<Found> found_;  ///< last, and not forgotten
  std::vector<CheckLine> lines_;
  std::optional<Sign> sign_;
  ChartColours colours_;
  QLabel* mark_;
  QLabel* summary_;
  QLabel* file_;
  QProgressBar* progress_;
  QPushButton* cancel_;
  ListPane* list_;
  QPlainTextEdit* line_;  ///< all of the chosen line
  QPushButton* copy_;
  QPushButton* again_;
};

}  // namespace soakwright::gui
