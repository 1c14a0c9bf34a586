// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/first_deviation.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/explain/hold_deviation.h"
#include "core/measure/tempering.h"
#include "core/measure/traces/prepared_traces.h"

namespace soakwright {
namespace {

/// Finds the deviation of one requirement.
class Deviation {
 public:
  Deviation(const Analysis& analysis, std::size_t index)
      : analysis_(analysis),
        record_(*analysis.record),
        verdicts_(*analysis.verdicts),
        index_(index),
        specified_(verdicts_.requirements[index]) {}

  [[nodiscard]] FirstDeviation find() const {
    switch (specified_.kind) {
      case RequirementKind::temperature_max:
      case RequirementKind::over:
        return first_finding(Sentence::deviation_maximum_exceeded);
      case RequirementKind::spread:
        return first_finding(Sentence::deviation_spread_exceeded);
      case RequirementKind::maintain:
        return first_finding(Sentence::deviation_preheat_left);
      case RequirementKind::thermocouples:
        return first_finding(Sentence::deviation_few_thermocouples);
      case RequirementKind::start:
        return of_channel(record_.begin_s(), Sentence::deviation_loaded_hot);
      case RequirementKind::end:
        return of_channel(record_.end_s(), Sentence::deviation_unloaded_hot);
      case RequirementKind::gap:
        return long_gap();
      case RequirementKind::interval:
        return at(record_.begin_s(), state(Sentence::deviation_interval_long,
                                           Duration::of_seconds(specified_.measured.value_or(0.0))));
      case RequirementKind::calibration:
        return at(record_.begin_s(), state(Sentence::deviation_certificate_expired));
      case RequirementKind::edge:
        return of_channel(specified_.at_s.value_or(record_.begin_s()), Sentence::deviation_edge_cold);
      case RequirementKind::heating_rate:
      case RequirementKind::cooling_rate:
        return first_steep_window();
      case RequirementKind::heating_rate_min:
      case RequirementKind::cooling_rate_min:
        return late_ramp();
      case RequirementKind::hold_time:
        return short_hold();
      case RequirementKind::hold_time_max:
        return long_hold();
      case RequirementKind::excursion_time:
        return excursions();
      case RequirementKind::tempering_min:
        return of_channel(hold_end(), Sentence::deviation_little_tempering);
      case RequirementKind::tempering_max:
        return too_much_tempering();
    }
    return at(record_.begin_s(), {});
  }

 private:
  [[nodiscard]] FirstDeviation at(double at_s, Statement what,
                                  std::optional<std::string> channel = std::nullopt) const {
    return {index_, at_s, at_s, std::move(channel), std::move(what)};
  }
  /// The channel that the requirement names; empty where it names none.
  [[nodiscard]] std::string name() const { return specified_.channel.value_or(std::string{}); }
  /// A statement about `channel` alone.
  [[nodiscard]] FirstDeviation of_channel(double at_s, Sentence sentence, const std::string& channel) const {
    return at(at_s, state(sentence, channel), named(channel));
  }
  [[nodiscard]] FirstDeviation of_channel(double at_s, Sentence sentence) const {
    return of_channel(at_s, sentence, name());
  }
  static std::optional<std::string> named(const std::string& channel) {
    return channel.empty() ? std::nullopt : std::optional{channel};
  }
  [[nodiscard]] double somewhere() const {
    return specified_.at_s.value_or(specified_.from_s.value_or(record_.begin_s()));
  }

  [[nodiscard]] bool belongs(const Finding& finding) const {
    return finding.requirement == specified_.id && finding.weld == specified_.weld && finding.from_s &&
           finding.kind == Finding::Kind::not_met;
  }
  /// The earliest place at which the limit is not met.
  [[nodiscard]] const Finding* earliest() const {
    const Finding* first = nullptr;
    for (const Finding& finding : verdicts_.findings)
      if (belongs(finding) && (first == nullptr || *finding.from_s < *first->from_s)) first = &finding;
    return first;
  }
  [[nodiscard]] FirstDeviation first_finding(Sentence sentence) const {
    const Finding* first = earliest();
    return of_channel(first != nullptr ? *first->from_s : somewhere(), sentence,
                      first != nullptr ? first->channel.value_or(name()) : name());
  }

  /// The gap begins with the last reading before it; the next one was due within the limit.
  [[nodiscard]] FirstDeviation long_gap() const {
    const double from = specified_.from_s.value_or(record_.begin_s());
    FirstDeviation deviation =
        at(from, state(Sentence::deviation_gap_long, AtMoment{from + specified_.limit}));
    deviation.lost_from_s = from + specified_.limit;
    return deviation;
  }

