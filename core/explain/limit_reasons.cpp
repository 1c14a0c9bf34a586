#include "core/explain/limit_reasons.h"

#include <algorithm>

#include "core/explain/explanation.h"

namespace soakwright {
namespace {

using Kind = RequirementKind;

const std::vector<LimitReason>& all_reasons() {
  static const std::vector<LimitReason> reasons = {
      {Kind::temperature_max,
       "No thermocouple on the work above this at any time.",
       "Hotter than this the steel may lose the strength or the toughness that it was bought for, and close "
       "to its "
       "transformation it changes its structure.",
       kCommonPractice,
       {"the temperature ran past its target at the end of a fast ramp",
        "one zone got more power than its neighbours",
        "the thermocouple that controls the zone read low, for instance because its junction was loose"},
       "Whether one thermocouple was too hot or all of them, and what the ramp looked like in the half hour "
       "before.",
       "A reading of the channel for the time that is not known: a second recorder, or a spare beside it."},
      {Kind::start,
       "No thermocouple above this in the first row.",
       "Work put into a hot furnace, or heated before the record begins, gets steep gradients that nobody "
       "sees.",
       kCommonPractice,
       {"the furnace had not cooled down from the run before", "the recorder was started after the heating"},
       "The first rows: do they lie level, or is the ramp already running?",
       "A record that begins earlier, or the channel's reading in the first row."},
      {Kind::end,
       "No thermocouple above this in the last row.",
       "Work taken out of a hot furnace, or bared while hot, cools faster than anybody measures.",
       kCommonPractice,
       {"insulation was taken off or the furnace opened too early",
        "the recorder was stopped before the work was cold"},
       "Whether the record ends in the middle of the cooling.",
       "A record that goes on longer, or the channel's reading in the last row."},
      {Kind::gap,
       "No step between two rows longer than this.",
       "What happened between two rows is not known; a dip or a peak fits into a long gap.",
       kCommonPractice,
       {"the recorder lost its power or its memory", "rows were lost when the file was copied or stitched",
        "the clock was put forward"},
       "The notices about the file, and the line at which the gap stands.",
       "A second record of the same time."},
      {Kind::interval,
       "Rows usually no further apart than this.",
       "Slow logging hides short peaks and leaves few readings for a rate.",
       kCommonPractice,
       {"the recorder's interval was set for another job", "the file was thinned when it was exported"},
       "The recorder's setting, and whether it keeps a finer file.",
       "The finer file, if the recorder kept one."},
      {Kind::thermocouples,
       "At least so many thermocouples known from the first one's entry into the range of the hold to the "
       "last one's exit.",
       "Fewer points leave parts of the work unseen, and the coldest place may be one of them.",
       kCommonPractice,
       {"a junction came off or a lead broke", "a channel was never connected",
        "a spare was not named in the job"},
       "The channels with missing readings, and whether a spare sat beside them.",
       "The missing channel from another recorder, or a spare named in the job."},
      {Kind::calibration,
       "Certificates of recorder and thermocouples valid on the record's last day.",
       "A reading is as good as the last comparison with a standard.",
       kCommonPractice,
       {"the certificate ran out during the work", "the job names an old certificate"},
       "The dates in the job against those on the certificates.",
       "The certificates' dates in the job."},
      {Kind::heating_rate,
       "No rise steeper than this over the rate window.",
       "A fast rise makes one part of the work much hotter than the next, or its outside than its inside: it "
       "bends, or "
       "cracks where it cannot give way.",
       kCommonPractice,
       {"somebody raised the output by hand", "the controller was tuned for thinner work",
        "one zone heats a part that is thinner than the rest",
        "the thermocouple was lifted, or lies under the heater"},
       "Whether the windows of 30 and 60 minutes are too steep as well, or a short burst was; and whether "
       "its neighbours "
       "rose with it.",
       "Calmer or more frequent readings, or a wider rate window agreed before the run."},
      {Kind::heating_rate_min,
       "No slower than this on the whole way up.",
       "A slow ramp keeps the work for hours in temperatures that only age it.",
       kCommonPractice,
       {"too little power for the mass", "insulation missing or wet", "wind or rain on the work"},
       "The output of the zone, and the insulation at the slowest thermocouple.",
       "A record that shows the whole ramp, from its start to the hold."},
      {Kind::cooling_rate,
       "No fall steeper than this over the rate window.",
       "Uneven cooling puts back the stresses that the hold took out.",
       kCommonPractice,
       {"heaters were switched off instead of ramped down", "insulation was taken off early",
        "a draught through the work"},
       "When insulation came off, and whether the fastest thermocouple sits at an end or an opening.",
       "Calmer or more frequent readings, or a wider rate window agreed before the run."},
      {Kind::cooling_rate_min,
       "No slower than this on the whole way down.",
       "Some steels grow brittle when they pass certain temperatures slowly.",
       kCommonPractice,
       {"the furnace held its heat longer than thought", "too much insulation for this thickness"},
       "The slowest thermocouple's place, and when the heaters went off.",
       "A record that shows the whole fall, from the hold to the lower temperature."},
      {Kind::spread,
       "No more than this between the hottest and the coldest thermocouple at one time.",
       "Parts at different temperatures pull at each other; in the hold the coldest must be warm enough "
       "while the hottest "
       "is not too hot.",
       kCommonPractice,
       {"one zone led or lagged", "thick and thin parts under one controller", "insulation was uneven",
        "one thermocouple read wrong"},
       "The pair that is named, and whether one of them also differs from all the others.",
       "Readings of the channels that are not known there."},
      {Kind::hold_time,
       "All thermocouples in the range together for at least this long.",
       "Stresses and hydrogen need time to go, the longer the thicker the work.",
       kCommonPractice,
       {"the time was counted from the first thermocouple in instead of the last",
        "a dip broke the hold and nobody started the clock again",
        "the heating was switched off on the clock of one zone"},
       "When the last thermocouple came in, when the first one left, and every excursion between.",
       "The record from before its start or after its end, another recorder's log for the time that is not "
       "known, or the "
       "previous record of an interrupted hold."},
      {Kind::hold_time_max,
       "No thermocouple at or above the range's lower edge for longer than this.",
       "Too long at temperature softens the steel.",
       kCommonPractice,
       {"a lagging part was waited for", "several holds add up", "the cooling started late"},
       "Which thermocouple came in first, and how long the others kept it waiting.",
       "The channel's readings for the time that is not known."},
      {Kind::excursion_time,
       "No more time than this out of the range within the hold.",
       "Time out of the range does not count, and a dip deep enough undoes what was gained.",
       kCommonPractice,
       {"a breaker tripped or a heater failed", "the supply was interrupted",
        "a junction lost its contact for a while"},
       "How deep and how long the worst excursion was, and which thermocouple made it.",
       "Readings for the time within the hold that is not known."},
      {Kind::over,
       "No thermocouple above the range's upper edge around the hold.",
       "The range is the range in which the properties of the work are known; one thermocouple above it is "
       "one place above "
       "it, whatever the others read.",
       kCommonPractice,
       {"the temperature ran past its target at the end of the ramp",
        "one zone was pushed to help a lagging one"},
       "Whether the other thermocouples were still below the range at that moment.",
       "A hold that can be told from the hotter one beside it, or the channel's readings."},
      {Kind::edge,
       "The edge of the heated band at least this share of the hold's lower edge.",
       "The temperature must fall gently from the heated band to the cold work, or the treatment leaves new "
       "stresses.",
       "AWS D10.10 (2021): at the edge of the heated band at least half the temperature at the edge of the "
       "soak band",
       {"the heated band is too narrow for the wall", "insulation ends with the heaters",
        "the thermocouple sits too far out"},
       "Where the edge thermocouple sits, measured from the weld.",
       "A thermocouple at the edge of the heated band that is known within the hold."},
      {Kind::tempering_min,
       "Temperature and time together worth at least this much for every thermocouple.",
       "Hot and short can be worth as much as cooler and long; the parameter adds both up.",
       "J. H. Hollomon, L. D. Jaffe, Trans. AIME 162 (1945); EN 13445-4:2021 uses it with C = 20",
       {"the hold was short", "the hold ran at the range's lower edge"},
       "The coldest thermocouple's mean in the hold, and how long it was in.",
       "The channel's readings for the time that is not known."},
      {Kind::tempering_max,
       "Temperature and time together worth no more than this for any thermocouple.",
       "Beyond it the steel is softer than it should be.",
       "J. H. Hollomon, L. D. Jaffe, Trans. AIME 162 (1945); EN 13445-4:2021 uses it with C = 20",
       {"the hold was long", "several cycles add up", "one place ran hot"},
       "The hottest thermocouple's mean in the hold, and how long it was in.",
       "The channel's readings for the time that is not known."},
      {Kind::maintain,
       "All thermocouples in the range for the whole period.",
       "Preheat lost between runs or before the bake-out lets the weld cool fast and keeps hydrogen in.",
       kCommonPractice,
       {"the heaters were off for access or a break", "the work was heated by the welding alone",
        "the period in the job is "
        "wrong"},
       "What happened on the work at that moment: the period's times, and the welding.",
       "The period in the job, or readings for all of it."},
  };
  return reasons;
}

}  // namespace

const LimitReason& reason_for(RequirementKind kind) {
  const auto& reasons = all_reasons();
  const auto found = std::find_if(reasons.begin(), reasons.end(),
                                  [kind](const LimitReason& reason) { return reason.kind == kind; });
  return found != reasons.end() ? *found : reasons.front();
}

}  // namespace soakwright
