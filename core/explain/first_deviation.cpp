#include "core/explain/first_deviation.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "core/evaluate/sentences.h"
#include "core/explain/hold_deviation.h"
#include "core/measure/prepared_traces.h"
#include "core/measure/tempering.h"

namespace soakwright {
namespace {

constexpr double kSameMoment_s = 1e-3;

/// Finds the deviation of one requirement.
class Deviation {
 public:
  Deviation(const Analysis& analysis, std::size_t index)
      : analysis_(analysis),
        record_(*analysis.record),
        verdicts_(*analysis.verdicts),
        index_(index),
        asked_(verdicts_.requirements[index]) {}

  [[nodiscard]] FirstDeviation find() const {
    switch (asked_.kind) {
      case RequirementKind::temperature_max:
      case RequirementKind::over:
        return first_finding("{0} passed the limit: no reading after that could take it back");
      case RequirementKind::spread:
        return first_finding("{0} and the coldest thermocouple were further apart than the limit");
      case RequirementKind::maintain:
        return first_finding("{0} was out of the range within the period");
      case RequirementKind::start:
        return at(record_.begin_s(), name() + " was above the limit in the first row already");
      case RequirementKind::end:
        return at(record_.end_s(), name() + " was still above the limit in the last row");
      case RequirementKind::gap:
        return at(asked_.from_s.value_or(record_.begin_s()) + asked_.limit,
                  "the next row was due by then and did not come");
      case RequirementKind::interval:
        return at(record_.begin_s(), fmt::format("the log writes a row every {} from the start",
                                                 say_time(asked_.measured.value_or(0.0))));
      case RequirementKind::calibration:
        return at(record_.begin_s(),
                  "a certificate is not valid on the record's last day, whatever the readings are");
      case RequirementKind::thermocouples:
        return first_finding("fewer thermocouples were known than are asked for");
      case RequirementKind::edge:
        return at(
            asked_.at_s.value_or(record_.begin_s()),
            name() + " at the edge of the heated band was colder than its share of the hold's lower edge");
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
        return at(hold_end(), name() + " left the hold with less than is asked for");
      case RequirementKind::tempering_max:
        return too_much_tempering();
    }
    return at(record_.begin_s(), {});
  }

 private:
  [[nodiscard]] FirstDeviation at(double at_s, std::string reason) const {
    return {index_, at_s, std::move(reason)};
  }
  [[nodiscard]] std::string name() const { return asked_.channel.value_or("a thermocouple"); }
  [[nodiscard]] double somewhere() const {
    return asked_.at_s.value_or(asked_.from_s.value_or(record_.begin_s()));
  }

  [[nodiscard]] bool belongs(const Finding& finding) const {
    return finding.requirement == asked_.id && finding.weld == asked_.weld && finding.from_s &&
           finding.kind == Finding::Kind::not_met;
  }
  /// The earliest place at which the limit is not met.
  [[nodiscard]] const Finding* earliest() const {
    const Finding* first = nullptr;
    for (const Finding& finding : verdicts_.findings)
      if (belongs(finding) && (first == nullptr || *finding.from_s < *first->from_s)) first = &finding;
    return first;
  }
  [[nodiscard]] FirstDeviation first_finding(const char* reason) const {
    const Finding* first = earliest();
    const std::string who = first != nullptr ? first->channel.value_or(name()) : name();
    return at(first != nullptr ? *first->from_s : somewhere(), fmt::format(fmt::runtime(reason), who));
  }

  /// The end of the first window that is too steep: until then a slower rest could have kept it.
  [[nodiscard]] FirstDeviation first_steep_window() const {
    const bool heat = asked_.kind == RequirementKind::heating_rate;
    const double width = asked_.to_s.value_or(0.0) - asked_.from_s.value_or(0.0);
    const Finding* first = nullptr;
    double complete = std::numeric_limits<double>::infinity();
    for (const Finding& finding : verdicts_.findings) {
      if (!belongs(finding)) continue;
      const double end = std::min(*finding.from_s + width, finding.to_s.value_or(*finding.from_s + width));
      if (end >= complete) continue;
      complete = end;
      first = &finding;
    }
    if (first == nullptr) return at(somewhere(), fmt::format("{} was too steep", name()));
    return at(
        complete,
        fmt::format("{} had {} faster than the limit since {}: with that a whole window of {} was too steep",
                    first->channel.value_or(name()), heat ? "risen" : "fallen",
                    say_moment(record_, *first->from_s), say_time(complete - *first->from_s)));
  }

  /// When the ramp should have been through.
  [[nodiscard]] FirstDeviation late_ramp() const {
    const double from = asked_.from_s.value_or(record_.begin_s());
    const double took = asked_.to_s.value_or(record_.end_s()) - from;
    const double allowed = took * asked_.measured.value_or(0.0) / asked_.limit;
    return at(from + allowed,
              fmt::format("{} should have been through the ramp {} after its start, and was not", name(),
                          say_time(allowed)));
  }