  /// Until the end of the first window that is too steep, a slower rest could have kept it.
  [[nodiscard]] FirstDeviation first_steep_window() const {
    const bool heat = specified_.kind == RequirementKind::heating_rate;
    const double width = specified_.to_s.value_or(0.0) - specified_.from_s.value_or(0.0);
    const Finding* first = nullptr;
    double complete = std::numeric_limits<double>::infinity();
    for (const Finding& finding : verdicts_.findings) {
      if (!belongs(finding)) continue;
      const double whole = finding.to_s.value_or(*finding.from_s + width);
      const double end = finding.over_whole_ramp ? whole : std::min(*finding.from_s + width, whole);
      if (end >= complete) continue;
      complete = end;
      first = &finding;
    }
    const Sentence sentence = heat ? Sentence::deviation_heated_fast : Sentence::deviation_cooled_fast;
    if (first == nullptr)
      return at(somewhere(), state(sentence, name(), Duration::of_seconds(width)), named(name()));
    const std::string channel = first->channel.value_or(name());
    FirstDeviation deviation =
        at(*first->from_s, state(sentence, channel, Duration::of_seconds(complete - *first->from_s)),
           named(channel));
    deviation.lost_from_s = complete;
    return deviation;
  }

  /// When the ramp should have been finished.
  [[nodiscard]] FirstDeviation late_ramp() const {
    const double from = specified_.from_s.value_or(record_.begin_s());
    const double took = specified_.to_s.value_or(record_.end_s()) - from;
    const double allowed = took * specified_.measured.value_or(0.0) / specified_.limit;
    return at(from + allowed, state(Sentence::deviation_ramp_slow, name(), Duration::of_seconds(allowed)),
              named(name()));
  }

  [[nodiscard]] const StageCourse* course() const {
    for (const StageCourse& stage : verdicts_.stages)
      if (stage.number == specified_.stage && stage.weld == specified_.weld) return &stage;
    return nullptr;
  }
  /// A requirement of a hold has one.
  [[nodiscard]] const HoldStage* hold() const {
    const auto& stages = analysis_.procedure->stages;
    if (specified_.stage == 0 || specified_.stage > stages.size()) return nullptr;
    return std::get_if<HoldStage>(&stages[specified_.stage - 1].specified);
  }
  [[nodiscard]] std::vector<Span> in_range() const {
    std::vector<Span> all;
    if (const StageCourse* stage = course()) {
      all = stage->in_range;
      all.insert(all.end(), stage->edge_crossings.begin(), stage->edge_crossings.end());
      std::sort(all.begin(), all.end());
    }
    return all;
  }
  [[nodiscard]] double hold_end() const {
    const std::vector<Span> all = in_range();
    return all.empty() ? record_.end_s() : all.back().second;
  }

  [[nodiscard]] FirstDeviation short_hold() const {
    if (hold() == nullptr) return at(somewhere(), state(Sentence::deviation_hold_short));
    double wanted = specified_.limit;
    if (!specified_.cycles.empty())
      wanted -= specified_.certain_s.value_or(0.0) - specified_.cycles.back().certain_s;
    const auto deviation = hold_deviation(in_range(), wanted, hold()->count, record_.begin_s());
    if (!deviation) return never_in();
    const std::string who =
        deviation->broke_off ? who_ended(*deviation->broke_off) : who_is_out(deviation->at_s);
    return at(deviation->at_s,
              state(deviation->broke_off ? Sentence::deviation_hold_broken : Sentence::deviation_hold_late,
                    who, Duration::of_seconds(deviation->left_s)),
              named(who));
  }

  /// No hold at all: when the last chance of a thermocouple was gone.
  [[nodiscard]] FirstDeviation never_in() const {
    if (const Finding* first = earliest(); first != nullptr && first->channel && first->extreme)
      return at(*first->from_s, state(Sentence::deviation_never_in_range, *first->channel, *first->extreme),
                first->channel);
    double left = record_.end_s();
    std::string who;
    for (const InAndOutAlternative& one : specified_.alternatives.thermocouples)
      if (one.out_s && *one.out_s < left) {
        left = *one.out_s;
        who = one.channel;
      }
    return of_channel(left, Sentence::deviation_left_for_good, who);
  }
  [[nodiscard]] std::string who_ended(std::size_t in_range) const {
    const StageCourse* stage = course();
    return stage != nullptr && in_range < stage->ended_by.size()
               ? stage->ended_by[in_range].value_or(std::string{})
               : std::string{};
  }
  [[nodiscard]] std::string who_is_out(double at_s) const {
    const InAndOutAlternative* last = nullptr;
    for (const InAndOutAlternative& one : specified_.alternatives.thermocouples)
      if (one.in_s && *one.in_s > at_s && (last == nullptr || *one.in_s > *last->in_s)) last = &one;
    return last != nullptr ? last->channel : std::string{};
  }

