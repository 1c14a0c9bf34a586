// SPDX-License-Identifier: GPL-3.0-or-later
// The first deviation of each kind of limit, on records whose answers are worked out beside them.
#include "core/explain/first_deviation.h"

#include <catch2/catch.hpp>

#include "core/evaluate/evaluation.h"
#include "core/wording/statement_words.h"
#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

Analysis analysed(const MadeRecord& made, const std::string& procedure, const std::string& job = {}) {
  Analysis analysis;
  analysis.record = std::make_shared<const Record>(made.record());
  analysis.procedure = std::make_shared<const Procedure>(procedure_of(procedure));
  if (!job.empty()) analysis.job = std::make_shared<const Job>(job_of(job));
  analysis.ground = prepared_traces_for(*analysis.record, *analysis.procedure, nullptr);
  analysis.verdicts = std::make_shared<const Verdicts>(
      evaluate(*analysis.record, *analysis.procedure, analysis.job.get(), *analysis.ground));
  return analysis;
}

/// "lost from, in s: words" of a requirement.
std::string deviation_of(const Analysis& analysis, const std::string& id) {
  const PrintedNumbers numbers{TemperatureUnit::celsius, *analysis.record};
  for (const FirstDeviation& deviation : first_deviations(analysis))
    if (analysis.verdicts->requirements[deviation.requirement].id == id)
      return say(deviation.lost_from_s) + ": " + words(deviation.what, numbers);
  return "none";
}

/// Where the deviation begins, in s.
double begin_of(const Analysis& analysis, const std::string& id) {
  for (const FirstDeviation& deviation : first_deviations(analysis))
    if (analysis.verdicts->requirements[deviation.requirement].id == id) return deviation.at_s;
  return -1.0;
}

std::string ramp(const std::string& kind, const std::string& keys) {
  return "[[stage]]\nkind = \"" + kind + "\"\n" + keys + "\n";
}

}  // namespace

TEST_CASE("What is met or inconclusive has no first deviation") {
  const Analysis met = analysed(plain_record(), hold_500_600_with("time_min = \"70 min\""));
  CHECK(first_deviations(met).empty());
  CHECK(earliest_of(first_deviations(met)) == nullptr);
  const Analysis inconclusive = analysed(MadeRecord::every(60, 101).course("TC1", plain_run()),
                                         hold_500_600_with("time_min = \"70 min\""));
  REQUIRE(inconclusive.verdicts->verdict == Verdict::inconclusive);
  CHECK(first_deviations(inconclusive).empty());
}

TEST_CASE("A temperature_max was missed when the trace went through it") {
  // 9 K a minute: 550 at 58 min 53.3 s.
  const Analysis analysis = analysed(
      plain_record(), "[record]\ntemperature_max = 550\n" + hold_500_600_with("time_min = \"1 min\""));
  CHECK_THAT(deviation_of(analysis, "record.temperature-max"), Contains("3533.333: TC1 exceeded the limit."));
}

TEST_CASE("Loading and opening were missed in the first and in the last row") {
  const MadeRecord made =
      MadeRecord::every(60, 121).course("TC1", {{0, 400}, {30, 550}, {90, 550}, {120, 400}});
  const Analysis analysis =
      analysed(made, "[record]\nstart_temperature_max = 300\nend_temperature_max = 300\n" +
                         hold_500_600_with("time_min = \"1 min\""));
  CHECK_THAT(deviation_of(analysis, "record.start-temperature"),
             Contains("0: TC1 was above the limit at the first reading."));
  CHECK_THAT(deviation_of(analysis, "record.end-temperature"), Contains("7200: TC1 was still above"));
}

TEST_CASE("A gap was too long when the row that was due did not come; an interval from the start") {
  std::vector<double> times;
  for (int minute = 0; minute <= 180; ++minute)
    if (minute < 20 || minute > 30) times.push_back(60.0 * minute);
  // From minute 19 to 31; after 5 min, at minute 24, the next row was due.
  const Analysis analysis = analysed(MadeRecord(times).course("TC1", plain_run()),
                                     "[record]\ngap_max = \"5 min\"\nsampling_interval_max = \"30 s\"\n" +
                                         hold_500_600_with("time_min = \"1 min\""));
  CHECK(begin_of(analysis, "record.gap") == close_to(1140));  // the last row before it
  CHECK_THAT(deviation_of(analysis, "record.gap"), Contains("1440: The next reading was due by 0:24:00"));
  CHECK_THAT(deviation_of(analysis, "record.sampling-interval"),
             Contains("0: The sampling interval is 1 min"));
}

