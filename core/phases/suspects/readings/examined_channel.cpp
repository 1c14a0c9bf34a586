// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/readings/examined_channel.h"

#include <algorithm>
#include <cmath>

#include "core/phases/robust.h"
#include "core/system/parallel_for.h"

namespace soakwright {

namespace {

constexpr std::size_t kFewForMiddle = 3;

ExaminedChannel examine(const Record& record, const SampledRecord& sampled, const GroupCourse& course,
                        std::size_t trace) {
  ExaminedChannel examined;
  examined.record = &record;
  examined.sampled = &sampled;
  examined.course = &course;
  examined.trace = trace;
  examined.digit_k = record.channels[sampled.channels[trace]].readings.resolution_k();
  examined.others_c.resize(sampled.cells());
  examined.others_known.resize(sampled.cells());
  examined.explained.resize(sampled.cells());
  const SampledTrace& own = sampled.traces[trace];
  std::vector<double> known;
  known.reserve(sampled.cells());
  for (std::size_t k = 0; k < sampled.cells(); ++k) {
    // Of three, the middle of all is nearer the truth than that of the other two, of which one may be wrong.
    const CellMiddle& middle = sampled.middles[k];
    const bool part_of_it = trace < sampled.evaluated && own.known[k] != 0 && middle.count != kFewForMiddle;
    if (own.known[k] != 0) known.push_back(own.celsius[k]);
    if (middle.count < (part_of_it ? 2U : 1U)) continue;
    examined.others_known[k] = 1;
    examined.others_c[k] = part_of_it ? middle.median_without(own.celsius[k]) : middle.median();
  }
  if (!known.empty()) {
    const auto [lowest, highest] = std::minmax_element(known.begin(), known.end());
    examined.lowest_c = *lowest;
    examined.highest_c = *highest;
  }
  examined.noise_k = std::max(noise_of(known), examined.digit_k / std::sqrt(12.0));
  return examined;
}

}  // namespace

std::size_t ExaminedChannel::cells_in(double seconds, std::size_t least) const {
  const double count = std::round(seconds / std::max(sampled->step_s, 1e-9));
  return std::max(least, static_cast<std::size_t>(std::max(count, 0.0)));
}

std::size_t ExaminedChannel::cell_at(double time_s) const {
  const auto begin = sampled->times_s.begin();
  return static_cast<std::size_t>(std::lower_bound(begin, sampled->times_s.end(), time_s) - begin);
}

void ExaminedChannel::explain(double from_s, double to_s) {
  const double reach = sampled->step_s;
  for (std::size_t k = cell_at(from_s - reach); k < cells() && time_s(k) <= to_s + reach; ++k)
    explained[k] = 1;
}

double ExaminedChannel::median_apart(std::size_t first, std::size_t last, std::size_t& count) const {
  std::vector<double> values;
  for (std::size_t k = first; k < std::min(last, cells()); ++k)
    if (comparable(k)) values.push_back(apart_k(k));
  count = values.size();
  return median_of(std::move(values));
}

std::vector<ExaminedChannel> examine_channels(const Record& record, const SampledRecord& sampled,
                                              const GroupCourse& course) {
  std::vector<ExaminedChannel> all(sampled.traces.size());
  parallel_for(all.size(), sampled.cells() * all.size(),
               [&](std::size_t i) { all[i] = examine(record, sampled, course, i); });
  return all;
}

bool run_together(const SampledRecord& sampled, const GroupCourse& course) {
  // Of work in one heating the middle half lies within some tens of kelvin of several hundred.
  constexpr double kMostShare = 0.25;
  constexpr double kRisen = 0.3;           // where there is something to compare
  constexpr std::size_t kMostCells = 200;  // cells that are enough to tell
  if (course.leader) return false;
  std::vector<double> shares;
  for (std::size_t look = 0; look < std::min(kMostCells, sampled.cells()); ++look) {
    const std::size_t k = look * sampled.cells() / std::min(kMostCells, sampled.cells());
    std::vector<double> known;
    for (std::size_t i = 0; i < sampled.evaluated; ++i)
      if (sampled.traces[i].known[k] != 0) known.push_back(sampled.traces[i].celsius[k]);
    if (known.size() < 3) continue;  // of two, either may be right
    std::sort(known.begin(), known.end());
    const double rise = known[known.size() / 2] - course.ambient_c;
    if (rise < kRisen * course.range_k) continue;
    const double half = known.size() == 3
                            ? std::min(known[1] - known[0], known[2] - known[1])
                            : known[known.size() - 1 - known.size() / 4] - known[known.size() / 4];
    shares.push_back(half / std::max(rise, 1.0));
  }
  return median_of(std::move(shares)) <= kMostShare;
}

RowsNear rows_near(const ExaminedChannel& examined, double from_s, double to_s) {
  RowsNear near;
  const std::vector<double>& times = examined.record->times_s;
  const auto begin = times.begin() + static_cast<std::ptrdiff_t>(examined.record->first_row);
  const auto end = times.begin() + static_cast<std::ptrdiff_t>(examined.record->end_row);
  const auto first = static_cast<std::size_t>(std::lower_bound(begin, end, from_s) - times.begin());
  const auto last = static_cast<std::size_t>(std::upper_bound(begin, end, to_s) - times.begin());
  if (first >= last) return near;
  std::vector<std::uint32_t> rows;
  examined.channel().readings.collect(first, last, rows, near.celsius);
  near.times_s.reserve(rows.size());
  near.apart_k.reserve(rows.size());
  std::vector<std::size_t> cells;  // with others known, around the time span
  const std::size_t from_cell = examined.cell_at(from_s);
  for (std::size_t k = from_cell >= 3 ? from_cell - 3 : 0; k < examined.cells(); ++k) {
    if (examined.others_known[k] != 0) cells.push_back(k);
    if (examined.time_s(k) > to_s + 2.0 * examined.sampled->step_s) break;
  }
  std::size_t at = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double time = times[rows[i]];
    near.times_s.push_back(time);
    if (cells.empty()) continue;
    while (at + 2 < cells.size() && examined.time_s(cells[at + 1]) < time) ++at;
    const std::size_t a = cells[at];
    const std::size_t b = cells[std::min(at + 1, cells.size() - 1)];
    const double span = examined.time_s(b) - examined.time_s(a);
    const double share = span > 0.0 ? std::clamp((time - examined.time_s(a)) / span, 0.0, 1.0) : 0.0;
    near.apart_k.push_back(near.celsius[i] -
                           (examined.others_c[a] + share * (examined.others_c[b] - examined.others_c[a])));
  }
  return near;
}

}  // namespace soakwright
