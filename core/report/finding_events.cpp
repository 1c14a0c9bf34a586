// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/finding_events.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <tuple>
#include <utility>
#include <variant>

namespace soakwright {
namespace {

constexpr double kSameEndIntervals = 2.0;
constexpr double kLeastTolerance_s = 1.0;
constexpr double kSharedTime = 0.8;  // of the shorter of two times

using Time = std::pair<double, double>;

std::optional<Time> time_of(const Finding& finding) {
  if (!finding.from_s && !finding.to_s) return std::nullopt;
  const double from = finding.from_s.value_or(finding.to_s.value_or(0.0));
  return Time{from, finding.to_s.value_or(from)};
}

bool is_temperature(const Finding& finding) {
  return finding.extreme && std::holds_alternative<Temperature>(*finding.extreme);
}

bool one_event(const Finding& a, const Finding& b, double tolerance_s) {
  const auto time_a = time_of(a);
  const auto time_b = time_of(b);
  if (!time_a || !time_b)
    return !time_a && !time_b && a.requirement == b.requirement && a.weld == b.weld && a.kind == b.kind &&
           a.suspects.empty() && b.suspects.empty();
  if (a.channel && a.channel == b.channel && a.requirement == b.requirement && a.weld == b.weld) return false;
  if (std::fabs(time_a->first - time_b->first) <= tolerance_s &&
      std::fabs(time_a->second - time_b->second) <= tolerance_s)
    return true;
  if (!a.channel || a.channel != b.channel || !is_temperature(a) || !is_temperature(b)) return false;
  const double shared = std::min(time_a->second, time_b->second) - std::max(time_a->first, time_b->first);
  const double shorter = std::min(time_a->second - time_a->first, time_b->second - time_b->first);
  return shared >= 0.0 && shared >= kSharedTime * shorter;
}

int rank_of(Finding::Kind kind) {
  switch (kind) {
    case Finding::Kind::not_met:
      return 0;
    case Finding::Kind::inconclusive:
      return 1;
    case Finding::Kind::note:
      break;
  }
  return 2;
}

}  // namespace

std::vector<std::vector<std::size_t>> finding_events(const std::vector<Finding>& findings,
                                                     double interval_s) {
  const double tolerance_s = std::max(kSameEndIntervals * interval_s, kLeastTolerance_s);
  std::vector<std::vector<std::size_t>> by_first;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    // Held against an event's first finding: times that shift little by little do not grow into one.
    const auto known = std::find_if(by_first.begin(), by_first.end(), [&](const auto& event) {
      return one_event(findings[event.front()], findings[i], tolerance_s);
    });
    if (known == by_first.end())
      by_first.push_back({i});
    else
      known->push_back(i);
  }
  using Key = std::tuple<int, double, std::size_t>;
  std::vector<std::pair<Key, std::vector<std::size_t>>> events;
  for (auto& members : by_first) {
    Key key{2, std::numeric_limits<double>::infinity(), members.front()};
    for (const std::size_t member : members) {
      std::get<0>(key) = std::min(std::get<0>(key), rank_of(findings[member].kind));
      if (const auto time = time_of(findings[member]))
        std::get<1>(key) = std::min(std::get<1>(key), time->first);
    }
    events.emplace_back(key, std::move(members));
  }
  std::sort(events.begin(), events.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::vector<std::size_t>> ordered;
  ordered.reserve(events.size());
  for (auto& event : events) ordered.push_back(std::move(event.second));
  return ordered;
}

}  // namespace soakwright
