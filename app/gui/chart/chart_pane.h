// SPDX-License-Identifier: GPL-3.0-or-later
// The chart as a widget: shows one report's chart, moves over it by mouse and keyboard, and tells where the
// pointer is and what was clicked. It decides nothing and holds no file.
#pragma once

#include <QTimer>
#include <QWidget>
#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "app/gui/chart/chart_scene.h"
#include "app/gui/preferences.h"

class QCustomPlot;
class QCPAxisRect;
class QRubberBand;

namespace soakwright::gui {

struct ChartLabel;
class ClockTicker;
class CurveLayer;
class RateTicker;
class LaneLayer;
class TemperatureTicker;
class TimeOverview;

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
  void countTimeFrom(TimeOrigin origin);
  void setVisibleChannels(std::vector<bool> visible);
  /// Draws what was measured and moves there; null for none.
  void showEvidence(const Evidence* evidence);
  /// Picks out a time and, where there are any, a trace and a finding's mark, and moves there.
  void showPlace(std::optional<std::pair<double, double>> time, std::optional<std::size_t> trace,
                 std::optional<std::size_t> mark);
  /// Brings these traces forward and fades the others; none: all are alike.
  void emphasise(std::vector<std::size_t> traces);
  [[nodiscard]] const std::vector<std::size_t>& emphasisedTraces() const { return scene_.emphasised; }
  /// The trace that is brought forward; none where several are, or none is.
  [[nodiscard]] std::optional<std::size_t> emphasised() const {
    return scene_.emphasised.size() == 1 ? std::optional(scene_.emphasised.front()) : std::nullopt;
  }

  /// Rates, spreads and differences of the report that is shown; null while they are not worked out.
  void setCurves(std::shared_ptr<const CurveSet> curves);
  [[nodiscard]] const CurveSet* curves() const { return scene_.curves.get(); }
  void showCurves(CurveKind kind, bool shown);
  /// The strip of the whole record below everything.
  void showOverview(bool shown);
  [[nodiscard]] bool curvesShown(CurveKind kind) const;
  /// The values between which its axis runs.
  [[nodiscard]] std::pair<double, double> curveRange(CurveKind kind) const;

  /// Another record over this one; none takes it away.
  void setOverlay(std::optional<ChartOverlay> overlay);
  [[nodiscard]] const std::optional<ChartOverlay>& overlay() const { return scene_.overlay; }
  /// The required cycle of what is shown; null where nothing was evaluated.
  void setRequired(std::shared_ptr<const RequiredCycle> required);
  [[nodiscard]] const RequiredCycle* required() const {
    return scene_.shows_required ? scene_.required.get() : nullptr;
  }
  void showRequired(bool shown);
  /// The limits that the mouse can drag.
  void setMovableLimits(std::vector<LimitLine> limits);
  /// A dragged limit goes back to where the report has it.
  void letGoOfLimit();

  /// The two cursors, in either order; none: not set.
  [[nodiscard]] std::optional<double> cursor(char name) const {
    return name == 'A' ? scene_.cursor_a : scene_.cursor_b;
  }
  void setCursor(char name, std::optional<double> at_s);

  [[nodiscard]] Ranges ranges() const;
  void setRanges(const Ranges& ranges);
  [[nodiscard]] std::optional<double> pointer() const { return scene_.pointer_s; }
  /// The picture as it is on the screen, at `scale` times its size.
  [[nodiscard]] QPixmap picture(double scale) const;
  /// The same in lines, as SVG.
  [[nodiscard]] QByteArray vectorPicture() const;
  /// The words over the temperatures, where they stand now.
  [[nodiscard]] std::vector<ChartLabel> labels() const;
  [[nodiscard]] QPen penOf(std::size_t trace) const;
  /// Draws everything anew; for the bench.
  void redrawNow();

  void zoomTime(double factor);
  void zoomTemperature(double factor);
  void panTime(double share);
  void panTemperature(double share);
  void resetView();
  void fitTemperature();
  /// Moves the reading line by rows of the record.
  void stepPointer(int rows);
  /// To the view before, and back again.
  void previousView();
  void nextView();
  /// The reading line, else the middle of the view.
  [[nodiscard]] double momentChosen() const;
  /// That becomes cursor A or B.
  void setCursorHere(char name);
  void clearCursors();

