// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/chart_curves.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <utility>

#include "core/measure/rates/window_slopes.h"
#include "core/measure/traces/prepared_traces.h"
#include "core/measure/traces/row_values.h"
#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

constexpr double kNoValue = std::numeric_limits<double>::quiet_NaN();
constexpr double kFewestCurveIntervals = 8.0;  ///< a narrower window is widened, as for a verdict
constexpr double kCurveGapIntervals = 3.0;     ///< with no procedure, what the reader calls a gap
constexpr double kDefaultWindow_s = 900.0;

double interpolate_max_of(const Analysis& analysis) {
  const double interval_s = analysis.record->interval_s;
  return analysis.procedure ? interpolate_max_for(*analysis.procedure, interval_s)
                            : kCurveGapIntervals * interval_s;
}

std::shared_ptr<const PreparedTraces> traces_of(const Analysis& analysis) {
  if (analysis.ground) return analysis.ground;
  // The tempering that comes with them is not looked at.
  return prepare_traces(*analysis.record, interpolate_max_of(analysis), {}, kTemperingConstant);
}

double window_of(const Analysis& analysis) {
  const double wanted = analysis.procedure ? analysis.procedure->evaluation.rate_window_s : kDefaultWindow_s;
  return std::max(wanted, kFewestCurveIntervals * analysis.record->interval_s);
}

Readings rate_of(const Record& record, const RowTicks& ticks, const Trace& trace, double window_s) {
  std::vector<double> rates(record.rows(), kNoValue);
  for (const Piece& piece : trace.pieces) {
    if (piece.end <= piece.first) continue;
    const TraceSource& source = trace.sources[piece.source];
    const IntegerSamples samples = integer_samples(record, ticks, source, piece.first, piece.end);
    visit_windows(
        source, samples, piece.first, piece.end, {piece.from, piece.to}, window_s, 1.0,
        [](const WindowShape&) { return -std::numeric_limits<double>::infinity(); },
        [&](std::size_t sample, double slope, const WindowShape&) { rates[source.row(sample)] = slope; });
  }
  return Readings::of_celsius(std::move(rates), 0.0);
}

Readings difference_of(const Readings& readings, const Readings& reference) {
  std::vector<double> kelvin(readings.rows(), kNoValue);
  for (std::size_t row = 0; row < kelvin.size(); ++row)
    if (readings.celsius(row) && reference.celsius(row))
      kelvin[row] = Readings::difference_k(readings, row, reference, row);
  return Readings::of_celsius(std::move(kelvin), 0.0);
}

std::vector<Readings> differences_of(const Record& record, std::size_t reference) {
  std::vector<Readings> differences(record.channels.size());
  const Readings& from = record.channels[reference].readings;
  if (from.rows() != record.rows()) return differences;
  parallel_for(differences.size(), [&](std::size_t i) {
    const Readings& readings = record.channels[i].readings;
    if (readings.rows() == record.rows()) differences[i] = difference_of(readings, from);
  });
  return differences;
}

Readings spread_of(const Record& record, const TraceSet& set, const std::vector<std::size_t>& group) {
  std::vector<double> kelvin(record.rows(), kNoValue);
  RowValues values(record, set, group);
  values.visit_tiles(record.first_row, record.end_row,
                     [&](std::size_t first, std::size_t count, const std::vector<ColumnTile>& columns) {
                       for (std::size_t row = 0; row < count; ++row) {
                         double low = std::numeric_limits<double>::infinity();
                         double high = -low;
                         int known = 0;
                         for (const ColumnTile& column : columns) {
                           if (column.known != nullptr && column.known[row] == 0) continue;
                           low = std::min(low, column.celsius[row]);
                           high = std::max(high, column.celsius[row]);
                           ++known;
                         }
                         if (known > 1) kelvin[first + row] = high - low;
                       }
                       return true;
                     });
  return Readings::of_celsius(std::move(kelvin), 0.0);
}

std::vector<SpreadCurve> spreads_of(const Analysis& analysis, const TraceSet& set) {
  const Record& record = *analysis.record;
  std::vector<std::optional<std::string>> welds;
  if (analysis.verdicts)
    for (const WeldVerdict& weld : analysis.verdicts->welds) welds.push_back(weld.number);
  if (welds.size() < 2) welds = {std::nullopt};
  std::vector<SpreadCurve> curves;
  for (const auto& weld : welds) {
    std::vector<std::size_t> group;
    for (std::size_t i = 0; i < set.traces.size(); ++i) {
      const Channel& channel = record.channels[set.traces[i].channel];
      if (channel.evaluated() && (!weld || !channel.weld || channel.weld == weld)) group.push_back(i);
    }
    if (group.size() > 1) curves.push_back({weld, spread_of(record, set, group)});
  }
  return curves;
}

