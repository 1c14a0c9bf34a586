// SPDX-License-Identifier: GPL-3.0-or-later
// The chart as a widget: shows one report's chart, moves over it by mouse and keyboard, and tells where the
// pointer is and what was clicked. It decides nothing and holds no file.
#pragma once

#include <QWidget>
#include <memory>
#include <optional>
#include <vector>

#include "app/gui/chart/chart_scene.h"

class QCustomPlot;
class QCPAxisRect;
class QRubberBand;

namespace soakwright::gui {

class ClockTicker;
class LaneLayer;
class TemperatureTicker;

class ChartPane : public QWidget {
  Q_OBJECT

 public:
  explicit ChartPane(QWidget* parent = nullptr);
  ~ChartPane() override;

  struct Ranges {
    double from_s = 0.0, to_s = 1.0, low_c = 0.0, high_c = 1.0;
    bool operator==(const Ranges&) const = default;
  };

  /// Shows another report; `keep_view` leaves time and temperature range as they are.
  void show(std::shared_ptr<const Report> report, std::shared_ptr<const Verdicts> verdicts,
            std::shared_ptr<const TraceSet> traces, bool keep_view);
  void setVisibleChannels(std::vector<bool> visible);
  /// Draws what was measured and moves there; null for none.
  void showEvidence(const Evidence* evidence);
  /// Picks out a time and, where there are any, a trace and a finding's mark, and moves there.
  void showPlace(std::optional<std::pair<double, double>> time, std::optional<std::size_t> trace,
                 std::optional<std::size_t> mark);
  void emphasise(std::optional<std::size_t> trace);

  [[nodiscard]] Ranges ranges() const;
  void setRanges(const Ranges& ranges);
  [[nodiscard]] std::optional<double> pointer() const { return scene_.pointer_s; }
  /// The picture as it is on the screen, at `scale` times its size.
  [[nodiscard]] QPixmap picture(double scale) const;
  [[nodiscard]] QPen penOf(std::size_t trace) const;
  /// Draws everything anew; for the bench.
  void redrawNow();

 public slots:
  void zoomTime(double factor);
  void zoomTemperature(double factor);
  void panTime(double share);
  void panTemperature(double share);
  void resetView();
  void fitTemperature();
  /// Moves the reading line by rows of the record.
  void stepPointer(int rows);

 signals:
  void pointerMoved(std::optional<double> at_s);
  void findingClicked(std::size_t finding);
  void phaseClicked(std::size_t phase);
  void stageClicked(std::size_t stage);
  void traceClicked(std::optional<std::size_t> trace);
  void coloursChanged();

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void applyColours();
  void layOutLanes();
  void setPointer(std::optional<double> at_s);
  void wheel(const QPointF& position, QPoint turn, Qt::KeyboardModifiers modifiers);
  void press(const QPointF& position, Qt::MouseButton button, Qt::KeyboardModifiers modifiers);
  void drag(const QPointF& position);
  void release(const QPointF& position);
  void click(const QPointF& position);
  [[nodiscard]] std::optional<std::size_t> traceNear(const QPointF& position) const;
  [[nodiscard]] Ranges wholeRecord() const;
  void moveTo(double from_s, double to_s);
  [[nodiscard]] std::pair<double, double> temperaturesShown(double from_s, double to_s) const;
  void replot();

  ChartScene scene_;
  QCustomPlot* plot_ = nullptr;
  QCPAxisRect* traces_rect_ = nullptr;
  QCPAxisRect* lanes_rect_ = nullptr;
  LaneLayer* lanes_ = nullptr;
  QSharedPointer<ClockTicker> clock_;
  QSharedPointer<TemperatureTicker> thermometer_;
  QRubberBand* frame_ = nullptr;
  enum class Drag { none, pan, frame };
  Drag drag_ = Drag::none;
  QPointF pressed_at_;
  Ranges pressed_ranges_;
};

}  // namespace soakwright::gui
