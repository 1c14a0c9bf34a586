// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/chart_colours.h"

#include <QPalette>
#include <array>

namespace soakwright::gui {
namespace {

constexpr std::size_t kHues = 8;
constexpr double kTraceWidth = 1.4;  ///< logical pixels, more than a line of the grid
// Neighbours in the list lie far apart in hue and in lightness, so that they also part in grey.
// On light they are the hues of the report, in its order.
constexpr std::array<QRgb, kHues> kOnLight = {0xff1c5d99, 0xffb03a12, 0xff1f7a49, 0xff6f3592,
                                              0xff8a6000, 0xff0f6d7a, 0xffa52c5e, 0xff404a56};
constexpr std::array<QRgb, kHues> kOnDark = {0xff74b3ee, 0xffff9468, 0xff7bd6a0, 0xffc79be8,
                                             0xffe6bd4f, 0xff5fd0dd, 0xfff48fb8, 0xffb9c3cf};

/// In line widths. Neighbours in the list differ, so that they part without colour.
QPen dashed(const QColor& colour, double width, std::size_t n) {
  QPen pen(colour, width);
  pen.setCapStyle(Qt::FlatCap);
  switch (n % 6) {
    case 1:
      pen.setDashPattern({7, 2.5});
      break;
    case 2:
      pen.setDashPattern({2.5, 2});
      break;
    case 3:
      pen.setDashPattern({10, 2.5, 2, 2.5});
      break;
    case 4:
      pen.setDashPattern({1.2, 2});
      break;
    case 5:
      pen.setDashPattern({7, 2, 2, 2, 2, 2});
      break;
    default:
      break;
  }
  return pen;
}

}  // namespace

QColor mixed(const QColor& a, const QColor& b, double share) {
  const auto part = [share](int x, int y) { return qRound(share * x + (1.0 - share) * y); };
  return {part(a.red(), b.red()), part(a.green(), b.green()), part(a.blue(), b.blue())};
}

ChartColours ChartColours::of(const QPalette& palette) {
  ChartColours c;
  c.background = palette.color(QPalette::Base);
  c.dark = c.background.lightnessF() < 0.5;
  c.ink = palette.color(QPalette::Text);
  c.faint_ink = mixed(c.ink, c.background, 0.68);
  c.grid = mixed(c.ink, c.background, 0.10);
  const auto pick = [&c](QRgb light, QRgb dark) { return QColor(c.dark ? dark : light); };
  c.met = pick(0xff1c6b41, 0xff6fd29a);
  c.not_met = pick(0xffa01f18, 0xffff8a80);
  c.inconclusive = pick(0xff805300, 0xffffc55a);
  c.note = pick(0xff3a556e, 0xff9cc0e0);
  c.range_edge = pick(0xff3c8f6d, 0xff5fb493);
  c.range = mixed(c.range_edge, c.background, c.dark ? 0.16 : 0.11);
  c.continuous_hold = mixed(c.range_edge, c.background, c.dark ? 0.34 : 0.26);
  c.temperature_max = c.not_met;
  c.level = c.faint_ink;
  c.evidence = pick(0xff111820, 0xfff4f6f8);
  c.evidence_fill = mixed(pick(0xffe0a526, 0xffd7a63a), c.background, c.dark ? 0.24 : 0.22);
  return c;
}

QPen ChartColours::trace(std::size_t n, ChartTrace::Role role) const {
  QPen pen = dashed(QColor((dark ? kOnDark : kOnLight)[n % kHues]), kTraceWidth, n);
  switch (role) {
    case ChartTrace::Role::evaluated:
    case ChartTrace::Role::edge:
    case ChartTrace::Role::spare:
      break;
    case ChartTrace::Role::set_point:
      pen = QPen(ink, kTraceWidth, Qt::DashDotLine);
      break;
    case ChartTrace::Role::air:
    case ChartTrace::Role::off:
      pen = QPen(faint_ink, 1.0, Qt::DotLine);
      break;
  }
  return pen;
}

QColor ChartColours::of_finding(Finding::Kind kind) const {
  switch (kind) {
    case Finding::Kind::not_met:
      return not_met;
    case Finding::Kind::inconclusive:
      return inconclusive;
    case Finding::Kind::note:
      break;
  }
  return note;
}

QColor ChartColours::of_segment(ChartSegment::Kind kind) const {
  const auto tint = [this](QRgb light, QRgb dark_one) {
    return mixed(QColor(dark ? dark_one : light), background, dark ? 0.36 : 0.30);
  };
  switch (kind) {
    case ChartSegment::Kind::heat:
      return tint(0xffc8451b, 0xffff9468);
    case ChartSegment::Kind::hold:
    case ChartSegment::Kind::maintain:
      return tint(0xff3c8f6d, 0xff5fb493);
    case ChartSegment::Kind::cool:
      return tint(0xff1c5d99, 0xff74b3ee);
    case ChartSegment::Kind::period:
      return tint(0xff7d3fa0, 0xffc79be8);
    case ChartSegment::Kind::idle:
      break;
  }
  return mixed(ink, background, 0.12);
}

}  // namespace soakwright::gui
