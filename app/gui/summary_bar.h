// SPDX-License-Identifier: GPL-3.0-or-later
// The answer, on top of everything: verdict by word and shape, the sentence behind it, what it is about, and
// the cautions that go with it.
#pragma once

#include <QWidget>

#include "app/gui/open_case.h"
#include "app/gui/verdict_sign.h"

class QLabel;

namespace soakwright::gui {

class SummaryBar : public QWidget {
  Q_OBJECT

 public:
  explicit SummaryBar(QWidget* parent = nullptr);

  void show(const OpenCase& open);
  void setColours(const ChartColours& colours);
  [[nodiscard]] QString word() const;
  [[nodiscard]] QString cautionText() const;

 signals:
  void cautionsWanted();

 private:
  void drawSign();

  QLabel* sign_;
  QLabel* word_;
  QLabel* sentence_;
  QLabel* subject_;
  QLabel* caution_;
  std::optional<Sign> verdict_;
  ChartColours colours_;
};

}  // namespace soakwright::gui
