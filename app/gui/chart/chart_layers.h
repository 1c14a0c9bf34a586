// SPDX-License-Identifier: GPL-3.0-or-later
// The layers of the chart, each a drawing of one kind of thing over the shared scene.
//
// Only the chart's own .cpp files include this: it brings the plot library's header.
#pragma once

#include <vector>

#include <qcustomplot.h>

#include "app/gui/chart/chart_scene.h"
#include "app/gui/chart/trace_marks.h"
#include "app/gui/chart/trace_pyramid.h"
#include "app/gui/chart/trace_raster.h"

namespace soakwright::gui {

/// Maps seconds and Celsius to pixels of one axis rectangle; linear, so cheaper than asking the axes per
/// point.
struct PixelMap {
  explicit PixelMap(const QCPAxisRect& rect);
  [[nodiscard]] double x(double at_s) const { return left + (at_s - from_s) * pixels_per_s; }
  [[nodiscard]] double y(double celsius) const { return bottom - (celsius - low_c) * pixels_per_c; }
  QRect rect;
  double left = 0.0, bottom = 0.0;
  double from_s = 0.0, to_s = 1.0, low_c = 0.0, high_c = 1.0;
  double pixels_per_s = 1.0, pixels_per_c = 1.0;
};

class ChartLayer : public QCPLayerable {
  Q_OBJECT

 public:
  ChartLayer(QCustomPlot* plot, const QString& layer, QCPAxisRect* rect, const ChartScene* scene);

 protected:
  [[nodiscard]] QRect clipRect() const override;
  void applyDefaultAntialiasingHint(QCPPainter* painter) const override;
  [[nodiscard]] QCPAxisRect* axisRect() const { return rect_; }
  [[nodiscard]] const ChartScene& scene() const { return *scene_; }

 private:
  QPointer<QCPAxisRect> rect_;
  const ChartScene* scene_;
};

/// Ranges of holds, what was reached of them, maximum temperatures and other levels, where findings
/// stand.
class BackdropLayer : public ChartLayer {
  Q_OBJECT

 public:
  using ChartLayer::ChartLayer;

 protected:
  void draw(QCPPainter* painter) override;
};

/// What they are called.
class WordLayer : public ChartLayer {
  Q_OBJECT

 public:
  using ChartLayer::ChartLayer;

 protected:
  void draw(QCPPainter* painter) override;
};

/// A layer that draws readings over time, and what they are called above them.
class PolylineLayer : public ChartLayer {
  Q_OBJECT

 public:
  using ChartLayer::ChartLayer;
  /// The room that a name above the readings needs.
  static int nameHeight(const QFont& font);

 protected:
  /// With the margin: a name is in it.
  [[nodiscard]] QRect clipRect() const override;
  /// In the margin above, where nothing else is drawn.
  void drawName(QCPPainter* painter, const PixelMap& map, const QString& name) const;
  /// Where the readings come from and which of them are wanted, in the time of their own record.
  struct Part {
    const Chart* chart = nullptr;
    double from_s = 0.0, to_s = 0.0;
    double offset_s = 0.0;  ///< added to their times
    bool dots = false;      ///< a reading with no line on either side is known at its instant: a dot
  };
  /// Around all parts. Into a picture first, on all threads, but for vector graphics.
  void beginParts(QCPPainter* painter, const PixelMap& map);
  void endParts(QCPPainter* painter, const PixelMap& map);
  void setPartPen(QCPPainter* painter, const QPen& pen);
  void drawPart(QCPPainter* painter, const PixelMap& map, const TracePyramid& pyramid, const Part& part);

 private:
  /// A part with the pen that it is drawn with.
  struct Drawing {
    const TracePyramid* pyramid = nullptr;
    Part part;
    TraceStroke stroke;
  };
  /// Some columns of the picture, and room for what is drawn in them.
  struct Strip {
    int first = 0, end = 0;
    std::vector<TracePoint> points;
    std::vector<QPointF> pixels;
  };
  void drawStrip(const PixelMap& map, Strip& strip) const;

  TraceRaster raster_;
  bool rasters_ = false;
  TraceStroke stroke_;
  std::vector<Drawing> drawings_;
  std::vector<Strip> strips_;
};

/// Every visible trace.
class TraceLayer : public PolylineLayer {
  Q_OBJECT

 public:
  using PolylineLayer::PolylineLayer;

 protected:
  void draw(QCPPainter* painter) override;

 private:
  void drawTrace(QCPPainter* painter, const PixelMap& map, std::size_t trace, const QPen& pen);
};

/// The evaluated thermocouples of another record, laid over this one.
class OverlayLayer : public PolylineLayer {
  Q_OBJECT

 public:
  using PolylineLayer::PolylineLayer;

