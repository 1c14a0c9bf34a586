// The procedure as it was asked: every limit in words, with where it comes from.
#include <fmt/format.h>

#include "core/report/sections.h"

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
std::string worked_out(const Limit& limit, const Analysis& analysis, Print print) {
  const auto thicknesses = governing_thicknesses(analysis);
  std::string text;
  for (const auto& [weld, thickness] : thicknesses) {
    const auto value = limit_at(limit, thickness);
    if (!value) continue;
    if (!text.empty()) text += "; ";
    text += print(*value) + " for " + thickness_text(thickness);
    if (!weld.empty() && thicknesses.size() > 1) text += " (" + weld + ")";
  }
  return text;
}

std::string rate_limit_text(const RateLimit& limit, const ReportContext& context) {
  const PrintedNumbers& say = context.say;
  if (const auto* plain = std::get_if<HeatingRate>(&limit)) return say.limit(*plain);
  const RateRule& rule = std::get<RateRule>(limit);
  std::string text = fmt::format("{} divided by the thickness in {}", say.limit(rule.over),
                                 rule.per == LengthUnit::inch ? "in" : "mm");
  if (rule.at_least) text += ", not below " + say.limit(*rule.at_least);
  if (rule.at_most) text += ", not above " + say.limit(*rule.at_most);
  const auto values = worked_out(limit, context.analysis,
                                 [&](HeatingRate rate) { return say.rate(rate.celsius_per_hour()); });
  return values.empty() ? text : text + ": " + values;
}

std::string time_limit_text(const TimeLimit& limit, const ReportContext& context) {
  if (const auto* plain = std::get_if<double>(&limit)) return context.say.duration_limit(*plain);
  const TimeRule& rule = std::get<TimeRule>(limit);
  std::vector<std::string> points;
  points.reserve(rule.points.size());
  for (const auto& [thickness, seconds] : rule.points)
    points.push_back(context.say.duration_limit(seconds) + " at " + thickness_text(thickness));
  std::string text = listing(points) + (points.size() > 1 ? ", straight lines between" : "");
  if (rule.beyond)
    text += fmt::format(", beyond that {} more per {}", context.say.duration_limit(rule.beyond->seconds),
                        thickness_text(rule.beyond->per));
  if (rule.step) text += ", thickness rounded up to whole steps of " + thickness_text(*rule.step);
  const auto values = worked_out(limit, context.analysis,
                                 [&](double seconds) { return context.say.duration_limit(seconds); });
  return values.empty() ? text : text + ": " + values;
}

LabelledText spread_limit(const TemperatureDifference& most, std::optional<double> within_m,
                          const PrintedNumbers& say) {
  std::string text = "at most " + say.limit(most);
  if (within_m) text += " within " + short_text(*within_m, 3) + " m along the work";
  return {"Spread", text};
}

std::vector<LabelledText> ramp_limits(const RampStage& ramp, const ReportContext& context) {
  const PrintedNumbers& say = context.say;
  const bool heat = ramp.direction == RampStage::Direction::heat;
  std::vector<LabelledText> limits;
  if (ramp.above || ramp.below) {
    std::string range;
    if (ramp.above) range = "at and above " + say.limit(*ramp.above);
    if (ramp.below) range += (range.empty() ? "at and below " : ", at and below ") + say.limit(*ramp.below);
    limits.push_back({"Evaluated", range});
  }
  if (ramp.rate_max)
    limits.push_back(
        {heat ? "Heating rate" : "Cooling rate", "at most " + rate_limit_text(*ramp.rate_max, context)});
  if (ramp.rate_min)
    limits.push_back({heat ? "Least heating rate" : "Least cooling rate",
                      "overall at least " + say.limit(*ramp.rate_min)});
  if (ramp.spread_max) limits.push_back(spread_limit(*ramp.spread_max, ramp.spread_within_m, say));
  return limits;
}

std::vector<LabelledText> hold_limits(const HoldStage& hold, const ReportContext& context) {
  const PrintedNumbers& say = context.say;
  std::vector<LabelledText> limits;
  limits.push_back({"Temperature range", say.range(hold.low, hold.high)});
  const char* count =
      hold.count == HoldStage::Count::continuous ? ", without a break" : ", all time_ranges together";
  if (hold.time_min)
    limits.push_back({"Hold time", "at least " + time_limit_text(*hold.time_min, context) + count});
  if (hold.time_max_s)
    limits.push_back({"Longest time", "at most " + context.say.duration_limit(*hold.time_max_s)});
  if (hold.excursion_time_max_s)
    limits.push_back({"Out of the range",
                      "at most " + context.say.duration_limit(*hold.excursion_time_max_s) + " in all"});
  if (hold.spread_max) limits.push_back(spread_limit(*hold.spread_max, hold.spread_within_m, say));
  if (hold.edge_fraction_min)
    limits.push_back({"Edge of the heated band",
                      "at least " + short_text(*hold.edge_fraction_min, 3) + " of the range's lower edge"});
  if (hold.tempering_min) limits.push_back({"Tempering", "at least " + short_text(*hold.tempering_min, 3)});
  if (hold.tempering_max) limits.push_back({"Tempering", "at most " + short_text(*hold.tempering_max, 3)});
  return limits;
}

