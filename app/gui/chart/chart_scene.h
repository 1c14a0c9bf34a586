// SPDX-License-Identifier: GPL-3.0-or-later
// What the layers of the chart draw from. Owned by the chart's widget, changed by it alone.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "app/gui/chart/chart_colours.h"
#include "app/gui/chart/limit_lines.h"
#include "app/gui/chart/trace_set.h"
#include "core/report/report.h"
#include "core/report/required_cycle.h"

namespace soakwright::gui {

struct CurveSet;
/// A pane below the temperatures, from top to bottom.
enum class CurveKind { difference, spread, rate };

/// How much of its colour is left of a trace that is not followed: at least 3:1 against the background.
inline constexpr double kFadedShare = 0.55;

/// Another record on the time axis of the shown one.
struct ChartOverlay {
  std::shared_ptr<const Report> report;
  std::shared_ptr<const TraceSet> traces;
  double offset_s = 0.0;  ///< added to its times
  QString name;           ///< which record it is and what falls together, in words
};

/// A limit while it is being dragged, and until what it means is known.
struct MovedLimit {
  LimitLine line;  ///< as it was
  double level_c = 0.0;
};

struct ChartScene {
  std::shared_ptr<const Report> report;
  std::shared_ptr<const Verdicts> verdicts;  ///< null where nothing is specified
  std::shared_ptr<const TraceSet> traces;
  std::vector<bool> visible;                             ///< by channel of the record
  std::vector<QPen> pens;                                ///< by trace of the chart
  const Evidence* evidence = nullptr;                    ///< of the chosen requirement, inside `report`
  std::optional<std::size_t> mark;                       ///< the chosen finding's mark
  std::vector<std::size_t> emphasised;                   ///< traces picked out by hand
  std::optional<std::pair<double, double>> chosen_time;  ///< of a chosen phase, suspect, finding
  std::optional<double> pointer_s;
  std::optional<double> cursor_a, cursor_b;  ///< between them is measured
  std::shared_ptr<const CurveSet> curves;    ///< null while they are not worked out
  std::optional<ChartOverlay> overlay;
  std::shared_ptr<const RequiredCycle> required;  ///< null where nothing was evaluated
  bool shows_required = true;
  std::optional<MovedLimit> moved;
  ChartColours colours;

  [[nodiscard]] const Chart* chart() const { return report ? &report->chart : nullptr; }
  /// What is required, with a limit that is being dragged where it is now.
  [[nodiscard]] std::vector<ChartRange> ranges() const;
  [[nodiscard]] std::vector<ChartLevel> levels() const;
  /// A hidden channel is drawn all the same where the chosen requirement was measured on it.
  [[nodiscard]] bool shows(std::size_t trace) const;
  /// Whether the trace is what the eye should follow now; all are while nothing is chosen.
  [[nodiscard]] bool followed(std::size_t trace) const;
};

/// The pen of each trace of the chart: hue and dash by its place among those of its role.
std::vector<QPen> trace_pens(const Chart& chart, const ChartColours& colours);

}  // namespace soakwright::gui
