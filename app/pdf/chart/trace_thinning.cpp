// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/chart/trace_thinning.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace soakwright::pdf {
namespace {

/// Gathers the readings of one column and gives its first, lowest, highest and last in time order.
class Column {
 public:
  void add(TracePoint point) {
    if (count_ == 0) first_ = low_ = high_ = point;
    if (point.celsius < low_.celsius) low_ = point;
    if (point.celsius > high_.celsius) high_ = point;
    last_ = point;
    ++count_;
  }
  void empty_into(std::vector<TracePoint>& out) {
    if (count_ == 0) return;
    const bool low_first = low_.at_s <= high_.at_s;
    for (const TracePoint& point : {first_, low_first ? low_ : high_, low_first ? high_ : low_, last_})
      if (out.empty() || out.back().at_s < point.at_s) out.push_back(point);
    count_ = 0;
  }

 private:
  TracePoint first_, low_, high_, last_;
  std::size_t count_ = 0;
};

/// Leaves out what lies within `tolerance` of the line between the points kept (the cone of slopes that still
/// passes all points since the last one kept).
std::vector<TracePoint> straightened(const std::vector<TracePoint>& points, double tolerance) {
  if (points.size() < 3) return points;
  std::vector<TracePoint> kept{points.front()};
  double least = -std::numeric_limits<double>::infinity();
  double most = std::numeric_limits<double>::infinity();
  for (std::size_t i = 1; i < points.size(); ++i) {
    const TracePoint& anchor = kept.back();
    const double run_s = points[i].at_s - anchor.at_s;
    const double slope = (points[i].celsius - anchor.celsius) / run_s;
    if (slope < least || slope > most) {
      kept.push_back(points[i - 1]);
      const double from_previous_s = points[i].at_s - points[i - 1].at_s;
      least = (points[i].celsius - points[i - 1].celsius - tolerance) / from_previous_s;
      most = (points[i].celsius - points[i - 1].celsius + tolerance) / from_previous_s;
      continue;
    }
    least = std::max(least, slope - tolerance / run_s);
    most = std::min(most, slope + tolerance / run_s);
  }
  kept.push_back(points.back());
  return kept;
}

class PieceWriter {
 public:
  PieceWriter(const Thinning& thinning, std::vector<TracePiece>& pieces)
      : thinning_(thinning), pieces_(pieces) {}

  void add(TracePoint point, bool exclusion, bool joined) {
    if (open_ && (!joined || exclusion != exclusion_)) close();
    if (!open_) {
      open_ = true;
      exclusion_ = exclusion;
      column_at_ = -1;
    }
    const auto at = static_cast<long long>(std::floor((point.at_s - thinning_.from_s) / thinning_.column_s));
    if (at != column_at_) column_.empty_into(points_);
    column_at_ = at;
    column_.add(point);
  }
  void close() {
    if (!open_) return;
    column_.empty_into(points_);
    pieces_.push_back({exclusion_, straightened(points_, thinning_.tolerance_k)});
    points_.clear();
    open_ = false;
  }

 private:
  const Thinning& thinning_;
  std::vector<TracePiece>& pieces_;
  std::vector<TracePoint> points_;
  Column column_;
  long long column_at_ = -1;
  bool open_ = false;
  bool exclusion_ = false;
};

}  // namespace

std::vector<TracePiece> thinned(const Chart& chart, std::size_t trace, const Thinning& thinning) {
  const Record& record = *chart.record;
  const auto& times = record.times_s;
  // One reading more on either side, so that lines run to the edge of what is shown.
  auto first =
      static_cast<std::size_t>(std::lower_bound(times.begin(), times.end(), thinning.from_s) - times.begin());
  auto last =
      static_cast<std::size_t>(std::upper_bound(times.begin(), times.end(), thinning.to_s) - times.begin());
  first = first > 0 ? first - 1 : 0;
  last = std::min(last + 1, times.size());

  std::vector<std::uint32_t> rows;
  std::vector<double> celsius;
  chart.traces[trace].readings.collect(first, last, rows, celsius);
  std::vector<std::pair<double, double>> exclusions;
  for (const ChartExclusion& exclusion : chart.exclusions)
    if (exclusion.trace == trace) exclusions.emplace_back(exclusion.from_s, exclusion.to_s);

  std::vector<TracePiece> pieces;
  PieceWriter writer(thinning, pieces);
  auto next_break = record.breaks.begin();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const std::size_t row = rows[i];
    bool joined = i > 0 && times[row] - times[rows[i - 1]] <= chart.interpolate_max_s + 1e-9;
    if (i > 0) {
      // A break at row r parts r from r + 1.
      while (next_break != record.breaks.end() && *next_break < rows[i - 1]) ++next_break;
      if (next_break != record.breaks.end() && *next_break < row) joined = false;
    }
    const double at_s = times[row];
    const bool exclusion = std::any_of(exclusions.begin(), exclusions.end(), [at_s](const auto& time_range) {
      return at_s >= time_range.first && at_s <= time_range.second;
    });
    writer.add({at_s, celsius[i]}, exclusion, joined);
  }
  writer.close();
  return pieces;
}

}  // namespace soakwright::pdf
