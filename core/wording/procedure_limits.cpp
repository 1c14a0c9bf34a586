// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/procedure_limits.h"

#include <fmt/format.h>

#include "core/wording/draft_comments.h"
#include "core/wording/printed_lengths.h"
#include "core/wording/requirement_words.h"

namespace soakwright {
namespace {

/// The thicknesses that a rule is worked out for: each weld's own, else the procedure's.
std::vector<std::pair<std::string, Thickness>> governing_thicknesses(const Analysis& analysis) {
  std::vector<std::pair<std::string, Thickness>> found;
  if (analysis.verdicts)
    for (const WeldVerdict& weld : analysis.verdicts->welds)
      if (weld.thickness_mm)
        found.emplace_back(weld.number.value_or(std::string{}),
                           Thickness::of(*weld.thickness_mm, LengthUnit::millimetre));
  if (found.empty() && analysis.procedure->thickness)
    found.emplace_back(std::string{}, *analysis.procedure->thickness);
  return found;
}

/// "144.7 °C/h for 38 mm", for each weld.
template <typename Limit, typename Print>
std::string worked_out(const Limit& limit, const WordingContext& context, Print print) {
  const auto thicknesses = governing_thicknesses(context.analysis);
  std::string text;
  for (const auto& [weld, thickness] : thicknesses) {
    const auto value = limit_at(limit, thickness);
    if (!value) continue;
    if (!text.empty()) text += "; ";
    text += print(*value) + " for " + thickness_text(thickness, context.say.unit());
    if (!weld.empty() && thicknesses.size() > 1) text += " (" + weld + ")";
  }
  return text;
}

std::string rate_limit_text(const RateLimit& limit, const WordingContext& context) {
  const PrintedNumbers& say = context.say;
  if (const auto* plain = std::get_if<HeatingRate>(&limit)) return say.limit(*plain);
  const RateRule& rule = std::get<RateRule>(limit);
  std::string text =
      fmt::format("{} divided by the thickness in {}", say.limit(rule.over), length_unit_text(rule.per));
  if (rule.at_least) text += ", not below " + say.limit(*rule.at_least);
  if (rule.at_most) text += ", not above " + say.limit(*rule.at_most);
  const auto values =
      worked_out(limit, context, [&](HeatingRate rate) { return say.rate(rate.celsius_per_hour()); });
  return values.empty() ? text : text + ": " + values;
}

std::string time_limit_text(const TimeLimit& limit, const WordingContext& context) {
  if (const auto* plain = std::get_if<double>(&limit)) return context.say.duration_limit(*plain);
  const TimeRule& rule = std::get<TimeRule>(limit);
  std::vector<std::string> points;
  points.reserve(rule.points.size());
  for (const auto& [thickness, seconds] : rule.points)
    points.push_back(context.say.duration_limit(seconds) + " at " +
                     thickness_text(thickness, context.say.unit()));
  std::string text = listing(points) + (points.size() > 1 ? ", straight lines between" : "");
  if (rule.beyond)
    text += fmt::format(", beyond that {} more per {}", context.say.duration_limit(rule.beyond->seconds),
                        thickness_text(rule.beyond->per, context.say.unit()));
  if (rule.step)
    text += ", thickness rounded up to whole steps of " + thickness_text(*rule.step, context.say.unit());
  const auto values =
      worked_out(limit, context, [&](double seconds) { return context.say.duration_limit(seconds); });
  return values.empty() ? text : text + ": " + values;
}

std::string label_of(RequirementKind kind) { return std::string{words_of(kind).label}; }

std::string at_most(const std::string& limit) { return "at most " + limit; }
std::string at_least(const std::string& limit) { return "at least " + limit; }

LabelledText spread_limit(TemperatureDifference most, std::optional<double> within_m,
                          const PrintedNumbers& say) {
  std::string text = at_most(say.limit(most));
  if (within_m) text += " within " + length_text(*within_m, say.unit()) + " along the work";
  return {label_of(RequirementKind::spread), text};
}

std::vector<LabelledText> ramp_limits(const RampStage& ramp, const WordingContext& context) {
  const PrintedNumbers& say = context.say;
  const bool heat = ramp.direction == RampStage::Direction::heat;
  std::vector<LabelledText> limits;
  if (ramp.above && ramp.below)
    limits.push_back({"Evaluated", fmt::format("at and above {}, at and below {}", say.limit(*ramp.above),
                                               say.limit(*ramp.below))});
  else if (ramp.above)
    limits.push_back({"Evaluated", "at and above " + say.limit(*ramp.above)});
  else if (ramp.below)
    limits.push_back({"Evaluated", "at and below " + say.limit(*ramp.below)});
  if (ramp.rate_max)
    limits.push_back({label_of(heat ? RequirementKind::heating_rate : RequirementKind::cooling_rate),
                      at_most(rate_limit_text(*ramp.rate_max, context))});
  if (ramp.rate_min)
    limits.push_back({label_of(heat ? RequirementKind::heating_rate_min : RequirementKind::cooling_rate_min),
                      "overall at least " + say.limit(*ramp.rate_min)});
  if (ramp.spread_max) limits.push_back(spread_limit(*ramp.spread_max, ramp.spread_within_m, say));
  return limits;
}

std::vector<LabelledText> hold_limits(const HoldStage& hold, const WordingContext& context) {
  const PrintedNumbers& say = context.say;
  std::vector<LabelledText> limits;
  limits.push_back({"Holding temperature range", say.range(hold.low, hold.high)});
  const char* count = hold.count == HoldStage::Count::continuous ? ", continuous" : ", accumulated";
  if (hold.time_min)
    limits.push_back(
        {label_of(RequirementKind::hold_time), at_least(time_limit_text(*hold.time_min, context)) + count});
  if (hold.time_max_s)
    limits.push_back(
        {label_of(RequirementKind::hold_time_max), at_most(say.duration_limit(*hold.time_max_s))});
  if (hold.excursion_time_max_s)
    limits.push_back({label_of(RequirementKind::excursion_time),
                      at_most(say.duration_limit(*hold.excursion_time_max_s)) + " in total"});
  if (hold.spread_max) limits.push_back(spread_limit(*hold.spread_max, hold.spread_within_m, say));
  if (hold.edge_fraction_min)
    limits.push_back(
        {label_of(RequirementKind::edge), at_least(short_text(*hold.edge_fraction_min, 3)) +
                                              " of the low limit of the holding temperature range"});
  if (hold.tempering_min)
    limits.push_back(
        {label_of(RequirementKind::tempering_min), at_least(say.limit(Ratio::of(*hold.tempering_min)))});
  if (hold.tempering_max)
    limits.push_back(
        {label_of(RequirementKind::tempering_max), at_most(say.limit(Ratio::of(*hold.tempering_max)))});
  return limits;
}

std::vector<LabelledText> maintain_limits(const MaintainStage& maintain, const WordingContext& context) {
  return {{"Preheat range", context.say.range(maintain.low, maintain.high)}, {"During", maintain.during}};
}

}  // namespace

std::vector<LabelledText> stage_limits(const Stage& stage, const WordingContext& context) {
  if (const auto* ramp = std::get_if<RampStage>(&stage.specified)) return ramp_limits(*ramp, context);
  if (const auto* hold = std::get_if<HoldStage>(&stage.specified)) return hold_limits(*hold, context);
  return maintain_limits(std::get<MaintainStage>(stage.specified), context);
}

std::vector<LabelledText> record_limits(const WordingContext& context) {
  const RecordLimits& limits = context.analysis.procedure->record_limits;
  const PrintedNumbers& say = context.say;
  std::vector<LabelledText> facts;
  const auto add = [&](RequirementKind kind, const std::string& text) {
    facts.push_back(
        {label_of(kind), facts_of(kind).sense == LimitSense::at_most ? at_most(text) : at_least(text)});
  };
  if (limits.temperature_max) add(RequirementKind::temperature_max, say.limit(*limits.temperature_max));
  if (limits.start_temperature_max) add(RequirementKind::start, say.limit(*limits.start_temperature_max));
  if (limits.end_temperature_max) add(RequirementKind::end, say.limit(*limits.end_temperature_max));
  if (limits.gap_max_s) add(RequirementKind::gap, say.duration_limit(*limits.gap_max_s));
  if (limits.sampling_interval_max_s)
    add(RequirementKind::interval, say.duration_limit(*limits.sampling_interval_max_s));
  if (limits.thermocouples_min)
    add(RequirementKind::thermocouples, say.limit(Count::of(static_cast<int>(*limits.thermocouples_min))));
  return facts;
}

std::vector<LabelledText> evaluation_settings(const WordingContext& context) {
  const Procedure& procedure = *context.analysis.procedure;
  const Evaluation& evaluation = procedure.evaluation;
  const PrintedNumbers& say = context.say;
  std::string allowed = "none";
  if (evaluation.excursion_allowed.time_s > 0.0) {
    allowed = "up to " + say.duration_limit(evaluation.excursion_allowed.time_s);
    if (evaluation.excursion_allowed.depth)
      allowed += ", no deeper than " + say.limit(*evaluation.excursion_allowed.depth);
  }
  return {{"Decision rule", evaluation.decision == Decision::simple ? "simple" : "guarded"},
          {"Rate window", say.duration_limit(evaluation.rate_window_s)},
          {"Longest gap interpolated",
           say.duration_limit(interpolate_max_for(procedure, context.analysis.record->interval_s))},
          {"Excursion allowed", allowed},
          {"Minimum time in range", say.duration_limit(evaluation.in_range_min_s)},
          {"Tempering constant C", short_text(evaluation.tempering_constant, 3)}};
}

std::vector<LabelledText> procedure_facts(const Procedure& procedure, const PrintedNumbers& say) {
  std::vector<LabelledText> facts{{"Number", procedure.number}};
  if (procedure.revision) facts.push_back({"Revision", *procedure.revision});
  if (procedure.title) facts.push_back({"Title", *procedure.title});
  if (procedure.thickness) facts.push_back({"Thickness", thickness_text(*procedure.thickness, say.unit())});
  return facts;
}

std::string provenance_text(const Provenance& provenance) {
  std::string text = provenance.source.value_or(std::string{});
  const auto append = [&text](const std::string& part) { text += (text.empty() ? "" : ", ") + part; };
  if (provenance.edition) append("edition " + *provenance.edition);
  if (provenance.clause) append("clause " + *provenance.clause);
  if (provenance.flag && flag_text(*provenance.flag) != text) append(flag_text(*provenance.flag));
  return text;
}

}  // namespace soakwright
