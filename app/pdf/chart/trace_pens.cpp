// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/trace_pens.h"

#include <array>

namespace soakwright::pdf {
namespace {

constexpr std::array<QRgb, 8> kHues = {0xff1c5d99, 0xffb03a12, 0xff1f7a49, 0xff6f3592,
                                       0xff8a6000, 0xff0f6d7a, 0xffa52c5e, 0xff404a56};

/// In line widths.
const std::array<QVector<qreal>, 6>& dashes() {
  static const std::array<QVector<qreal>, 6> patterns = {
      QVector<qreal>{},         QVector<qreal>{9, 3},
      QVector<qreal>{3, 2.5},   QVector<qreal>{12, 3, 2, 3},
      QVector<qreal>{1.2, 2.4}, QVector<qreal>{9, 2.5, 2, 2.5, 2, 2.5}};
  return patterns;
}

}  // namespace

std::vector<QPen> trace_pens(const Chart& chart, const Scale& scale) {
  std::vector<QPen> pens;
  std::size_t n = 0;
  for (const ChartTrace& trace : chart.traces) {
    QPen pen(QColor(kHues[n % kHues.size()]), scale.mm(0.24));
    pen.setCapStyle(Qt::FlatCap);
    pen.setJoinStyle(Qt::RoundJoin);
    switch (trace.role) {
      case ChartTrace::Role::evaluated:
      case ChartTrace::Role::edge:
      case ChartTrace::Role::spare:
        if (const auto& pattern = dashes()[n % dashes().size()]; !pattern.isEmpty())
          pen.setDashPattern(pattern);
        break;
      case ChartTrace::Role::set_point:
        pen = QPen(colour::kInk, scale.mm(0.40));
        pen.setDashPattern({1.0, 3.0});
        break;
      case ChartTrace::Role::air:
      case ChartTrace::Role::off:
        pen = QPen(colour::kFaintInk, scale.mm(0.16));
        pen.setDashPattern({6.0, 4.0});
        break;
    }
    if (trace.excluded) {
      pen = QPen(colour::kFaintInk, scale.mm(0.16));
      pen.setDashPattern({1.0, 2.0});
    }
    pens.push_back(pen);
    ++n;  // by the place of its column, as on the screen
  }
  return pens;
}

QPen exclusion_pen(const Scale& scale) {
  QPen pen(colour::kRule, scale.mm(0.16));
  pen.setDashPattern({1.0, 2.0});
  return pen;
}

}  // namespace soakwright::pdf
