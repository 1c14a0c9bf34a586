// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/traces/row_values.h"

#include <algorithm>

namespace soakwright {

RowValues::RowValues(const Record& record, const TraceSet& set, Group group)
    : record_(record),
      set_(set),
      group_(group.begin(), group.end()),
      columns_(group.size()),
      celsius_(group.size() * kRows),
      known_(group.size() * kRows) {
  for (const std::size_t index : group_) {
    const Trace& trace = set.traces[index];
    whole_.push_back(trace.sources.size() == 1 && trace.sources.front().rows.empty() &&
                     trace.exclusions.empty() &&
                     trace.sources.front().t.size() == record.end_row - record.first_row);
  }
}

std::pair<std::size_t, std::size_t> RowValues::rows_within(double from, double to) const {
  const auto begin = record_.times_s.begin() + static_cast<std::ptrdiff_t>(record_.first_row);
  const auto end = record_.times_s.begin() + static_cast<std::ptrdiff_t>(record_.end_row);
  const auto a = std::lower_bound(begin, end, from - kSampleSlack_s);
  const auto b = std::upper_bound(a, end, to + kSampleSlack_s);
  return {static_cast<std::size_t>(a - record_.times_s.begin()),
          static_cast<std::size_t>(b - record_.times_s.begin())};
}

void RowValues::fill(std::size_t member, std::size_t first, std::size_t count) {
  const Trace& trace = set_.traces[group_[member]];
  if (whole_[member]) {
    columns_[member] = {trace.sources.front().c.data() + (first - record_.first_row), nullptr};
    return;
  }
  double* celsius = celsius_.data() + member * kRows;
  std::uint8_t* known = known_.data() + member * kRows;
  std::fill_n(known, count, std::uint8_t{0});
  std::fill_n(celsius, count, 0.0);
  columns_[member] = {celsius, known};
  const double* times = record_.times_s.data() + first;
  for (const Piece& piece : trace.pieces) {
    if (piece.to < times[0] || piece.from > times[count - 1]) continue;
    const TraceSource& source = trace.sources[piece.source];
    auto r = static_cast<std::size_t>(std::lower_bound(times, times + count, piece.from) - times);
    auto i =
        static_cast<std::size_t>(std::upper_bound(source.t.begin() + static_cast<std::ptrdiff_t>(piece.lead),
                                                  source.t.begin() + static_cast<std::ptrdiff_t>(piece.trail),
                                                  times[r < count ? r : count - 1]) -
                                 source.t.begin());
    for (; r < count && times[r] <= piece.to; ++r) {
      if (known[r] != 0) continue;  // the instant of a take-over is the main channel's
      while (i < piece.trail && source.t[i] <= times[r]) ++i;
      if (i == piece.lead) continue;
      celsius[r] = source.t[i - 1] == times[r] || i == piece.trail ? source.c[i - 1]
                                                                   : on_line(source, i - 1, times[r]);
      known[r] = 1;
    }
  }
}

}  // namespace soakwright