 signals:
  void pointerMoved(std::optional<double> at_s);
  void findingClicked(std::size_t finding);
  void phaseClicked(std::size_t phase);
  void stageClicked(std::size_t stage);
  void traceClicked(std::optional<std::size_t> trace);
  void coloursChanged();
  void cursorsChanged();
  /// A time was drawn over with Ctrl held, from the trace that it began at or that is picked out.
  void timeDrawn(double from_s, double to_s, std::optional<std::size_t> trace, const QPoint& at);
  /// A click with the right button, or the menu key.
  void menuWanted(double at_s, std::optional<std::size_t> trace, const QPoint& at);
  /// Ctrl+C with both cursors set.
  void copyWanted();
  void stageKeyed(std::size_t stage);
  /// A limit was dragged to a whole degree of the procedure.
  void limitMoved(const soakwright::gui::LimitLine& limit, double level_c);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void applyColours();
  void layOutLanes();
  void layOutMargins();
  void setPointer(std::optional<double> at_s);
  void wheel(const QPointF& position, QPoint turn, Qt::KeyboardModifiers modifiers);
  void press(const QPointF& position, Qt::MouseButton button, Qt::KeyboardModifiers modifiers);
  void drag(const QPointF& position);
  void release(const QPointF& position);
  void click(const QPointF& position);
  [[nodiscard]] std::optional<std::size_t> traceNear(const QPointF& position) const;
  [[nodiscard]] Ranges wholeRecord() const;
  void layOutOverview();
  /// Of every trace that is shown.
  [[nodiscard]] std::optional<std::pair<double, double>> extremesShown(double from_s, double to_s) const;
  void moveTo(double from_s, double to_s);
  [[nodiscard]] std::pair<double, double> temperaturesShown(double from_s, double to_s) const;
  void replot();
  void buildCurves();
  void layOutPanes();
  [[nodiscard]] bool roomForCurves() const;
  void fitCurves();
  void fitDifferences();
  void keepView(bool settled);
  void settleView();
  void goToView(std::size_t view);
  [[nodiscard]] double timeAt(double x) const;
  [[nodiscard]] std::optional<LimitLine> limitNear(const QPointF& position) const;
  void dragLimit(const QPointF& position);
  void releaseLimit(const QPointF& position);
  [[nodiscard]] std::optional<char> cursorNear(const QPointF& position) const;
  [[nodiscard]] std::vector<QCPAxisRect*> rects() const;

  ChartScene scene_;
  QCustomPlot* plot_ = nullptr;
  QCPAxisRect* traces_rect_ = nullptr;
  QCPAxisRect* lanes_rect_ = nullptr;
  struct CurvePane {
    CurveKind kind = CurveKind::spread;
    QCPAxisRect* rect = nullptr;
    CurveLayer* layer = nullptr;
    QSharedPointer<RateTicker> ticker;
    bool shown = false;
  };
  [[nodiscard]] CurvePane& below(CurveKind kind) { return below_[static_cast<std::size_t>(kind)]; }
  void nameCurves();
  std::array<CurvePane, 3> below_;  ///< by CurveKind, from top to bottom
  LaneLayer* lanes_ = nullptr;
  void labelTimeAxis();
  TimeOrigin time_origin_ = TimeOrigin::recorder;
  QSharedPointer<ClockTicker> clock_;
  QSharedPointer<TemperatureTicker> thermometer_;
  QRubberBand* frame_ = nullptr;
  TimeOverview* overview_ = nullptr;
  bool overview_shown_ = true;
  enum class Drag { none, pan, frame, time, cursor, limit };
  Drag drag_ = Drag::none;
  QPointF pressed_at_;
  Ranges pressed_ranges_;
  Qt::MouseButton pressed_button_ = Qt::LeftButton;
  char dragged_cursor_ = 'A';
  std::vector<LimitLine> movable_;
  LimitLine pressed_limit_;
  std::vector<Ranges> views_;  ///< visited; the last may still be moving
  std::size_t view_ = 0;
  QTimer view_timer_;
};

}  // namespace soakwright::gui