TEST_CASE("A rate was missed when the first window that is too steep was full") {
  // 4 K a minute to 220 (50 min), 12 K a minute to 460 (70 min), 4 K a minute. Over 5 min at most 600 C/h: a
  // window of 5 min is too steep once more than about three of its minutes lie in the steep part; worked out
  // beside: the first window whose slope exceeds 600 is centred on minute 51 (48.5 to 53.5).
  MadeRecord made = MadeRecord::every(30, 241).course("TC1", {{0, 20}, {50, 220}, {70, 460}, {105, 600}});
  const Analysis analysis =
      analysed(made, "[evaluation]\nrate_window = \"5 min\"\n" + ramp("heat", "rate_max = 600"));
  const std::vector<FirstDeviation> deviations = first_deviations(analysis);
  REQUIRE(deviations.size() == 1);
  // The slope of 11 readings half a minute apart about minute 51: 3 of them on the flat side.
  double first_end = 0.0;
  for (int centre = 10; first_end == 0.0; ++centre) {
    double sxy = 0.0;
    double sxx = 0.0;
    for (int k = -5; k <= 5; ++k) {
      const double minute = 0.5 * (centre + k);
      const double celsius =
          std::round(on_course({{0, 20}, {50, 220}, {70, 460}, {105, 600}}, 60 * minute) * 10) / 10;
      sxy += 0.5 * k * celsius;
      sxx += 0.25 * k * k;
    }
    if (60.0 * sxy / sxx > 600.0) first_end = 60.0 * 0.5 * (centre + 5);
  }
  CHECK(deviations[0].lost_from_s == close_to(first_end));
  CHECK(deviations[0].at_s == close_to(first_end - 300.0));
  CHECK(deviations[0].channel == "TC1");
  CHECK_THAT(deviation_of(analysis, "stage-1.heating-rate"),
             Contains("TC1 heated faster than the limit over 5 min."));
}

TEST_CASE("A slow ramp was missed when it should have been through") {
  // From 300 at 31 min 6.7 s to 500: 200 K at 540 C/h take 22 min 13 s; at 800 C/h they would have taken 15
  // min.
  const Analysis analysis = analysed(plain_record(), ramp("heat", "above = 300\nrate_min = 800") +
                                                         hold_500_600_with("time_min = \"1 min\""));
  const double start = 60.0 * 280.0 / 9.0;
  CHECK_THAT(deviation_of(analysis, "stage-1.heating-rate-min"),
             Contains(say(start + 900.0) + ": TC1 had not finished the ramp within the 15 min"));
}

TEST_CASE("A spread was missed in the first row that is too wide") {
  // TC2 follows 10 min later: 90 K apart from minute 10 on; both above 300 first at minute 32 (308).
  MadeRecord made = plain_record();
  made.course("TC2", {{10, 20}, {70, 560}, {120, 560}, {180, 20}});
  const Analysis analysis = analysed(made, ramp("heat", "above = 300\nspread_max = 80"));
  CHECK_THAT(deviation_of(analysis, "stage-1.spread"),
             Contains("1920: The spread between TC1 and the coldest"));
}

TEST_CASE("A short hold names who was not in, or who left") {
  // TC1 is in from 3,200 s to 7,600 s, TC2 from 3,440 s to 7,240 s. 80 min asked: by 7,240 − 4,800 = 2,440 s
  // all should have been in; TC2 came last.
  MadeRecord made = plain_record();
  made.course("TC2", {{4, 20}, {64, 560}, {114, 560}, {174, 20}});
  CHECK_THAT(deviation_of(analysed(made, hold_500_600_with("time_min = \"80 min\"")), "stage-1.hold-time"),
             Contains("2440: TC2 was not in the holding temperature range, and only 1 h 20 min were left"));
  // Broken by a dip from 83 to 85 min: 70 min asked, of 7,600 − 4,200 = 3,400 s the hold since 3,200 s ran.
  const MadeRecord dipping = MadeRecord::every(60, 181).course(
      "TC1", {{0, 20}, {60, 560}, {80, 560}, {84, 480}, {88, 560}, {120, 560}, {180, 20}});
  CHECK_THAT(deviation_of(analysed(dipping, hold_500_600_with("time_min = \"70 min\"")), "stage-1.hold-time"),
             Contains("4980: TC1 left the holding temperature range, and the 43 min 40 s until the work "
                      "cooled were too short"));
}

TEST_CASE("A hold that nobody reached was lost when the work was as near as it ever came") {
  const MadeRecord cold = MadeRecord::every(60, 121).course("TC1", {{0, 20}, {60, 480}, {120, 20}});
  CHECK_THAT(deviation_of(analysed(cold, hold_500_600_with("time_min = \"1 h\"")), "stage-1.hold-time"),
             Contains("3600: TC1 came no nearer to the holding temperature range than 480.0 °C"));
  // In one after the other, never together: lost when the first left for good (500 is left at 40 min 40 s).
  MadeRecord apart = MadeRecord::every(60, 181).course("TC1", {{0, 20}, {30, 560}, {34, 560}, {64, 20}});
  apart.course("TC2", {{60, 20}, {90, 560}, {94, 560}, {124, 20}});
  CHECK_THAT(deviation_of(analysed(apart, hold_500_600_with("time_min = \"1 h\"")), "stage-1.hold-time"),
             Contains("2240: TC1 left the holding temperature range for good before all"));
}