std::vector<LabelledText> maintain_limits(const MaintainStage& maintain, const ReportContext& context) {
  return {{"Temperature range", context.say.range(maintain.low, maintain.high)}, {"During", maintain.during}};
}

std::vector<LabelledText> record_limits(const RecordLimits& limits, const PrintedNumbers& say) {
  std::vector<LabelledText> facts;
  if (limits.temperature_max) facts.push_back({"Maximum temperature", say.limit(*limits.temperature_max)});
  if (limits.start_temperature_max)
    facts.push_back({"At loading", "at most " + say.limit(*limits.start_temperature_max)});
  if (limits.end_temperature_max)
    facts.push_back({"At opening", "at most " + say.limit(*limits.end_temperature_max)});
  if (limits.gap_max_s)
    facts.push_back({"Step between rows", "at most " + say.duration_limit(*limits.gap_max_s)});
  if (limits.sampling_interval_max_s)
    facts.push_back({"Usual step", "at most " + say.duration_limit(*limits.sampling_interval_max_s)});
  if (limits.thermocouples_min)
    facts.push_back({"Thermocouples", fmt::format("at least {}", *limits.thermocouples_min)});
  return facts;
}

std::vector<LabelledText> evaluation_facts(const Procedure& procedure, const ReportContext& context) {
  const Evaluation& evaluation = procedure.evaluation;
  std::vector<LabelledText> facts;
  facts.push_back({"Decision", evaluation.decision == Decision::simple ? "simple" : "guarded"});
  facts.push_back({"Rate window", context.say.duration_limit(evaluation.rate_window_s)});
  facts.push_back({"Holes joined", "up to " + context.say.duration_limit(interpolate_max_for(
                                                  procedure, context.analysis.record->interval_s))});
  std::string excursion_allowed = "none";
  if (evaluation.excursion_allowed.time_s > 0.0) {
    excursion_allowed = "up to " + context.say.duration_limit(evaluation.excursion_allowed.time_s);
    if (evaluation.excursion_allowed.depth)
      excursion_allowed += ", no deeper than " + context.say.limit(*evaluation.excursion_allowed.depth);
  }
  facts.push_back({"ExcursionAllowed", excursion_allowed});
  facts.push_back({"Settling", context.say.duration_limit(evaluation.in_range_min_s)});
  return facts;
}

}  // namespace

std::string provenance_text(const Provenance& provenance) {
  std::string text = provenance.source.value_or(std::string{});
  const auto append = [&text](const std::string& part) { text += (text.empty() ? "" : ", ") + part; };
  if (provenance.edition) append("edition " + *provenance.edition);
  if (provenance.clause) append("clause " + *provenance.clause);
  if (provenance.flag)
    append(*provenance.flag == Provenance::Flag::seen ? "seen in print"
                                                      : "from memory, check against your edition");
  return text;
}

ProcedureSection procedure_section(const ReportContext& context) {
  const Procedure& procedure = *context.analysis.procedure;
  ProcedureSection section;
  section.facts.push_back({"Number", procedure.number});
  if (procedure.revision) section.facts.push_back({"Revision", *procedure.revision});
  if (procedure.title) section.facts.push_back({"Title", *procedure.title});
  if (procedure.thickness) section.facts.push_back({"Thickness", thickness_text(*procedure.thickness)});
  section.source = provenance_text(procedure.provenance);
  section.evaluation = evaluation_facts(procedure, context);

  if (auto limits = record_limits(procedure.record_limits, context.say); !limits.empty())
    section.stages.push_back({0, stage_title(&procedure, 0), std::move(limits), {}});
  for (const Stage& stage : procedure.stages) {
    AskedStage asked{
        stage.number, stage_title(&procedure, stage.number), {}, provenance_text(stage.provenance)};
    if (const auto* ramp = std::get_if<RampStage>(&stage.asked)) asked.limits = ramp_limits(*ramp, context);
    if (const auto* hold = std::get_if<HoldStage>(&stage.asked)) asked.limits = hold_limits(*hold, context);
    if (const auto* maintain = std::get_if<MaintainStage>(&stage.asked))
      asked.limits = maintain_limits(*maintain, context);
    section.stages.push_back(std::move(asked));
  }
  return section;
}

}  // namespace soakwright
