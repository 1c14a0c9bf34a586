// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/forms/problem_label.h"

#include "app/gui/verdict_sign.h"

namespace soakwright::gui {

ProblemLabel::ProblemLabel(QWidget* parent) : QLabel(parent) {
  setTextFormat(Qt::PlainText);
  setWordWrap(true);
  hide();
}

void ProblemLabel::say(const QString& problem) {
  setText(problem);
  setVisible(!problem.isEmpty());
  // The theme's colours now: it may have changed since.
  const QPalette theme = parentWidget()->palette();
  QPalette ink = theme;
  ink.setColor(QPalette::WindowText, colour_of(Sign::not_met, ChartColours::of(theme)));
  setPalette(ink);
}

}  // namespace soakwright::gui
