// SPDX-License-Identifier: GPL-3.0-or-later
// Where the words over the temperatures stand: of all kinds together, so that none covers another.
#pragma once

#include <QFontMetricsF>
#include <QRectF>
#include <QString>
#include <vector>

#include "app/gui/chart/chart_scene.h"

namespace soakwright::gui {

struct PixelMap;

struct ChartLabel {
  enum class Kind { point, required, maximum, level, range, note };
  Kind kind = Kind::note;
  QString text;
  QRectF box;
  std::size_t point = 0;  ///< of the kind point: which of evidence_points()
};

/// Those for which there is a place; first come points that were measured, then what is required.
std::vector<ChartLabel> chart_labels(const ChartScene& scene, const PixelMap& map,
                                     const QFontMetricsF& metrics);

/// The ends of what was fitted and the points that were measured, in the order in which they are drawn.
std::vector<const ChartPoint*> evidence_points(const Evidence& evidence);

}  // namespace soakwright::gui
