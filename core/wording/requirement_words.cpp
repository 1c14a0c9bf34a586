// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/requirement_words.h"

namespace soakwright {
namespace {

using Text = std::string_view;

constexpr Text kHollomonJaffe =
    "J. H. Hollomon, L. D. Jaffe, Trans. AIME 162 (1945); EN 13445-4:2021 uses it with C = 20";
constexpr Text kMissingReadings = "The readings of the thermocouple for the time that is missing.";
constexpr Text kLessNoise =
    "Readings with less noise or a shorter sampling interval, or a longer rate window agreed before the run.";

constexpr Text kTooHotCauses[] = {
    "the temperature overshot at the end of a fast ramp", "one zone received more power than its neighbours",
    "the control thermocouple of the zone read low, for instance because its junction was loose"};
constexpr Text kHotStartCauses[] = {"the furnace had not cooled down from the previous run",
                                    "the recorder was started after the heating"};
constexpr Text kHotEndCauses[] = {"the insulation was removed or the furnace opened too early",
                                  "the recorder was stopped before the work was cold"};
constexpr Text kGapCauses[] = {"the recorder lost its power supply or its memory",
                               "rows were lost when files were copied or joined",
                               "the clock was put forward"};
constexpr Text kIntervalCauses[] = {"the sampling interval of the recorder was set for another job",
                                    "rows were left out when the file was exported"};
constexpr Text kFewThermocouplesCauses[] = {"a junction detached or a lead broke",
                                            "a thermocouple was never connected",
                                            "a spare is not named in the job"};
constexpr Text kCertificateCauses[] = {"the certificate expired during the work",
                                       "the job names a superseded certificate"};
constexpr Text kFastHeatingCauses[] = {"the output was raised by hand",
                                       "the controller was tuned for thinner work",
                                       "one zone heats a part that is thinner than the rest",
                                       "the thermocouple was detached, or sits under a heater"};
constexpr Text kSlowHeatingCauses[] = {"too little power for the mass", "insulation missing or wet",
                                       "wind or rain on the work"};
constexpr Text kFastCoolingCauses[] = {"the heaters were switched off instead of ramped down",
                                       "the insulation was removed early", "a draught through the work"};
constexpr Text kSlowCoolingCauses[] = {"the furnace held its heat longer than planned",
                                       "too much insulation for this thickness"};
constexpr Text kSpreadCauses[] = {"one zone led or lagged", "thick and thin parts on one controller",
                                  "uneven insulation", "one thermocouple read wrong"};
constexpr Text kShortHoldCauses[] = {
    "the time was counted from the first thermocouple in range instead of the last",
    "a dip interrupted the hold and the clock was not restarted",
    "the heating was switched off by the clock of one zone"};
constexpr Text kLongHoldCauses[] = {"the run waited for a lagging part", "several holds add up",
                                    "the cooling started late"};
constexpr Text kExcursionCauses[] = {"a breaker tripped or a heater failed", "the supply was interrupted",
                                     "a junction lost contact for a while"};
constexpr Text kOverCauses[] = {"the temperature overshot at the end of the ramp",
                                "one zone was pushed to help a lagging one"};
constexpr Text kColdEdgeCauses[] = {"the heated band is too narrow for the wall thickness",
                                    "the insulation ends where the heaters end",
                                    "the thermocouple sits too far from the weld"};
constexpr Text kLittleTemperingCauses[] = {"the hold was short",
                                           "the hold ran at the low limit of its range"};
constexpr Text kMuchTemperingCauses[] = {"the hold was long", "several heat treatments add up",
                                         "one place ran hot"};
constexpr Text kPreheatCauses[] = {"the heaters were switched off for access or a break",
                                   "the work was heated by the welding alone",
                                   "the period in the job is wrong"};

}  // namespace

// No default: the compiler names the kind that has no words.
RequirementWords words_of(RequirementKind kind) {
  switch (kind) {
    case RequirementKind::temperature_max:
      return {
          "Maximum temperature",
          "No thermocouple on the work above this at any time.",
          "Above this temperature the steel may lose strength or toughness. Close to the lower critical "
          "temperature (Ac1) its structure begins to transform.",
          kCommonPractice,
          kTooHotCauses,
          "Whether one thermocouple was too hot or all of them, and the ramp in the half hour before.",
          "Readings for the missing time: from a second recorder, or from a spare beside the thermocouple."};
    case RequirementKind::start:
      return {
          "Temperature at start (loading)",
          "No thermocouple above this at the first reading.",
          "Work that is loaded into a hot furnace, or heated before the record starts, has steep temperature "
          "gradients that the record does not show.",
          kCommonPractice,
          kHotStartCauses,
          "The first readings: whether they are steady, or the ramp is already running.",
          "A record that starts earlier, or the first reading of the thermocouple."};
    case RequirementKind::end:
      return {
          "Temperature at end (unloading)",
          "No thermocouple above this at the last reading.",
          "Work that is unloaded hot, or whose insulation is removed while it is hot, cools faster than the "
          "record shows.",
          kCommonPractice,
          kHotEndCauses,
          "Whether the record ends while the work is still cooling.",
          "A record that runs longer, or the last reading of the thermocouple."};
    case RequirementKind::gap:
      return {"Longest gap between readings",
              "No gap between two readings longer than this.",
              "The temperature between two readings is not recorded. A long gap can hide a dip or a peak.",
              kCommonPractice,
              kGapCauses,
              "The file warnings, and the line of the file at which the gap is.",
              "A second record of the same time."};
    case RequirementKind::interval:
      return {"Sampling interval",
              "A sampling interval no longer than this.",
              "A long sampling interval hides short peaks and leaves few readings for a rate.",
              kCommonPractice,
              kIntervalCauses,
              "The setting of the recorder, and whether it keeps a file with more readings.",
              "The file with more readings, if the recorder kept one."};
    case RequirementKind::thermocouples:
      return {
          "Thermocouples with valid readings",
          "At least this number of thermocouples with valid readings, from the first one to enter the "
          "holding "
          "temperature range until the last one has left it.",
          "With fewer thermocouples part of the work is not measured, and its coldest place may be there.",
          kCommonPractice,
          kFewThermocouplesCauses,
          "The thermocouples with missing readings, and whether each had a spare beside it.",
          "The readings from another recorder, or a spare named in the job."};
    case RequirementKind::calibration:
      return {"Expired calibration certificates",
              "No certificate of the recorder or of a thermocouple expired on the last day of the record.",
              "A reading is as good as the last comparison with a reference standard.",
              kCommonPractice,
              kCertificateCauses,
              "The dates in the job, compared with those on the certificates.",
              "A log with dates, and the dates of the certificates in the job."};
    case RequirementKind::heating_rate:
      return {
          "Heating rate",
          "No heating faster than this over the rate window.",
          "Fast heating makes one part of the work much hotter than the next, or the outside hotter than the "
          "inside. The work distorts, or cracks where it is restrained.",
          kCommonPractice,
          kFastHeatingCauses,
          "Whether the 30 and 60 min windows are too fast as well or only a short burst, and whether the "
          "neighbouring thermocouples rose with it.",
          kLessNoise};
    case RequirementKind::heating_rate_min:
      return {"Minimum heating rate",
              "An overall heating rate no slower than this.",
              "A slow ramp keeps the work for hours at temperatures that only age the steel.",
              kCommonPractice,
              kSlowHeatingCauses,
              "The output of the zone, and the insulation at the slowest thermocouple.",
              "A record of the whole ramp, from its start to the hold."};
    case RequirementKind::cooling_rate:
      return {
          "Cooling rate",
          "No cooling faster than this over the rate window.",
          "Uneven cooling puts back the residual stresses that the hold relieved.",
          kCommonPractice,
          kFastCoolingCauses,
          "When the insulation was removed, and whether the fastest thermocouple is at an end or an opening.",
          kLessNoise};
    case RequirementKind::cooling_rate_min:
      return {
          "Minimum cooling rate",
          "An overall cooling rate no slower than this.",
          "Some steels suffer temper embrittlement when they cool slowly through the embrittlement range.",
          kCommonPractice,
          kSlowCoolingCauses,
          "The position of the slowest thermocouple, and when the heaters were switched off.",
          "A record of the whole cooling, from the hold to the lower temperature."};
    case RequirementKind::spread:
      return {
          "Spread between thermocouples",
          "No more than this between the hottest and the coldest thermocouple at any one time.",
          "Parts at different temperatures strain each other. In a hold the coldest part must be hot enough "
          "while the hottest is not too hot.",
          kCommonPractice,
          kSpreadCauses,
          "The two thermocouples named, and whether one of them also differs from all the others.",
          "The missing readings of the thermocouples."};
    case RequirementKind::hold_time:
      return {
          "Hold time",
          "All thermocouples in the holding temperature range together for at least this long.",
          "Stresses take time to relax and hydrogen takes time to diffuse out; thicker work needs longer.",
          kCommonPractice,
          kShortHoldCauses,
          "When the last thermocouple came into range, when the first one left it, and each excursion "
          "between.",
          "A record that starts earlier or ends later, readings from another recorder for the missing time, "
          "or "
          "the previous record of an interrupted hold."};
    case RequirementKind::hold_time_max:
      return {
          "Maximum time at temperature",
          "No thermocouple at or above the low limit of the holding temperature range for longer than this.",
          "Too long at temperature softens the steel.",
          kCommonPractice,
          kLongHoldCauses,
          "Which thermocouple came into range first, and how long it waited for the others.",
          kMissingReadings};
    case RequirementKind::excursion_time:
      return {
          "Time out of range",
          "No more time than this out of the holding temperature range within the hold period.",
          "Time out of range does not count as hold time. A dip interrupts the soak; it does not undo it.",
          kCommonPractice,
          kExcursionCauses,
          "How far and for how long the worst excursion went, and which thermocouple shows it.",
          "Readings for the missing time within the hold period."};
    case RequirementKind::over:
      return {"Over-temperature",
              "No thermocouple above the high limit of the holding temperature range around the hold.",
              "The properties of the steel are known for the holding temperature range. One thermocouple "
              "above it "
              "is one place above it, whatever the others read.",
              kCommonPractice,
              kOverCauses,
              "Whether the other thermocouples were still below the range at that moment.",
              "A hold that can be told apart from the hotter one beside it, or the missing readings of the "
              "thermocouple."};
    case RequirementKind::edge:
      return {"Temperature at heated-band edge",
              "The edge of the heated band at no less than this share of the low limit of the holding "
              "temperature "
              "range.",
              "The temperature must fall gradually from the heated band to the cold work, or the treatment "
              "leaves "
              "new stresses.",
              "AWS D10.10 (2021): at the edge of the heated band at least half the temperature at the edge "
              "of the "
              "soak band",
              kColdEdgeCauses,
              "The distance of the edge thermocouple from the weld.",
              "Readings, within the hold, of a thermocouple at the edge of the heated band."};
    case RequirementKind::tempering_min:
      return {
          "Minimum tempering parameter (Hollomon–Jaffe)",
          "A tempering parameter of at least this at every thermocouple.",
          "A short time at a high temperature can temper as much as a longer one at a lower temperature; the "
          "parameter combines both.",
          kHollomonJaffe,
          kLittleTemperingCauses,
          "The mean temperature of the coldest thermocouple in the hold, and its time in range.",
          kMissingReadings};
    case RequirementKind::tempering_max:
      return {"Maximum tempering parameter (Hollomon–Jaffe)",
              "A tempering parameter of no more than this at any thermocouple.",
              "Beyond this the steel is softer than it should be.",
              kHollomonJaffe,
              kMuchTemperingCauses,
              "The mean temperature of the hottest thermocouple in the hold, and its time in range.",
              kMissingReadings};
    case RequirementKind::maintain:
      return {"Time out of preheat range",
              "All thermocouples in the preheat range for the whole period.",
              "If the preheat is lost between runs or before the bake-out, the weld cools fast and hydrogen "
              "cannot "
              "diffuse out.",
              kCommonPractice,
              kPreheatCauses,
              "What happened at the work at that moment: the times of the period, and the welding.",
              "The period in the job, or readings for all of it."};
  }
  return {};
}

}  // namespace soakwright
