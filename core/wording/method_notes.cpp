// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/method_notes.h"

#include <algorithm>
#include <initializer_list>

#include <fmt/format.h>

namespace soakwright {
namespace {

constexpr double kLeastIntervalsInWindow = 8.0;

/// Which kinds of requirement were evaluated.
class Evaluated {
 public:
  explicit Evaluated(const Verdicts& verdicts) : verdicts_(&verdicts) {}
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
                     [](const Stage& stage) { return std::holds_alternative<HoldStage>(stage.specified); });
}

bool any_within(const Procedure& procedure) {
  return std::any_of(procedure.stages.begin(), procedure.stages.end(),
                     [](const Stage& stage) { return spread_within_of(stage).has_value(); });
}

bool any_counted(const Procedure& procedure, HoldStage::Count count) {
  return std::any_of(procedure.stages.begin(), procedure.stages.end(), [count](const Stage& stage) {
    const auto* hold = std::get_if<HoldStage>(&stage.specified);
    return hold != nullptr && hold->time_min && hold->count == count;
  });
}

using Notes = std::vector<LabelledText>;

void add_readings(Notes& notes, const Procedure& procedure, const WordingContext& context) {
  notes.push_back(
      {"Readings",
       fmt::format(
           "Between two readings of a thermocouple no more than {} apart its temperature is interpolated by "
           "a straight line. Elsewhere, and before its first and after its last reading, it is not known. "
           "The moment at which a temperature is crossed is taken on these lines, not at the next reading. "
           "A thermocouple exactly at the edge of a range is in range.",
           context.say.duration_limit(interpolate_max_for(procedure, context.analysis.record->interval_s)))});
}

void add_rates(Notes& notes, const Procedure& procedure, const WordingContext& context,
               const Evaluated& evaluated) {
  if (!evaluated.any({RequirementKind::heating_rate, RequirementKind::cooling_rate,
                      RequirementKind::heating_rate_min, RequirementKind::cooling_rate_min}))
    return;
  const double specified_s = procedure.evaluation.rate_window_s;
  const double floor_s = kLeastIntervalsInWindow * context.analysis.record->interval_s;
  std::string text = fmt::format(
      "A rate is the least-squares slope of the readings of a thermocouple within a window of {}, with at "
      "least 5 "
      "readings, centred on each reading in turn, wherever the window is wholly within the time that is "
      "evaluated. "
      "The steepest window of all evaluated thermocouples is the measured rate. Every rise is compared with "
      "the "
      "heating limit and every fall with the cooling limit, not only the planned ones.",
      context.say.duration_limit(std::max(specified_s, floor_s)));
  if (floor_s > specified_s)
    text += fmt::format(
        " The procedure specifies {}; the window is longer because it holds at least 8 intervals of the log.",
        context.say.duration_limit(specified_s));
  notes.push_back({"Rates", text});
  notes.push_back({"Noise",
                   "The steepest of thousands of noisy slopes is above the true one. The noise of the "
                   "readings is taken from the "
                   "distance of each reading from the line between its neighbours, and gives each slope a "
                   "standard error. A "
                   "rate is met at or below the limit, not met where a slope less 4 standard errors is still "
                   "above it, also without any tenth of its readings in a row, and inconclusive between."});
  constexpr const char* kOverall =
      "The overall rate of a thermocouple is measured from the temperature above which the stage is "
      "evaluated to the "
      "edge of the holding temperature range, or back. ";
  const bool decides = evaluated.any({RequirementKind::heating_rate_min, RequirementKind::cooling_rate_min});
  notes.push_back({"Overall rates",
                   kOverall +
                       std::string{decides ? "A minimum rate is compared with the smallest of them. " : ""} +
                       "One that is above a maximum rate by more than noise is not met: a mean above the "
                       "limit proves a steeper rate within it."});
}

void add_holds(Notes& notes, const Procedure& procedure, const WordingContext& context,
               const Evaluated& evaluated) {
  if (!any_hold(procedure)) return;
  if (any_counted(procedure, HoldStage::Count::continuous))
    notes.push_back(
        {"Hold time",
         "The clock starts when the last evaluated thermocouple comes into the holding temperature range and "
         "stops "
         "when the first one leaves it. The longest such time, the continuous hold, is the certain hold "
         "time. The "
         "possible hold time adds the time around it for which readings are missing. The requirement is met "
         "where "
         "the certain time is long enough, not met where the possible time is too short, and inconclusive "
         "between."});
  if (any_counted(procedure, HoldStage::Count::accumulated))
    notes.push_back(
        {"Hold time, accumulated",
         "All times in which every evaluated thermocouple is in the holding temperature range are added. "
         "Time around them for which readings are missing is possible, not certain."});
  const ExcursionAllowed& allowed = procedure.evaluation.excursion_allowed;
  if (allowed.time_s > 0.0) {
    const std::string time = context.say.duration_limit(allowed.time_s);
    notes.push_back(
        {"Excursion allowed",
         allowed.depth
             ? fmt::format("An excursion of no more than {} and no deeper than {} does not interrupt a hold.",
                           time, context.say.limit(*allowed.depth))
             : fmt::format("An excursion of no more than {} does not interrupt a hold.", time)});
  }
  notes.push_back(
      {"Ends of a hold",
       fmt::format(
           "At either end of a hold, times in range shorter than {} or than a tenth of the continuous hold "
           "are "
           "the edge of the range being crossed and do not count. The hold period runs from the first to the "
           "last time in range that is left.",
           context.say.duration_limit(procedure.evaluation.in_range_min_s))});
  if (evaluated.any({RequirementKind::excursion_time}))
    notes.push_back(
        {"Time out of range",
         "The time within the hold period in which at least one evaluated thermocouple is known to be out "
         "of range, excursions allowed included."});
  if (evaluated.any({RequirementKind::hold_time_max}))
    notes.push_back(
        {"Maximum time at temperature",
         "The longest total time of any evaluated thermocouple at or above the low limit of the holding "
         "temperature range."});
  if (evaluated.any({RequirementKind::over}))
    notes.push_back(
        {"Over-temperature",
         "The highest reading of any evaluated thermocouple from the previous hold to the next, so that one "
         "that "
         "overheats while another lags is seen. Towards a hotter hold, only within the hold period."});
  if (evaluated.any({RequirementKind::edge}))
    notes.push_back(
        {"Temperature at heated-band edge",
         "The lowest temperature of each thermocouple at the edge of the heated band while the hold is in "
         "range, as a share of the low limit of the holding temperature range."});
  if (evaluated.any({RequirementKind::tempering_min, RequirementKind::tempering_max}))
    notes.push_back(
        {"Tempering parameter",
         fmt::format(
             "Hollomon–Jaffe parameter P = T ({} + log10 t) / 1000, with T in kelvin (273.15 at 0 °C) "
             "and t in hours, over the whole curve: at each step the tempering so far is converted to "
             "the temperature of the step at equal P, then the step is added. Previous records of the "
             "weld are counted, in order. The hours are the equivalent time at the low limit of the hold.",
             short_text(procedure.evaluation.tempering_constant, 3))});
}

void add_spreads(Notes& notes, const Procedure& procedure, const Evaluated& evaluated) {
  if (!evaluated.any({RequirementKind::spread})) return;
  const char* group =
      any_within(procedure)
          ? "At each reading, the highest less the lowest temperature of the evaluated thermocouples that "
            "are no "
            "further apart along the work than the procedure specifies."
          : "At each reading, the highest less the lowest temperature of the evaluated thermocouples.";
  notes.push_back(
      {"Spread between thermocouples",
       std::string{group} +
           " While heating and cooling: where the hottest is at or above the temperature from which the "
           "stage is evaluated. In a hold: over the whole hold period, excursions included."});
}

void add_whole_record(Notes& notes, const Evaluated& evaluated) {
  if (evaluated.any({RequirementKind::temperature_max, RequirementKind::start, RequirementKind::end}))
    notes.push_back(
        {"Maximum temperature, start and end",
         "Evaluated, spare and edge thermocouples: the highest of all readings, the first readings "
         "(loading) and the last readings (unloading)."});
  if (evaluated.any({RequirementKind::thermocouples}))
    notes.push_back(
        {"Thermocouples with valid readings",
         "The smallest number of evaluated thermocouples with valid readings at any moment from the first "
         "entry into the range of the first hold to the last exit from that of the last. A thermocouple "
         "with its spare counts once; an excluded one does not count."});
  if (evaluated.any({RequirementKind::calibration}))
    notes.push_back(
        {"Calibration certificates",
         "The dates in the job for the recorder and the evaluated thermocouples, compared with the last "
         "day of the record."});
  if (evaluated.any({RequirementKind::maintain}))
    notes.push_back(
        {"Preheat maintenance",
         "The time within the period in which an evaluated thermocouple is known to be out of the preheat "
         "range; none is allowed."});
}

void add_decision(Notes& notes, const Procedure& procedure, const PrintedNumbers& say) {
  if (procedure.evaluation.decision == Decision::simple) {
    notes.push_back(
        {"Decision rule",
         "Simple: a value beyond its limit is not met, a value at its limit is met. The values compared "
         "are the measured ones, not the rounded ones printed."});
    return;
  }
  notes.push_back(
      {"Decision rule",
       fmt::format(
           "Guarded: for each thermocouple, pair and window the expanded uncertainty U (k = 2) is the guard "
           "band; a value within U of the limit is inconclusive. U combines the tolerance or calibration, "
           "the "
           "extension cable, the recorder and its resolution, in {} (JCGM 106, ILAC-G8).",
           say.degree())});
}

void add_changes_by_people(Notes& notes, const WordingContext& context) {
  if (!context.analysis.verdicts->replaced.empty())
    notes.push_back(
        {"Spares",
         "A spare takes over from the last moment at which its thermocouple is known, to the end of the "
         "record. The two are then one evaluated thermocouple; no line and no window joins them."});
  if (!context.analysis.record->exclusions.empty())
    notes.push_back(
        {"Exclusions",
         "A thermocouple that a person excluded for a time is not evaluated for that time; the others "
         "are."});
}

}  // namespace

