// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/evaluate/evaluate_heat.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "core/evaluate/previous_curves.h"
#include "core/measure/hydrogen.h"
#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

/// What a person must bear in mind of a published diffusivity: others are a twentieth of it.
constexpr double kScatter = 20.0;

std::optional<double> reference_of(const Procedure& procedure) {
  if (procedure.evaluation.tempering_reference) return procedure.evaluation.tempering_reference->celsius();
  std::optional<double> low_c;
  for (const Stage& stage : procedure.stages)
    if (const auto* hold = std::get_if<HoldStage>(&stage.specified)) low_c = hold->low.celsius();
  return low_c;
}

std::optional<double> hours_at(std::optional<double> parameter, const Heat& heat) {
  if (!parameter || !heat.reference_c) return std::nullopt;
  const double hours = equivalent_hours(*parameter, *heat.reference_c, heat.constant);
  return std::isfinite(hours) ? std::optional{hours} : std::nullopt;
}

QualifiedTempering qualified_for(const QualifiedEntry& entry, const Heat& heat) {
  QualifiedTempering qualified;
  qualified.given = entry.parameter;
  qualified.holds = entry.holds;
  qualified.source = entry.source;
  qualified.parameter = entry.parameter.value_or(0.0);
  if (!entry.holds.empty()) {
    std::vector<LevelHold> holds;
    for (const QualifiedHold& hold : entry.holds) holds.push_back({hold.at.celsius(), hold.seconds / 3600.0});
    qualified.referred_c =
        std::max_element(holds.begin(), holds.end(), [](const LevelHold& a, const LevelHold& b) {
          return a.celsius < b.celsius;
        })->celsius;
    qualified.carried = carried_along(holds, heat.constant);
    qualified.referred = referred_sum(holds, *qualified.referred_c, heat.constant);
    qualified.parameter = std::min(qualified.carried.value_or(0.0), qualified.referred.value_or(0.0));
  }
  qualified.hours = hours_at(qualified.parameter, heat);
  return qualified;
}

std::vector<Diffusivity> diffusivities_of(const HydrogenEntry& entry) {
  std::vector<Diffusivity> all{entry.diffusivity};
  for (const PublishedDiffusivity which : kPublishedDiffusivities) {
    const Diffusivity one = published_diffusivity(which);
    if (one.law != entry.diffusivity.law) all.push_back(one);
  }
  return all;
}

RecordTempering tempering_alone(int cycle, const std::string& file, const Trace* trace, Span time,
                                const Heat& heat) {
  RecordTempering one;
  one.cycle = cycle;
  one.file = file;
  one.has_channel = trace != nullptr;
  one.not_known_s = time.second - time.first;
  if (trace == nullptr) return one;
  if (const auto tempering = tempering_over({{trace, time, nullptr}}, 0.0, heat.constant))
    one.parameter = tempering->parameter;
  one.hours = hours_at(one.parameter, heat);
  one.not_known_s = time_not_known(*trace, time);
  return one;
}

/// `index`: its trace in this record; none where only previous records have the channel.
ChannelHeat heat_of(const WeldCase& weld, const PreviousCurves& previous, const std::string& name,
                    std::optional<std::size_t> index) {
  const Heat& heat = weld.out.heat;
  ChannelHeat channel;
  channel.weld = weld.weld;
  channel.channel = name;
  channel.in_all_records = index.has_value();
  RecordTempering here;
  here.cycle = weld.cycle;
  here.file = weld.record.file;
  here.has_channel = index.has_value();
  here.not_known_s = weld.time().second - weld.time().first;
  if (index) {
    if (const auto& tempering = weld.ground.temperings[*index]) here.parameter = tempering->parameter;
    here.not_known_s = time_not_known(weld.set.traces[*index], weld.time());
  }
  here.hours = hours_at(here.parameter, heat);
  channel.parameter = here.parameter;
  if (!previous.empty()) {
    std::vector<CurvePart> parts = previous.of(channel.channel, channel.in_all_records);
    if (index) parts.push_back({&weld.set.traces[*index], weld.time(), nullptr});
    const auto tempering = tempering_over(parts, 0.0, heat.constant);
    channel.parameter = tempering ? std::optional{tempering->parameter} : std::nullopt;
    for (const PreviousCurves::Curves& one : previous.records())
      channel.records.push_back(
          tempering_alone(one.cycle, one.file, one.trace(channel.channel), one.time, heat));
  }
  channel.records.push_back(std::move(here));
  channel.hours = hours_at(channel.parameter, heat);
  for (const RecordTempering& one : channel.records) {
    channel.not_known_s += one.not_known_s;
    if (one.hours) channel.referred_hours = channel.referred_hours.value_or(0.0) + *one.hours;
  }
  if (channel.referred_hours && *channel.referred_hours > 0.0)
    channel.referred_parameter = parameter_of(*heat.reference_c, *channel.referred_hours, heat.constant);
  return channel;
}

void compare_with_qualified(const WeldCase& weld, const std::vector<ChannelHeat>& channels) {
  Heat& heat = weld.out.heat;
  if (!heat.qualified) return;
  const ChannelHeat* highest = nullptr;
  bool is_least = false;
  for (const ChannelHeat& one : channels) {
    is_least = is_least || !one.in_all_records || one.not_known_s > kSampleSlack_s;
    if (one.parameter && (highest == nullptr || *one.parameter > *highest->parameter)) highest = &one;
  }
  if (highest == nullptr) return;
  const double below = heat.qualified->parameter - *highest->parameter;
  heat.compared.push_back({weld.weld, highest->channel, *highest->parameter, below, is_least});
  if (below >= -kTemperatureSlack) return;
  Finding note;
  note.weld = weld.weld;
  note.channel = highest->channel;
  note.what = {state(Sentence::above_qualified, highest->channel, Ratio::of(*highest->parameter),
                     Ratio::of(heat.qualified->parameter), heat.qualified->source)};
  weld.out.findings.push_back(std::move(note));
}

