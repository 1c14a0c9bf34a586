// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/evaluate/evaluated_reading.h"

#include <algorithm>
#include <cmath>

#include "core/measure/traces/unknown_time.h"
#include "core/units/printed_quantity.h"

namespace soakwright {
namespace {

bool before(const ReadingAt& a, const ReadingAt& b) {
  return a.at_s != b.at_s ? a.at_s < b.at_s : a.trace < b.trace;
}

/// Where the channel begins to be too hot: the limit, or what with its U is just at the limit.
std::vector<double> levels_for(const RecordCase& record_case, std::size_t trace, double limit_c) {
  if (record_case.guard == nullptr) return {limit_c};
  std::vector<double> levels;
  for (std::size_t source = 0; source < record_case.set.traces[trace].sources.size(); ++source)
    levels.push_back(record_case.guard->surely_below(record_case.set.traces[trace], source, limit_c));
  return levels;
}

/// What a place shows that is above the limit, or may be.
Statement hot_place(const Requirement& requirement, const HotPlace& place, double uncertainty_k,
                    Verdict verdict, const std::string& name) {
  const Temperature hottest = Temperature::of_celsius(place.hottest.celsius);
  const Specified limit{Temperature::of_celsius(requirement.limit)};
  if (verdict == Verdict::not_met) return state(Sentence::above_limit, name, limit, hottest);
  if (!std::isfinite(uncertainty_k)) return state(Sentence::tolerance_not_known, name, hottest);
  return state(Sentence::may_be_above, name, hottest, TemperatureDifference::of_kelvin(uncertainty_k), limit);
}

}  // namespace

std::optional<EvaluatedReading> worst_reading(const RecordCase& record_case, const Requirement& requirement,
                                              const std::vector<ReadingAt>& readings) {
  std::optional<EvaluatedReading> worst;
  double smallest = 0.0;
  for (const ReadingAt& reading : readings) {
    const double u = record_case.guard == nullptr
                         ? 0.0
                         : record_case.guard->of(record_case.set.traces[reading.trace], reading.source)
                               .expanded_k(reading.celsius);
    const double margin = margin_after(requirement, reading.celsius, u);
    const Verdict verdict = held_to_limit(requirement, reading.celsius, u);
    if (!worst) {
      worst = EvaluatedReading{reading, u, verdict};
      smallest = margin;
      continue;
    }
    worst->verdict = std::max(worst->verdict, verdict);
    if (margin > smallest || (margin == smallest && !before(reading, worst->reading))) continue;
    worst->reading = reading;
    worst->uncertainty_k = u;
    smallest = margin;
  }
  return worst;
}

std::optional<EvaluatedReading> evaluated_extreme(const RecordCase& record_case,
                                                  const Requirement& requirement, Group group, Span time) {
  const bool least = requirement.limit_is_least();
  // A reading moves faster than its U: of each channel the extreme one has the smallest margin.
  if (record_case.guard != nullptr)
    return worst_reading(
        record_case, requirement,
        least ? lowest_of_each(record_case.set, group, time) : highest_of_each(record_case.set, group, time));
  const auto extreme =
      least ? lowest_reading(record_case.set, group, time) : highest_reading(record_case.set, group, time);
  if (!extreme) return std::nullopt;
  return worst_reading(record_case, requirement, {*extreme});
}

void set_reading(const RecordCase& record_case, Requirement& requirement, const EvaluatedReading& evaluated) {
  if (record_case.guard != nullptr)
    set_measured(requirement, evaluated.reading.celsius, evaluated.uncertainty_k);
  else
    set_measured(requirement, evaluated.reading.celsius);
  requirement.channel = record_case.name(evaluated.reading.trace);
  requirement.at_s = evaluated.reading.at_s;
  requirement.verdict = evaluated.verdict;
}

std::vector<Finding> hot_places(const RecordCase& record_case, const Requirement& requirement, Group group,
                                Span time) {
  std::vector<Finding> findings;
  for (const std::size_t index : group) {
    const Trace& trace = record_case.set.traces[index];
    for (const HotPlace& place :
         places_above(record_case.set, index, time, levels_for(record_case, index, requirement.limit))) {
      const double u =
          record_case.guard != nullptr
              ? record_case.guard->of(trace, place.hottest.source).expanded_k(place.hottest.celsius)
              : 0.0;
      const Verdict verdict = held_to_limit(requirement, place.hottest.celsius, u);
      if (verdict == Verdict::met) continue;
      Finding finding = finding_on(
          requirement, verdict == Verdict::not_met ? Finding::Kind::not_met : Finding::Kind::inconclusive);
      finding.channel = trace.name;
      finding.from_s = place.time.first;
      finding.to_s = place.time.second;
      finding.extreme = Temperature::of_celsius(place.hottest.celsius);
      finding.what = {hot_place(requirement, place, u, verdict, trace.name)};
      findings.push_back(std::move(finding));
    }
  }
  return findings;
}

std::vector<Finding> unknown_places(const RecordCase& record_case, const Requirement& requirement,
                                    Group group, Span time, double cold_c) {
  std::vector<Finding> findings;
  for (const std::size_t index : group)
    for (const UnknownTime& unknown : unknown_times(record_case.set.traces[index], record_case.time())) {
      const Span part{std::max(unknown.time.first, time.first), std::min(unknown.time.second, time.second)};
      if (part.second - part.first <= kWindowSlack_s || known_at_most(unknown, cold_c)) continue;
      Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
      finding.channel = record_case.name(index);
      finding.from_s = part.first;
      finding.to_s = part.second;
      finding.what = {state(Sentence::no_readings_from, *finding.channel, FromTo{part.first, part.second})};
      findings.push_back(std::move(finding));
    }
  return findings;
}

void remark_uncertainty(const RecordCase& record_case, Requirement& requirement) {
  if (record_case.guard != nullptr && !requirement.uncertainty)
    requirement.remarks.push_back(state(Sentence::uncertainty_not_known));
}

}  // namespace soakwright