 protected:
  void draw(QCPPainter* painter) override;
};

/// The fastest ramps that the procedure permits and the hold time that it requires.
class RequiredLayer : public ChartLayer {
  Q_OBJECT

 public:
  using ChartLayer::ChartLayer;

 protected:
  void draw(QCPPainter* painter) override;

 private:
  void drawRamp(QCPPainter* painter, const PixelMap& map, const RequiredRamp& ramp) const;
  void drawHold(QCPPainter* painter, const PixelMap& map, const RequiredHold& hold) const;
};

/// Where the bracket of the required hold time lies.
double required_hold_y(const PixelMap& map, const RequiredHold& hold);

/// Rates, spreads or differences, in an axis rectangle of their own.
class CurveLayer : public PolylineLayer {
  Q_OBJECT

 public:
  using Kind = CurveKind;
  CurveLayer(QCustomPlot* plot, const QString& layer, QCPAxisRect* rect, const ChartScene* scene, Kind kind)
      : PolylineLayer(plot, layer, rect, scene), kind_(kind) {}
  /// What stands above the pane.
  void setName(const QString& name) { name_ = name; }

 protected:
  void draw(QCPPainter* painter) override;

 private:
  void drawCurve(QCPPainter* painter, const PixelMap& map, const TracePyramid& pyramid, const QPen& pen);
  Kind kind_;
  QString name_;
};

/// What of the curves' values is to be seen, limits included.
std::pair<double, double> curve_range(const ChartScene& scene, CurveKind kind);
/// The least and the most of the differences of what is shown between two moments, with room around them.
std::pair<double, double> difference_range(const ChartScene& scene, double from_s, double to_s);

/// The traces' names at their right ends, and marks along them.
class TagLayer : public ChartLayer {
  Q_OBJECT

 public:
  using ChartLayer::ChartLayer;

 protected:
  [[nodiscard]] QRect clipRect() const override;
  void draw(QCPPainter* painter) override;

 private:
  TraceMarks marks_;
};

/// The margin that the names need.
int tag_width(const Chart& chart, const QFontMetrics& metrics);
/// The two cursors.
class CursorLayer : public ChartLayer {
  Q_OBJECT

 public:
  CursorLayer(QCustomPlot* plot, const QString& layer, QCPAxisRect* rect, const ChartScene* scene, bool named)
      : ChartLayer(plot, layer, rect, scene), named_(named) {}

 protected:
  void draw(QCPPainter* painter) override;

 private:
  bool named_;  ///< "A" and "B" stand at the top
};

/// What was measured for the chosen requirement, and the chosen place.
class EvidenceLayer : public ChartLayer {
  Q_OBJECT

 public:
  using ChartLayer::ChartLayer;

 protected:
  void draw(QCPPainter* painter) override;

 private:
  void drawPoints(QCPPainter* painter, const PixelMap& map, const Evidence& evidence);
};

/// The words at a limit that is being dragged.
class LimitLayer : public ChartLayer {
  Q_OBJECT

 public:
  using ChartLayer::ChartLayer;

 protected:
  void draw(QCPPainter* painter) override;
};

/// The line at the pointer with a dot on every visible trace.
class PointerLayer : public ChartLayer {
  Q_OBJECT

 public:
  using ChartLayer::ChartLayer;

 protected:
  void draw(QCPPainter* painter) override;
};

/// The course strip under the chart: one lane each for phases, stages, periods and findings.
class LaneLayer : public ChartLayer {
  Q_OBJECT

 public:
  using ChartLayer::ChartLayer;

  struct Hit {
    enum class Kind { phase, stage, finding };
    Kind kind = Kind::phase;
    std::size_t index = 0;  ///< into Chart::phases, ::stages or ::marks
  };
  [[nodiscard]] std::optional<Hit> hit(const QPointF& position) const;
  [[nodiscard]] QString textAt(const QPointF& position) const;
  /// Height that the lanes of this chart need.
  static int heightFor(const Chart& chart, int line_height);

 protected:
  [[nodiscard]] QRect clipRect() const override;
  void draw(QCPPainter* painter) override;

 private:
  /// The part of a segment that its lane shows.
  struct Part {
    const ChartSegment* segment = nullptr;
    double from_s = 0.0, to_s = 0.0;
  };
  struct Lane {
    QString label;
    std::vector<Part> parts;
    bool marks = false;
  };
  [[nodiscard]] static std::vector<Lane> lanesOf(const Chart& chart);
  void drawSegment(QCPPainter* painter, const QRectF& box, const ChartSegment& segment) const;
  void drawMarks(QCPPainter* painter, const PixelMap& map, const QRectF& lane) const;
  [[nodiscard]] QRectF markBox(const PixelMap& map, const QRectF& lane, const ChartMark& mark) const;
};

}  // namespace soakwright::gui
