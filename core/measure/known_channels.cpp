// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/known_channels.h"

#include <algorithm>
#include <limits>
#include <vector>

#include "core/measure/hold_time.h"

namespace soakwright {
namespace {

double high_of(const HoldStage& hold) {
  return hold.high ? hold.high->celsius() : std::numeric_limits<double>::infinity();
}

}  // namespace

FewestKnown fewest_known(const TraceSet& set, Group group, Span time) {
  std::vector<std::pair<double, int>> changes;  // when, and by how many
  for (const std::size_t index : group)
    for (const Piece& piece : set.traces[index].pieces) {
      const double from = std::max(piece.from, time.first);
      const double to = std::min(piece.to, time.second);
      if (to <= from) continue;
      changes.emplace_back(from, +1);
      changes.emplace_back(to, -1);
    }
  changes.emplace_back(time.first, 0);
  changes.emplace_back(time.second, 0);
  std::sort(changes.begin(), changes.end());
  FewestKnown fewest{group.size() + 1, time};
  int known = 0;
  for (std::size_t i = 0; i < changes.size();) {
    const double at = changes[i].first;
    for (; i < changes.size() && changes[i].first == at; ++i) known += changes[i].second;
    const double until = i < changes.size() ? changes[i].first : at;
    if (until - at <= kWindowSlack_s) continue;
    const auto count = static_cast<std::size_t>(known);
    if (count < fewest.count)
      fewest = {count, {at, until}};
    else if (count == fewest.count && fewest.time.second == at)
      fewest.time.second = until;  // one channel took over from another
  }
  if (fewest.count > group.size()) fewest.count = 0;
  return fewest;
}

std::optional<Span> first_entry_to_last_exit(const TraceSet& set, Group group, Span record,
                                             const HoldStage& first, const HoldStage& last) {
  std::optional<double> entry;
  std::optional<double> exit;
  for (const std::size_t index : group) {
    const Trace& trace = set.traces[index];
    const auto in = in_and_out(range_spans(trace, first.low.celsius(), high_of(first)), record).in_s;
    if (in) entry = std::min(entry.value_or(*in), *in);
    const auto out = in_and_out(range_spans(trace, last.low.celsius(), high_of(last)), record).out_s;
    if (out) exit = std::max(exit.value_or(*out), *out);
  }
  if (!entry || !exit || *exit <= *entry) return std::nullopt;
  return Span{*entry, *exit};
}

}  // namespace soakwright