  [[nodiscard]] const Trace* trace() const {
    if (!analysis_.ground || !specified_.channel) return nullptr;
    for (const Trace& one : analysis_.ground->set.traces)
      if (one.name == *specified_.channel) return &one;
    return nullptr;
  }
  [[nodiscard]] FirstDeviation long_hold() const {
    const Trace* own = trace();
    if (own == nullptr || hold() == nullptr) return of_channel(somewhere(), Sentence::deviation_hold_long);
    const double from = in_of_channel();
    double left = specified_.limit;
    for (const RangeSpan& span :
         range_spans(*own, hold()->low.celsius(), std::numeric_limits<double>::infinity())) {
      if (span.state != RangeState::in || span.to <= from) continue;
      const double start = std::max(span.from, from);
      if (span.to - start > left) return of_channel(start + left, Sentence::deviation_hold_long);
      left -= span.to - start;
    }
    return of_channel(hold_end(), Sentence::deviation_hold_long);
  }
  /// When the channel came to the hold's lower edge, after the hold before it.
  [[nodiscard]] double in_of_channel() const {
    double from = record_.begin_s();
    if (const StageCourse* stage = course())
      for (const StageChannel& one : stage->channels)
        if (one.name == name() && one.in_s) from = *one.in_s;
    return from;
  }

  /// When what was out of range added up to more than is allowed.
  [[nodiscard]] FirstDeviation excursions() const {
    double left = specified_.limit;
    for (const Finding& finding : verdicts_.findings) {
      if (finding.requirement != specified_.id || finding.weld != specified_.weld || !finding.from_s ||
          !finding.to_s)
        continue;
      const double out = *finding.to_s - *finding.from_s;
      if (out > left) {
        FirstDeviation deviation =
            of_channel(*finding.from_s, Sentence::deviation_range_left, finding.channel.value_or(name()));
        deviation.lost_from_s = *finding.from_s + left;
        return deviation;
      }
      left -= out;
    }
    return of_channel(somewhere(), Sentence::deviation_range_left);
  }

  [[nodiscard]] FirstDeviation too_much_tempering() const {
    const Trace* own = trace();
    std::vector<CurvePart> parts;
    for (const PreviousRecord& one : analysis_.previous_records)
      if (one.ground)
        for (const Trace& trace : one.ground->set.traces)
          if (own != nullptr && trace.name == own->name)
            parts.push_back({&trace, {one.record->begin_s(), one.record->end_s()}, nullptr});
    if (own != nullptr) parts.push_back({own, {record_.begin_s(), record_.end_s()}, nullptr});
    const auto passed = own != nullptr ? tempering_passes(parts, specified_.limit,
                                                          analysis_.procedure->evaluation.tempering_constant)
                                       : std::nullopt;
    return of_channel(passed.value_or(hold_end()), Sentence::deviation_much_tempering);
  }

  const Analysis& analysis_;
  const Record& record_;
  const Verdicts& verdicts_;
  std::size_t index_;
  const Requirement& specified_;
};

}  // namespace

std::vector<FirstDeviation> first_deviations(const Analysis& analysis) {
  std::vector<FirstDeviation> deviations;
  if (!analysis.verdicts || !analysis.procedure) return deviations;
  for (std::size_t i = 0; i < analysis.verdicts->requirements.size(); ++i)
    if (analysis.verdicts->requirements[i].verdict == Verdict::not_met)
      deviations.push_back(Deviation(analysis, i).find());
  return deviations;
}

const FirstDeviation* earliest_of(const std::vector<FirstDeviation>& deviations) {
  const auto first =
      std::min_element(deviations.begin(), deviations.end(),
                       [](const FirstDeviation& a, const FirstDeviation& b) { return a.at_s < b.at_s; });
  return first == deviations.end() ? nullptr : &*first;
}

}  // namespace soakwright
