// SPDX-License-Identifier: GPL-3.0-or-later
// What a reviewer decides on the chosen finding, with the reason.
#pragma once

#include <QFrame>
#include <optional>

#include "core/procedure/review/review.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace soakwright::gui {

class ReviewForm : public QFrame {
  Q_OBJECT

 public:
  explicit ReviewForm(QWidget* parent = nullptr);

  /// Nothing decided: `now` is none. `why_not` says why nothing can be decided; empty: it can.
  void show(std::optional<FindingReview> now, const QString& count, const QString& why_not);

 signals:
  /// None: the decision is taken back.
  void decided(std::optional<FindingReview::Disposition> disposition, const QString& reason);

 private:
  void check();

  QLabel* count_;
  QComboBox* decision_;
  QLineEdit* reason_;
  QPushButton* decide_;
  bool possible_ = false;
};

}  // namespace soakwright::gui
