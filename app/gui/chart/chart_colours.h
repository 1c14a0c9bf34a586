// SPDX-License-Identifier: GPL-3.0-or-later
// The colours of the chart, our own, for a light and for a dark window. Colour never stands alone: traces
// differ by dash as well, verdicts by shape and word.
#pragma once

#include <QColor>
#include <QPen>
#include <cstddef>

#include "core/evaluate/requirement.h"
#include "core/report/chart.h"

class QPalette;

namespace soakwright::gui {

struct ChartColours {
  bool dark = false;
  QColor background, ink, faint_ink, grid;
  QColor range, range_edge, continuous_hold, temperature_max, level;
  QColor met, not_met, inconclusive, note;
  QColor evidence, evidence_fill;

  static ChartColours of(const QPalette& palette);
  /// Of the n-th channel: eight hues, then the same with other dashes; grey where nothing of it is evaluated.
  [[nodiscard]] QPen trace(std::size_t n, ChartTrace::Role role) const;
  [[nodiscard]] QColor of_finding(Finding::Kind kind) const;
  [[nodiscard]] QColor of_segment(ChartSegment::Kind kind) const;
};

/// `share` of `a` over `b`, opaque.
QColor mixed(const QColor& a, const QColor& b, double share);

}  // namespace soakwright::gui