/// From the end of the period that the job names; else from the record's start.
Span counted_time(const WeldCase& weld, const std::optional<std::string>& after) {
  Span time = weld.time();
  if (!after) return time;
  for (const Period& period : weld.record.periods)
    if (period.name == *after) time.first = std::clamp(period.to_s, time.first, time.second);
  return time;
}

ChannelHydrogen hydrogen_of(const WeldCase& weld, const std::vector<const PreviousCurves::Curves*>& parts,
                            const WeldHydrogen& place, std::size_t index) {
  const Heat& heat = weld.out.heat;
  ChannelHydrogen channel;
  channel.channel = weld.name(index);
  const double half_m = place.size_mm / 2000.0;
  std::optional<double> least, most;
  for (std::size_t i = 0; i < heat.diffusivities.size(); ++i) {
    HydrogenLeft left;
    left.diffusivity = i;
    double integral_m2 = 0.0;
    double not_known_s = 0.0;
    const auto add = [&](const Trace& trace, Span time) {
      const Diffused one = diffused_over(trace, time, heat.diffusivities[i]);
      integral_m2 += one.integral_m2;
      left.below_s += one.below_s;
      left.above_s += one.above_s;
      not_known_s += one.unknown_s;
    };
    for (const PreviousCurves::Curves* part : parts)
      if (const Trace* trace = part->trace(channel.channel))
        add(*trace, part->time);
      else
        channel.in_all_parts = false;
    add(weld.set.traces[index], {place.from_s, place.to_s});
    left.fourier = integral_m2 / (half_m * half_m);
    const HydrogenShare share = hydrogen_left(*heat.shape, left.fourier);
    left.mean = share.mean;
    left.centre = share.centre;
    channel.not_known_s = not_known_s;
    if (i == 0) channel.mean_at_twentieth = hydrogen_left(*heat.shape, left.fourier / kScatter).mean;
    if (left.above_s <= kSampleSlack_s) {
      least = std::min(least.value_or(left.mean), left.mean);
      most = std::max(most.value_or(left.mean), left.mean);
    }
    channel.by_diffusivity.push_back(left);
  }
  if (!least)
    for (const HydrogenLeft& left : channel.by_diffusivity) {
      least = std::min(least.value_or(left.mean), left.mean);
      most = std::max(most.value_or(left.mean), left.mean);
    }
  channel.least = least.value_or(1.0);
  channel.most = most.value_or(1.0);
  return channel;
}

void add_hydrogen(const WeldCase& weld, const PreviousCurves& previous) {
  Heat& heat = weld.out.heat;
  if (!heat.shape) return;
  const HydrogenEntry& entry = *weld.job->hydrogen;
  const auto size = entry.shape == HydrogenShape::cylinder ? entry.diameter
                    : entry.thickness                      ? entry.thickness
                                                           : weld.thickness;
  if (!size) return;  // check_compatibility() refuses it
  WeldHydrogen place;
  place.weld = weld.weld;
  place.size_mm = size->millimetres();
  std::tie(place.from_s, place.to_s) = counted_time(weld, entry.after);
  std::vector<const PreviousCurves::Curves*> parts;
  if (!entry.after)
    for (const PreviousCurves::Curves& one : previous.records())
      if (one.cycle == weld.cycle) parts.push_back(&one);
  place.parts = parts.size();
  place.channels.resize(weld.group.size());
  parallel_for(weld.group.size(), [&](std::size_t member) {
    place.channels[member] = hydrogen_of(weld, parts, place, weld.group[member]);
  });
  std::stable_sort(place.channels.begin(), place.channels.end(),
                   [](const ChannelHydrogen& a, const ChannelHydrogen& b) {
                     return a.by_diffusivity.front().mean > b.by_diffusivity.front().mean;
                   });
  heat.hydrogen.push_back(std::move(place));
}

}  // namespace

void start_heat(const RecordCase& record_case) {
  Heat& heat = record_case.out.heat;
  heat.constant = record_case.procedure.evaluation.tempering_constant;
  heat.reference_c = reference_of(record_case.procedure);
  const Job* const job = record_case.job;
  if (job == nullptr) return;
  if (job->qualified) heat.qualified = qualified_for(*job->qualified, heat);
  if (job->hydrogen) {
    heat.shape = job->hydrogen->shape;
    heat.after = job->hydrogen->after;
    heat.diffusivities = diffusivities_of(*job->hydrogen);
  }
}

void add_heat(const WeldCase& weld) {
  const PreviousCurves previous(weld);
  std::vector<ChannelHeat> channels(weld.group.size());
  parallel_for(weld.group.size(), [&](std::size_t member) {
    const std::size_t index = weld.group[member];
    channels[member] = heat_of(weld, previous, weld.name(index), index);
  });
  for (const std::string& name : previous.not_here(weld))
    channels.push_back(heat_of(weld, previous, name, std::nullopt));
  compare_with_qualified(weld, channels);
  Heat& heat = weld.out.heat;
  heat.tempering.insert(heat.tempering.end(), channels.begin(), channels.end());
  add_hydrogen(weld, previous);
}

}  // namespace soakwright