  [[nodiscard]] const StageCourse* course() const {
    for (const StageCourse& stage : verdicts_.stages)
      if (stage.number == asked_.stage && stage.weld == asked_.weld) return &stage;
    return nullptr;
  }
  /// A requirement of a hold has one.
  [[nodiscard]] const HoldStage* hold() const {
    const auto& stages = analysis_.procedure->stages;
    if (asked_.stage == 0 || asked_.stage > stages.size()) return nullptr;
    return std::get_if<HoldStage>(&stages[asked_.stage - 1].asked);
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
    if (hold() == nullptr) return at(somewhere(), "the hold was too short");
    double wanted = asked_.limit;
    if (!asked_.cycles.empty()) wanted -= asked_.certain_s.value_or(0.0) - asked_.cycles.back().certain_s;
    const auto deviation = hold_deviation(in_range(), wanted, hold()->count, record_.begin_s());
    if (!deviation) return never_in();
    if (deviation->broke_off)
      return at(
          deviation->at_s,
          fmt::format("{} left the range, and the {} until the work cooled were not enough for a new hold",
                      who_ended(*deviation->broke_off), say_time(deviation->left_s)));
    return at(deviation->at_s,
              fmt::format("{} was not in the range, and only {} were left until the work cooled",
                          who_is_out(deviation->at_s), say_time(deviation->left_s)));
  }

  /// No hold at all: when the last chance of a thermocouple was gone.
  [[nodiscard]] FirstDeviation never_in() const {
    if (const Finding* first = earliest(); first != nullptr && first->channel && first->extreme)
      return at(*first->from_s, fmt::format("{} came no nearer to the range than {}", *first->channel,
                                            say_celsius(*first->extreme)));
    double left = record_.end_s();
    std::string who = "a thermocouple";
    for (const InAndOutAlternative& one : asked_.alternatives.thermocouples)
      if (one.out_s && *one.out_s < left) {
        left = *one.out_s;
        who = one.channel;
      }
    return at(left, fmt::format("{} left the range for good before all had been in it together", who));
  }
  [[nodiscard]] std::string who_ended(std::size_t in_range) const {
    const StageCourse* stage = course();
    return stage != nullptr && in_range < stage->ended_by.size()
               ? stage->ended_by[in_range].value_or("a thermocouple")
               : std::string{"a thermocouple"};
  }
  [[nodiscard]] std::string who_is_out(double at_s) const {
    const InAndOutAlternative* last = nullptr;
    for (const InAndOutAlternative& one : asked_.alternatives.thermocouples)
      if (one.in_s && *one.in_s > at_s && (last == nullptr || *one.in_s > *last->in_s)) last = &one;
    return last != nullptr ? last->channel : "a thermocouple";
  }

  [[nodiscard]] const Trace* trace() const {
    if (!analysis_.ground || !asked_.channel) return nullptr;
    for (const Trace& one : analysis_.ground->set.traces)
      if (one.name == *asked_.channel) return &one;
    return nullptr;
  }
  [[nodiscard]] FirstDeviation long_hold() const {
    const Trace* own = trace();
    const double from = in_of_channel();
    if (own == nullptr || hold() == nullptr)
      return at(somewhere(), name() + " had been at temperature for as long as is allowed");
    double left = asked_.limit;
    for (const RangeSpan& span :
         range_spans(*own, hold()->low.celsius(), std::numeric_limits<double>::infinity())) {
      if (span.state != RangeState::in || span.to <= from) continue;
      const double start = std::max(span.from, from);
      if (span.to - start > left)
        return at(start + left, fmt::format("{} had been at or above {} for as long as is allowed", name(),
                                            say_celsius(hold()->low.celsius())));
      left -= span.to - start;
    }
    return at(hold_end(), name() + " had been at temperature for as long as is allowed");
  }
  /// When the channel came to the hold's lower edge, after the hold before it.
  [[nodiscard]] double in_of_channel() const {
    double from = record_.begin_s();
    if (const StageCourse* stage = course())
      for (const StageChannel& one : stage->channels)
        if (one.name == name() && one.in_s) from = *one.in_s;
    return from;
  }

  /// When what was out of the range added up to more than is allowed.
  [[nodiscard]] FirstDeviation excursions() const {
    double left = asked_.limit;
    for (const Finding& finding : verdicts_.findings) {
      if (finding.requirement != asked_.id || finding.weld != asked_.weld || !finding.from_s || !finding.to_s)
        continue;
      const double out = *finding.to_s - *finding.from_s;
      if (out > left)
        return at(*finding.from_s + left,
                  left > 0.0
                      ? fmt::format(
                            "{} was out of the range, and with that all the time that is allowed was used up",
                            finding.channel.value_or(name()))
                      : fmt::format("{} left the range", finding.channel.value_or(name())));
      left -= out;
    }
    return at(somewhere(), "time out of the range was more than is allowed");
  }

  [[nodiscard]] FirstDeviation too_much_tempering() const {
    const Trace* own = trace();
    const auto passed = own != nullptr ? tempering_passes(*own, asked_.limit) : std::nullopt;
    return at(passed.value_or(hold_end()), name() + " had gathered as much as is allowed");
  }

  const Analysis& analysis_;
  const Record& record_;
  const Verdicts& verdicts_;
  std::size_t index_;
  const Requirement& asked_;
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
