// How each figure was measured; only what applies to this record and this procedure is said.
#include <algorithm>
#include <initializer_list>

#include <fmt/format.h>

#include "core/report/sections.h"

namespace soakwright {
namespace {

constexpr double kLeastIntervalsInWindow = 8.0;

/// Which kinds of requirement were evaluated.
class Asked {
 public:
  explicit Asked(const Verdicts& verdicts) : verdicts_(&verdicts) {}
  [[nodiscard]] bool any(std::initializer_list<RequirementKind> kinds) const {
    return std::any_of(
        verdicts_->requirements.begin(), verdicts_->requirements.end(),
        [&](const Requirement& r) { return std::find(kinds.begin(), kinds.end(), r.kind) != kinds.end(); });
  }

 private:
  const Verdicts* verdicts_;
};

bool any_hold(const Procedure& procedure) {
  return std::any_of(procedure.stages.begin(), procedure.stages.end(),
                     [](const Stage& stage) { return std::holds_alternative<HoldStage>(stage.asked); });
}

bool any_within(const Procedure& procedure) {
  return std::any_of(procedure.stages.begin(), procedure.stages.end(),
                     [](const Stage& stage) { return spread_within_of(stage).has_value(); });
}

bool any_counted(const Procedure& procedure, HoldStage::Count count) {
  return std::any_of(procedure.stages.begin(), procedure.stages.end(), [count](const Stage& stage) {
    const auto* hold = std::get_if<HoldStage>(&stage.asked);
    return hold != nullptr && hold->time_min && hold->count == count;
  });
}

void add_readings(std::vector<LabelledText>& notes, const Procedure& procedure,
                  const ReportContext& context) {
  notes.push_back(
      {"Readings",
       fmt::format(
           "Between two readings of a thermocouple no more than {} apart its temperature is the straight "
           "line "
           "through them. Elsewhere, and before its first and after its last reading, it is unknown. The "
           "moment "
           "at which a level is crossed is taken on these lines, not at the next row; at the edge is in.",
           context.say.duration_limit(interpolate_max_for(procedure, context.analysis.record->interval_s)))});
}

void add_rates(std::vector<LabelledText>& notes, const Procedure& procedure, const ReportContext& context,
               const Asked& asked) {
  if (!asked.any({RequirementKind::heating_rate, RequirementKind::cooling_rate,
                  RequirementKind::heating_rate_min, RequirementKind::cooling_rate_min}))
    return;
  const double wanted_s = procedure.evaluation.rate_window_s;
  const double floor_s = kLeastIntervalsInWindow * context.analysis.record->interval_s;
  std::string window =
      fmt::format("A rate is the least-squares slope of a thermocouple's readings within a window of {}",
                  context.say.duration_limit(std::max(wanted_s, floor_s)));
  if (floor_s > wanted_s)
    window += fmt::format(" (asked: {}; a window holds at least 8 intervals of the log)",
                          context.say.duration_limit(wanted_s));
  window +=
      ", at least 5 readings, centred on each reading in turn, wherever the window lies wholly within what "
      "is evaluated. "
      "The steepest window of all evaluated thermocouples is the measured rate: every rise is held to the "
      "heating limit and "
      "every fall to the cooling limit, not only the planned ones.";
  notes.push_back({"Rates", window});
  notes.push_back({"Noise",
                   "The steepest of thousands of noisy slopes lies above the true one. The noise of the "
                   "readings is taken from the "
                   "distance of each reading from the line between its neighbours, and gives each slope a "
                   "standard error. A rate is "
                   "met at or below the limit, not met where a slope less 4 standard errors is still above "
                   "it, and inconclusive between."});
  if (asked.any({RequirementKind::heating_rate_min, RequirementKind::cooling_rate_min}))
    notes.push_back({"Overall rates",
                     "The overall rate of a thermocouple runs from the level above which the stage is "
                     "evaluated to the edge "
                     "of the hold's range, or back. A least rate is held against the smallest of them."});
  else
    notes.push_back(
        {"Overall rates",
         "The overall rate of a thermocouple runs from the level above which the stage is evaluated to the "
         "edge "
         "of the hold's range, or back; it stands beside the steepest window and decides nothing."});
}

void add_holds(std::vector<LabelledText>& notes, const Procedure& procedure, const ReportContext& context,
               const Asked& asked) {
  if (!any_hold(procedure)) return;
  if (any_counted(procedure, HoldStage::Count::continuous))
    notes.push_back(
        {"Hold time",
         "The clock starts when the last evaluated thermocouple comes into the range and stops when the "
         "first "
         "one "
         "leaves it. The longest such time_range, the core, is the certain time; the possible time adds what "
         "is "
         "unknown around it. Met where the certain time is enough, not met where the possible time is not, "
         "inconclusive between."});
  if (any_counted(procedure, HoldStage::Count::accumulated))
    notes.push_back(
        {"Hold time, accumulated",
         "All time_ranges of the hold in which every evaluated thermocouple is in the range are added. "
         "Unknown time "
         "around them is possible, not certain."});
  const ExcursionAllowed& excursion_allowed = procedure.evaluation.excursion_allowed;
  if (excursion_allowed.time_s > 0.0)
    notes.push_back({"ExcursionAllowed",
                     fmt::format("An excursion from the range of no more than {}{} does not break a hold.",
                                 context.say.duration_limit(excursion_allowed.time_s),
                                 excursion_allowed.depth
                                     ? " and no deeper than " + context.say.limit(*excursion_allowed.depth)
                                     : std::string{})});
  notes.push_back(
      {"Edges of a hold",
       fmt::format(
           "At either end of a hold, time_ranges in the range shorter than {} or than a tenth of the core "
           "are the edge being crossed and are disregarded. The span runs from the first time_range left "
           "to the last.",
           context.say.duration_limit(procedure.evaluation.in_range_min_s))});
  if (asked.any({RequirementKind::excursion_time}))
    notes.push_back({"Time out of the range",
                     "Within the span, the time in which at least one evaluated thermocouple is known to be "
                     "out, whether or "
                     "not excursion_allowed fills it."});
  if (asked.any({RequirementKind::hold_time_max}))
    notes.push_back(
        {"Longest time",
         "The longest total time that any evaluated thermocouple is at or above the range's lower edge."});
  if (asked.any({RequirementKind::over}))
    notes.push_back(
        {"Highest temperature",
         "The highest reading of any evaluated thermocouple from the hold before to the hold after, so that "
         "one "
         "that overheats while another lags is seen; towards a hotter hold, only within the span."});
  if (asked.any({RequirementKind::edge}))
    notes.push_back({"Edge of the heated band",
                     "The lowest temperature of each edge thermocouple in the hold's time_ranges, as a share "
                     "of the range's "
                     "lower edge."});
  if (asked.any({RequirementKind::tempering_min, RequirementKind::tempering_max}))
    notes.push_back(
        {"Tempering",
         "Hollomon-Jaffe parameter P = T (20 + log10 t) / 1000, T in kelvin (273.15 at 0 °C) and t in hours, "
         "carried along the whole curve: at each step what is gathered is converted to the step's "
         "temperature "
         "at equal P, then the step is added. The hours given are worth the same at the range's lower "
         "edge."});
}

void add_spreads(std::vector<LabelledText>& notes, const Procedure& procedure, const Asked& asked) {
  if (!asked.any({RequirementKind::spread})) return;
  std::string text = "At each row, the highest less the lowest temperature of the evaluated thermocouples";
  if (any_within(procedure)) text += ", or of those no further apart along the work than the procedure says";
  text +=
      ". While heating and cooling, where the hottest is at or above the level from which the stage is "
      "evaluated; in a hold, "
      "within the time_ranges of its span.";
  notes.push_back({"Spread", text});
}

void add_whole_record(std::vector<LabelledText>& notes, const Asked& asked) {
  if (asked.any({RequirementKind::temperature_max, RequirementKind::start, RequirementKind::end}))
    notes.push_back({"Maximum temperature, loading, opening",
                     "Evaluated, spare and edge thermocouples are held to these: the highest reading of all, "
                     "and those of "
                     "the first and of the last row."});
  if (asked.any({RequirementKind::thermocouples}))
    notes.push_back(
        {"Thermocouples present",
         "The smallest number of evaluated thermocouples known at any moment from the first entry into the "
         "range "
         "of the first hold to the last exit from that of the last. One with its spare counts once; one put "
         "exclusion does not count."});
  if (asked.any({RequirementKind::calibration}))
    notes.push_back(
        {"Certificates",
         "The dates that the job gives for the recorder and the evaluated thermocouples, held against the "
         "record's last day."});
  if (asked.any({RequirementKind::maintain}))
    notes.push_back({"TemperatureRange kept through a period",
                     "The known time within the period in which an evaluated thermocouple is out of the "
                     "range; the limit is "
                     "none at all."});
}

void add_decision(std::vector<LabelledText>& notes, const Procedure& procedure, const PrintedNumbers& say) {
  if (procedure.evaluation.decision == Decision::simple) {
    notes.push_back(
        {"Decision",
         "Simple: a value beyond its limit is not met, a value at its limit is met. Limits are met or not by "
         "the values measured, not by the rounded ones printed."});
    return;
  }
  notes.push_back(
      {"Decision",
       fmt::format(
           "Guarded: for each thermocouple, pair and window the expanded uncertainty U (k = 2) is "
           "taken off its limit; within U of the limit is inconclusive. U is made up from the tolerance "
           "or calibration, the extension cable, the recorder and its last digit, in {}.",
           say.degree())});
}

void add_hands(std::vector<LabelledText>& notes, const ReportContext& context) {
  if (!context.analysis.verdicts->replaced.empty())
    notes.push_back(
        {"Spares",
         "A spare takes over from the last moment at which its thermocouple is known, to the end of the "
         "record "
         "and never back. Both are then one evaluated thermocouple; no line and no window joins the two."});
  if (!context.analysis.record->exclusions.empty())
    notes.push_back({"Excluded",
                     "A time_range excluded by a person takes that thermocouple out of the group for that "
                     "time; the group is "
                     "evaluated on those that remain."});
}

}  // namespace

std::vector<LabelledText> method_notes(const ReportContext& context) {
  std::vector<LabelledText> notes;
  const Analysis& analysis = context.analysis;
  if (analysis.procedure && analysis.verdicts) {
    const Procedure& procedure = *analysis.procedure;
    const Asked asked{*analysis.verdicts};
    add_readings(notes, procedure, context);
    add_rates(notes, procedure, context, asked);
    add_spreads(notes, procedure, asked);
    add_holds(notes, procedure, context, asked);
    add_whole_record(notes, asked);
    add_decision(notes, procedure, context.say);
    add_hands(notes, context);
  }
  if (analysis.course && !analysis.course->phases.empty())
    notes.push_back(
        {"Phases", "Found from the evaluated thermocouples alone, with no procedure. They decide nothing."});
  if (context.say.unit() == TemperatureUnit::fahrenheit && analysis.verdicts)
    notes.push_back(
        {"Units", "Tables and chart are in °F. The sentences of requirements and findings are in °C."});
  if (!context.say.clock())
    notes.push_back(
        {"Times", "The log has no clock: times are hours:minutes:seconds from its first reading."});
  return notes;
}

}  // namespace soakwright
