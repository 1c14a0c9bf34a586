// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/traces/known_channels.h"

#include <algorithm>
#include <limits>
#include <utility>
#include <vector>

#include "core/measure/holds/hold_time.h"

namespace soakwright {
namespace {

double high_of(const HoldStage& hold) {
  return hold.high ? hold.high->celsius() : std::numeric_limits<double>::infinity();
}

struct KnownChanges {
  std::vector<std::pair<double, int>> at;  ///< when, and by how many

  void add(Span known, Span time) {
    const double from = std::max(known.first, time.first);
    const double to = std::min(known.second, time.second);
    if (to <= from) return;
    at.emplace_back(from, +1);
    at.emplace_back(to, -1);
  }
};

/// Unknown only because its readings are no measurement.
std::vector<Span> known_if_confirmed(const Trace& trace, Span time) {
  if (trace.unmeasured.empty()) return {};
  std::vector<Span> spans = unknown_spans(trace, time.first, time.second);
  std::erase_if(spans, [&](const Span& unknown) {
    return std::none_of(trace.unmeasured.begin(), trace.unmeasured.end(), [&](const Span& unmeasured) {
      return unmeasured.first <= unknown.second && unmeasured.second >= unknown.first;
    });
  });
  return spans;
}

FewestKnown fewest_in(std::vector<std::pair<double, int>> changes, std::size_t group_size, Span time) {
  changes.emplace_back(time.first, 0);
  changes.emplace_back(time.second, 0);
  std::sort(changes.begin(), changes.end());
  FewestKnown fewest{group_size + 1, time};
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
  if (fewest.count > group_size) fewest.count = 0;
  return fewest;
}

}  // namespace

FewestKnown fewest_known(const TraceSet& set, Group group, Span time) {
  KnownChanges as_evaluated;
  KnownChanges if_confirmed;
  for (const std::size_t index : group) {
    const Trace& trace = set.traces[index];
    for (const Piece& piece : trace.pieces) as_evaluated.add({piece.from, piece.to}, time);
    for (const Span& span : known_if_confirmed(trace, time)) if_confirmed.add(span, time);
  }
  if_confirmed.at.insert(if_confirmed.at.end(), as_evaluated.at.begin(), as_evaluated.at.end());
  FewestKnown fewest = fewest_in(std::move(as_evaluated.at), group.size(), time);
  fewest.count_if_confirmed = fewest_in(std::move(if_confirmed.at), group.size(), time).count;
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