void add_limits(ChartCurves& curves, const Analysis& analysis) {
  if (!analysis.verdicts) return;
  for (const Requirement& requirement : analysis.verdicts->requirements) {
    const bool heating = requirement.kind == RequirementKind::heating_rate;
    const bool cooling = requirement.kind == RequirementKind::cooling_rate;
    if (!heating && !cooling && requirement.kind != RequirementKind::spread) continue;
    const auto& stages = analysis.verdicts->stages;
    const auto stage = std::find_if(stages.begin(), stages.end(), [&](const StageCourse& one) {
      return one.number == requirement.stage && one.weld == requirement.weld;
    });
    if (stage == stages.end() || !stage->start_s || !stage->end_s) continue;
    CurveLimit limit{*stage->start_s, *stage->end_s, cooling ? -requirement.limit : requirement.limit,
                     requirement.id};
    (heating || cooling ? curves.rate_limits : curves.spread_limits).push_back(std::move(limit));
  }
}

/// On the line between the readings around the moment, no further apart than may be interpolated.
std::optional<double> level_at(const Record& record, const Readings& readings, double at_s,
                               double interpolate_max_s) {
  const std::vector<double>& times = record.times_s;
  auto right = static_cast<std::size_t>(std::lower_bound(times.begin(), times.end(), at_s - kSampleSlack_s) -
                                        times.begin());
  while (right < times.size() && !readings.celsius(right)) ++right;
  if (right == times.size()) return std::nullopt;
  const double later = *readings.celsius(right);
  if (std::fabs(times[right] - at_s) <= kSampleSlack_s) return later;
  std::size_t left = right;
  while (left > 0) {
    --left;
    const auto earlier = readings.celsius(left);
    if (times[left] > at_s || !earlier) continue;
    if (times[right] - times[left] > interpolate_max_s + kWindowSlack_s) return std::nullopt;
    return *earlier + (later - *earlier) * (at_s - times[left]) / (times[right] - times[left]);
  }
  return std::nullopt;
}

std::optional<double> steepest_between(const Record& record, const ChartCurves& curves, std::size_t channel,
                                       double from_s, double to_s) {
  if (channel >= curves.rates.size() || curves.rates[channel].rows() == 0) return std::nullopt;
  const double half = 0.5 * curves.window_s;
  const std::vector<double>& times = record.times_s;
  auto row = static_cast<std::size_t>(
      std::lower_bound(times.begin(), times.end(), from_s + half - kWindowSlack_s) - times.begin());
  std::optional<double> steepest;
  for (; row < times.size() && times[row] + half <= to_s + kWindowSlack_s; ++row) {
    const auto rate = curves.rates[channel].celsius(row);
    if (rate && (!steepest || std::fabs(*rate) > std::fabs(*steepest))) steepest = rate;
  }
  return steepest;
}

std::optional<double> spread_between(const Record& record, const std::vector<BetweenChannel>& channels,
                                     std::optional<double> BetweenChannel::*level) {
  std::optional<double> low;
  std::optional<double> high;
  int known = 0;
  for (const BetweenChannel& one : channels) {
    const auto celsius = one.*level;
    if (!celsius || !record.channels[one.channel].evaluated()) continue;
    low = low ? std::min(*low, *celsius) : *celsius;
    high = high ? std::max(*high, *celsius) : *celsius;
    ++known;
  }
  return known > 1 ? std::optional(*high - *low) : std::nullopt;
}

}  // namespace

ChartCurves chart_curves(const Analysis& analysis, const WantedCurves& wanted) {
  const Record& record = *analysis.record;
  ChartCurves curves;
  curves.window_s = window_of(analysis);
  curves.rates.resize(record.channels.size());
  if (wanted.differences_from && *wanted.differences_from < record.channels.size())
    curves.differences = differences_of(record, *wanted.differences_from);
  if (record.end_row <= record.first_row) return curves;
  const std::shared_ptr<const PreparedTraces> traces = traces_of(analysis);
  if (wanted.rates)
    parallel_for(traces->set.traces.size(), [&](std::size_t i) {
      const Trace& trace = traces->set.traces[i];
      curves.rates[trace.channel] = rate_of(record, traces->ticks, trace, curves.window_s);
    });
  curves.spreads = spreads_of(analysis, traces->set);
  add_limits(curves, analysis);
  return curves;
}

Between measure_between(const Analysis& analysis, const ChartCurves* curves, double a_s, double b_s) {
  const Record& record = *analysis.record;
  Between between;
  between.from_s = std::min(a_s, b_s);
  between.to_s = std::max(a_s, b_s);
  const double interpolate_max_s = interpolate_max_of(analysis);
  for (std::size_t i = 0; i < record.channels.size(); ++i) {
    const Readings& readings = record.channels[i].readings;
    BetweenChannel one;
    one.channel = i;
    one.from_c = level_at(record, readings, between.from_s, interpolate_max_s);
    one.to_c = level_at(record, readings, between.to_s, interpolate_max_s);
    if (one.from_c && one.to_c) one.difference_k = *one.to_c - *one.from_c;
    if (one.difference_k && between.to_s - between.from_s > kSampleSlack_s)
      one.mean_rate = *one.difference_k * 3600.0 / (between.to_s - between.from_s);
    if (curves != nullptr)
      one.steepest_rate = steepest_between(record, *curves, i, between.from_s, between.to_s);
    between.channels.push_back(one);
  }
  between.from_spread_k = spread_between(record, between.channels, &BetweenChannel::from_c);
  between.to_spread_k = spread_between(record, between.channels, &BetweenChannel::to_c);
  return between;
}

}  // namespace soakwright