std::vector<LabelledText> method_notes(const WordingContext& context) {
  Notes notes;
  const Analysis& analysis = context.analysis;
  if (analysis.procedure && analysis.verdicts) {
    const Procedure& procedure = *analysis.procedure;
    const Evaluated evaluated{*analysis.verdicts};
    add_readings(notes, procedure, context);
    add_rates(notes, procedure, context, evaluated);
    add_spreads(notes, procedure, evaluated);
    add_holds(notes, procedure, context, evaluated);
    add_whole_record(notes, evaluated);
    add_decision(notes, procedure, context.say);
    add_changes_by_people(notes, context);
  }
  if (analysis.course && !analysis.course->phases.empty())
    notes.push_back(
        {"Phases",
         "Found from the evaluated thermocouples alone, without the procedure. They decide nothing."});
  const RecorderClock::Kind clock = analysis.record->clock.kind();
  if (clock == RecorderClock::Kind::time_of_day)
    notes.push_back({"Times",
                     "The log has no dates. Times are the recorder's times of day; +1 d marks the day after "
                     "the first."});
  if (clock == RecorderClock::Kind::elapsed)
    notes.push_back({"Times", "The log has no clock. Times are its own count, in hours:minutes:seconds."});
  return notes;
}

}  // namespace soakwright
