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

  /// What a reader must know beside the verdict.
  struct State {
    bool unsaved = false;      ///< it rests on settings that are in no file
    bool out_of_date = false;  ///< a file that it rests on has changed
    bool refused = false;      ///< nothing is open but a log that cannot be read
  };
  void show(const OpenCase& open, const State& state);
  void setColours(const ChartColours& colours);
  [[nodiscard]] QString word() const;
  [[nodiscard]] QString sentence() const;
  [[nodiscard]] QString cautionText() const;

 signals:
  void cautionsWanted();

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void drawSign();
  void fitSubject();

  QLabel* sign_;
  QLabel* word_;
  QLabel* sentence_;
  QLabel* subject_;
  QLabel* caution_;
  QString subject_text_;
  std::optional<Sign> verdict_;
  ChartColours colours_;
};

}  // namespace soakwright::gui
