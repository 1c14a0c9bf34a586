// How each figure was measured; only what applies to this record and this procedure is said.
#include <algorithm>
#include <initializer_list>

#include <fmt/format.h>

#include "core/report/sections.h"

namespace soakwright {
namespace {

constexpr double kLeastIntervalsInWindow = 8.0;

/// Which kinds of requirement were judged.
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
  return std::any_of(procedure.stages.begin(), procedure.stages.end(), [](const Stage& stage) {
    const auto* ramp = std::get_if<RampStage>(&stage.asked);
    return ramp != nullptr && ramp->spread_within_m.has_value();
  });
}

bool any_counted(const Procedure& procedure, HoldStage::Count count) {
  return std::any_of(procedure.stages.begin(), procedure.stages.end(), [count](const Stage& stage) {
    const auto* hold = std::get_if<HoldStage>(&stage.asked);
    return hold != nullptr && hold->time_min && hold->count == count;
  });
}

void add_readings(std::vector<Fact>& notes, const Procedure& procedure, const Telling& telling) {
  notes.push_back(
      {"Readings",
       fmt::format(
           "Between two readings of a thermocouple no more than {} apart its temperature is the straight "
           "line "
           "through them. Elsewhere, and before its first and after its last reading, it is unknown. The "
           "moment "
           "at which a level is crossed is taken on these lines, not at the next row; at the edge is in.",
           rounded_duration(bridge_for(procedure, telling.analysis.record->interval_s)))});
}

void add_rates(std::vector<Fact>& notes, const Procedure& procedure, const Telling& telling,
               const Asked& asked) {
  if (!asked.any({RequirementKind::heating_rate, RequirementKind::cooling_rate,
                  RequirementKind::heating_rate_min, RequirementKind::cooling_rate_min}))
    return;
  const double wanted_s = procedure.judging.rate_window_s;
  const double floor_s = kLeastIntervalsInWindow * telling.analysis.record->interval_s;
  std::string window =
      fmt::format("A rate is the least-squares slope of a thermocouple's readings within a window of {}",
                  rounded_duration(std::max(wanted_s, floor_s)));
  if (floor_s > wanted_s)
    window += fmt::format(" (asked: {}; a window holds at least 8 intervals of the log)",
                          rounded_duration(wanted_s));
  window +=
      ", at least 5 readings, centred on each reading in turn, wherever the window lies wholly within what "
      "is judged. "
      "The steepest window of all judged thermocouples is the measured rate: every rise is held to the "
      "heating limit and "
      "every fall to the cooling limit, not only the planned ones.";
  notes.push_back({"Rates", window});
  notes.push_back({"Noise",
                   "The steepest of thousands of noisy slopes lies above the true one. The noise of the "
                   "readings is taken from the "
                   "distance of each reading from the line between its neighbours, and gives each slope a "
                   "standard error. A rate is "
                   "met at or below the limit, not met where a slope less 4 standard errors is still above "
                   "it, and undecided between."});
  if (asked.any({RequirementKind::heating_rate_min, RequirementKind::cooling_rate_min}))
    notes.push_back(
        {"Overall rates",
         "The overall rate of a thermocouple runs from the level above which the stage is judged to the edge "
         "of the hold's band, or back. A least rate is held against the smallest of them."});
  else
    notes.push_back(
        {"Overall rates",
         "The overall rate of a thermocouple runs from the level above which the stage is judged to the edge "
         "of the hold's band, or back; it stands beside the steepest window and decides nothing."});
}

void add_holds(std::vector<Fact>& notes, const Procedure& procedure, const Telling& telling,
               const Asked& asked) {
  if (!any_hold(procedure)) return;
  if (any_counted(procedure, HoldStage::Count::continuous))
    notes.push_back(
        {"Hold time",
         "The clock starts when the last judged thermocouple comes into the band and stops when the first "
         "one "
         "leaves it. The longest such stretch, the core, is the certain time; the possible time adds what is "
         "unknown around it. Met where the certain time is enough, not met where the possible time is not, "
         "undecided between."});
  if (any_counted(procedure, HoldStage::Count::accumulated))
    notes.push_back({"Hold time, accumulated",
                     "All stretches of the hold in which every judged thermocouple is in the band are added. "
                     "Unknown time "
                     "around them is possible, not certain."});
  const Grace& grace = procedure.judging.grace;
  if (grace.time_s > 0.0)
    notes.push_back(
        {"Grace", fmt::format("A departure from the band of no more than {}{} does not break a hold.",
                              rounded_duration(grace.time_s),
                              grace.depth ? " and no deeper than " +
                                                telling.say.asked_difference(grace.depth->kelvin())
                                          : std::string{})});
  notes.push_back(
      {"Edges of a hold",
       fmt::format(
           "At either end of a hold, stretches in the band shorter than {} or than a tenth of the core "
           "are the edge being crossed and are set aside. The span runs from the first stretch left "
           "to the last.",
           rounded_duration(procedure.judging.settle_s))});
  if (asked.any({RequirementKind::hold_band}))
    notes.push_back(
        {"Time out of the band",
         "Within the span, the time in which at least one judged thermocouple is known to be out, whether or "
         "not grace fills it."});
  if (asked.any({RequirementKind::hold_time_max}))
    notes.push_back(
        {"Longest time",
         "The longest total time that any judged thermocouple is at or above the band's lower edge."});
  if (asked.any({RequirementKind::over}))
    notes.push_back(
        {"Highest temperature",
         "The highest reading of any judged thermocouple from the hold before to the hold after, so that one "
         "that overheats while another lags is seen; towards a hotter hold, only within the span."});
  if (asked.any({RequirementKind::edge}))
    notes.push_back(
        {"Edge of the heated band",
         "The lowest temperature of each edge thermocouple in the hold's stretches, as a share of the band's "
         "lower edge."});
  if (asked.any({RequirementKind::tempering_min, RequirementKind::tempering_max}))
    notes.push_back(
        {"Tempering",
         "Hollomon-Jaffe parameter P = T (20 + log10 t) / 1000, T in kelvin (273.15 at 0 °C) and t in hours, "
         "carried along the whole curve: at each step what is gathered is converted to the step's "
         "temperature "
         "at equal P, then the step is added. The hours given are worth the same at the band's lower edge."});
}

void add_spreads(std::vector<Fact>& notes, const Procedure& procedure, const Asked& asked) {
  if (!asked.any({RequirementKind::spread})) return;
  std::string text = "At each row, the highest less the lowest temperature of the judged thermocouples";
  if (any_within(procedure)) text += ", or of those no further apart along the work than the procedure says";
  text +=
      ". While heating and cooling, where the hottest is at or above the level from which the stage is "
      "judged; in a hold, "
      "within the stretches of its span.";
  notes.push_back({"Spread", text});
}

void add_whole_record(std::vector<Fact>& notes, const Asked& asked) {
  if (asked.any({RequirementKind::ceiling, RequirementKind::start, RequirementKind::end}))
    notes.push_back(
        {"Ceiling, loading, opening",
         "Judged, spare and edge thermocouples are held to these: the highest reading of all, and those of "
         "the first and of the last row."});
  if (asked.any({RequirementKind::thermocouples}))
    notes.push_back(
        {"Thermocouples present",
         "The smallest number of judged thermocouples known at any moment from the first entry into the band "
         "of the first hold to the last exit from that of the last. One with its spare counts once; one put "
         "aside does not count."});
  if (asked.any({RequirementKind::calibration}))
    notes.push_back(
        {"Certificates",
         "The dates that the job gives for the recorder and the judged thermocouples, held against the "
         "record's last day."});
  if (asked.any({RequirementKind::keep}))
    notes.push_back(
        {"Band kept through a period",
         "The known time within the period in which a judged thermocouple is out of the band; the limit is "
         "none at all."});
}

void add_decision(std::vector<Fact>& notes, const Procedure& procedure, const PrintedNumbers& say) {
  if (procedure.judging.decision == Decision::simple) {
    notes.push_back(
        {"Decision",
         "Simple: a value beyond its limit is not met, a value at its limit is met. Limits are met or not by "
         "the values measured, not by the rounded ones printed."});
    return;
  }
  notes.push_back(
      {"Decision",
       fmt::format("Guarded: for each thermocouple, pair and window the expanded uncertainty U (k = 2) is "
                   "taken off its limit; within U of the limit is undecided. U is made up from the tolerance "
                   "or calibration, the extension cable, the recorder and its last digit, in {}.",
                   say.degree())});
}

void add_hands(std::vector<Fact>& notes, const Telling& telling) {
  if (!telling.analysis.verdicts->replaced.empty())
    notes.push_back(
        {"Spares",
         "A spare takes over from the last moment at which its thermocouple is known, to the end of the "
         "record "
         "and never back. Both are then one judged thermocouple; no line and no window joins the two."});
  if (!telling.analysis.record->asides.empty())
    notes.push_back({"Put aside",
                     "A stretch put aside by a person takes that thermocouple out of the group for that "
                     "time; the group is "
                     "judged on those that remain."});
}

}  // namespace

std::vector<Fact> method_notes(const Telling& telling) {
  std::vector<Fact> notes;
  const Analysis& analysis = telling.analysis;
  if (analysis.procedure && analysis.verdicts) {
    const Procedure& procedure = *analysis.procedure;
    const Asked asked{*analysis.verdicts};
    add_readings(notes, procedure, telling);
    add_rates(notes, procedure, telling, asked);
    add_spreads(notes, procedure, asked);
    add_holds(notes, procedure, telling, asked);
    add_whole_record(notes, asked);
    add_decision(notes, procedure, telling.say);
    add_hands(notes, telling);
  }
  if (analysis.course && !analysis.course->phases.empty())
    notes.push_back(
        {"Phases", "Found from the judged thermocouples alone, with no procedure. They decide nothing."});
  if (telling.say.unit() == TemperatureUnit::fahrenheit && analysis.verdicts)
    notes.push_back(
        {"Units", "Tables and chart are in °F. The sentences of requirements and findings are in °C."});
  if (!telling.say.clock())
    notes.push_back(
        {"Times", "The log has no clock: times are hours:minutes:seconds from its first reading."});
  return notes;
}

}  // namespace soakwright