TEST_CASE("Too long a hold was missed when the time that is allowed was used up") {
  // At or above 500 from 3,200 s; 60 min allowed: 6,800 s.
  const Analysis analysis = analysed(plain_record(), hold_500_600_with("time_max = \"60 min\""));
  CHECK_THAT(deviation_of(analysis, "stage-1.hold-time-max"),
             Contains("6800: TC1 had been at temperature for as long as the limit allows."));
}

TEST_CASE("Excursions were missed when what is allowed was used up") {
  // Out from 83 to 85 min; 60 s allowed: used up at 84 min.
  const MadeRecord dipping = MadeRecord::every(60, 181).course(
      "TC1", {{0, 20}, {60, 560}, {80, 560}, {84, 480}, {88, 560}, {120, 560}, {180, 20}});
  CHECK(begin_of(analysed(dipping, hold_500_600_with("excursion_time_max = \"60 s\"")),
                 "stage-1.excursion-time") == close_to(4980));
  CHECK_THAT(deviation_of(analysed(dipping, hold_500_600_with("excursion_time_max = \"60 s\"")),
                          "stage-1.excursion-time"),
             Contains("5040: TC1 left the holding temperature range."));
  CHECK_THAT(deviation_of(analysed(dipping, hold_500_600_with("excursion_time_max = \"0 s\"")),
                          "stage-1.excursion-time"),
             Contains("4980: TC1 left the holding temperature range."));
}

TEST_CASE("Tempering was missed at the end of the hold, or when too much was gathered") {
  // An hour at 650 °C: 923.15 · 20 / 1000 = 18.463; two hours 18.741.
  const MadeRecord level = MadeRecord::every(60, 121).course("TC1", {{0, 650}, {120, 650}});
  const std::string hold = "[[stage]]\nkind = \"hold\"\nlow = 600\n";
  CHECK_THAT(deviation_of(analysed(level, hold + "tempering_min = 19\n"), "stage-1.tempering-min"),
             Contains("7200: TC1"));
  CHECK_THAT(deviation_of(analysed(level, hold + "tempering_max = 18.463\n"), "stage-1.tempering-max"),
             Contains("3600: TC1 passed the maximum tempering parameter."));
}

TEST_CASE(
    "A preheat was lost, an edge was cold, thermocouples were too few where the record first shows it") {
  // 120 to 250 during welding, minutes 20 to 80: TC1 falls below 120 at minute 50 and comes back at
  // minute 70.
  MadeRecord made =
      MadeRecord::every(60, 101).course("TC1", {{0, 150}, {40, 150}, {60, 90}, {80, 150}, {100, 150}});
  made.period("welding", 1200, 4800);
  CHECK_THAT(
      deviation_of(
          analysed(made, "[[stage]]\nkind = \"maintain\"\nlow = 120\nhigh = 250\nduring = \"welding\"\n"),
          "stage-1.maintain"),
      Contains("3000: TC1 was out of the preheat range."));
  MadeRecord edged = plain_record();
  edged.course("TC2", {{0, 20}, {60, 200}, {120, 200}, {180, 20}}).at_edge("TC2");
  CHECK_THAT(
      deviation_of(analysed(edged, hold_500_600_with("edge_fraction_min = 0.5")), "stage-1.edge-temperature"),
      Contains("TC2, at the edge of the heated band"));
  MadeRecord few = plain_record();
  few.course("TC2", plain_run()).missing("TC2", 4800, 6000);
  CHECK_THAT(deviation_of(
                 analysed(few, "[evaluation]\ninterpolate_max = \"60 s\"\n[record]\nthermocouples_min = 2\n" +
                                   hold_500_600_with("time_min = \"1 min\"")),
                 "record.thermocouples"),
             Contains("Fewer thermocouples than required"));
}

TEST_CASE("A certificate that ran out is a deviation from the first row on") {
  MadeRecord made = plain_record();
  made.entry("TC1", 0).starts(LocalTime::of({2031, 4, 2}, 6, 0, 0).value());
  const Analysis analysis =
      analysed(made, hold_500_600_with("time_min = \"1 min\""),
               "[[thermocouple]]\ncolumn = \"TC1\"\ncertificate = \"A\"\nvalid_until = 2031-04-01\n");
  CHECK_THAT(deviation_of(analysis, "record.calibration"),
             Contains("0: A calibration certificate had expired"));
}

TEST_CASE("The record's first deviation is the earliest of all") {
  const Analysis analysis =
      analysed(plain_record(), "[record]\ntemperature_max = 550\n" + ramp("heat", "rate_max = 300") +
                                   hold_500_600_with("time_min = \"80 min\""));
  const std::vector<FirstDeviation> deviations = first_deviations(analysis);
  REQUIRE(deviations.size() == 3);
  const FirstDeviation* first = earliest_of(deviations);
  REQUIRE(first != nullptr);
  for (const FirstDeviation& deviation : deviations) CHECK(first->at_s <= deviation.at_s);
  CHECK(analysis.verdicts->requirements[first->requirement].id == "stage-1.heating-rate");
}
