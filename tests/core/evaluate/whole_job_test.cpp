// SPDX-License-Identifier: GPL-3.0-or-later
// The whole job file in one evaluation: welds, certificates, periods, spares.
#include <catch2/catch.hpp>

#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

TEST_CASE("Two welds in one record are evaluated on their own thermocouples and thickness") {
  // W-117, 40 mm: 1 h 20 min required; W-118, 20 mm: 40 min. Both hold 4,400 s = 73 min 20 s; TC2 only dips.
  const std::string procedure =
      "[record]\ntemperature_max = 600\n" +
      hold_500_600_with(
          "time_min = { points = [[\"10 mm\", \"20 min\"], [\"50 mm\", \"100 min\"]] }\nspread_max = 30");
  const std::string job =
      "[[weld]]\nnumber = \"W-117\"\nthickness = \"40 mm\"\n[[weld]]\nnumber = \"W-118\"\nthickness = \"20 "
      "mm\"\n";
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 20}, {60, 560}, {120, 560}, {180, 20}})
      .course("TC3", {{0, 20}, {60, 520}, {120, 520}, {180, 20}})
      .on_weld("TC1", "W-117")
      .on_weld("TC2", "W-118")
      .on_weld("TC3", "W-118");
  const Evaluated evaluated(made, procedure, job);
  const auto time_of = [&](const std::string& weld) { return evaluated.of("stage-1.hold-time", weld); };
  CHECK(time_of("W-117").limit == 4800);
  CHECK(time_of("W-118").limit == 2400);
  CHECK(time_of("W-117").verdict == Verdict::not_met);
  CHECK(time_of("W-118").verdict == Verdict::met);
  // W-117 has one thermocouple, and so no spread; the 40 K between TC1 and TC3 are between welds.
  for (const Requirement& requirement : evaluated.all.requirements)
    CHECK_FALSE((requirement.id == "stage-1.spread" && requirement.weld == "W-117"));
  CHECK(*evaluated.of("stage-1.spread", "W-118").measured == close_to(40));
  CHECK(evaluated.of("stage-1.spread", "W-118").channel == "TC2");
  REQUIRE(evaluated.all.welds.size() == 2);
  CHECK(evaluated.all.welds[0].verdict == Verdict::not_met);
  CHECK(evaluated.all.welds[0].thickness_mm == 40.0);
  CHECK(evaluated.all.welds[1].verdict == Verdict::not_met);  // its spread
  CHECK(evaluated.all.verdict == Verdict::not_met);
  // What is required of the record is evaluated once, for no weld.
  CHECK_FALSE(evaluated["record.temperature-max"].weld);
  CHECK(evaluated["record.temperature-max"].verdict == Verdict::met);
  CHECK(evaluated.all.stages.size() == 2);
}

TEST_CASE("A thermocouple of no weld counts for every weld") {
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 20}, {60, 500}, {120, 500}, {180, 20}}).on_weld("TC1", "W-117");
  const Evaluated evaluated(made, hold_500_600_with("time_min = \"50 min\""),
                            "[[weld]]\nnumber = \"W-117\"\n[[weld]]\nnumber = \"W-118\"\n");
  // TC2 is at 500 from 60 to 120 min only.
  CHECK(*evaluated.of("stage-1.hold-time", "W-117").measured == close_to(3600));
  CHECK(*evaluated.of("stage-1.hold-time", "W-118").measured == close_to(3600));
}

TEST_CASE("Certificates are held against the record's last day") {
  // 180 min from 22:30 on 2 April end on 3 April.
  const auto told = [](const std::string& tc, const std::string& recorder) {
    MadeRecord made = plain_record();
    made.entry("TC1", 0).starts(LocalTime::of({2031, 4, 2}, 22, 30, 0).value());
    const Evaluated evaluated(made, hold_500_600_with("time_min = \"1 min\""),
                              "[[thermocouple]]\ncolumn = \"TC1\"\n" + tc + "[recorder]\n" + recorder);
    return evaluated.has("record.calibration") ? evaluated.told("record.calibration")
                                               : std::string("not required");
  };
  const auto until = [](const char* date) { return std::string("valid_until = ") + date + "\n"; };
  CHECK(told("", "") == "not required");
  CHECK(told(until("2031-04-03"), "") == "0 met");
  CHECK(told(until("2031-04-02"), "") == "1 not met");
  CHECK(told("", until("2031-04-02")) == "1 not met");
  CHECK(told(until("2031-04-02"), until("2031-01-31")) == "2 not met");
  // Without a clock nobody can tell.
  MadeRecord no_clock = plain_record();
  no_clock.entry("TC1", 0);
  CHECK(Evaluated(no_clock, hold_500_600_with("time_min = \"1 min\""),
                  "[[thermocouple]]\ncolumn = \"TC1\"\n" + until("2031-04-03"))
            .told("record.calibration") == "none inconclusive");
}

TEST_CASE("Maintain: time out of the range in the period, unknown time and a period that is not there") {
  // TC1 is below 120 until 100/9 min = 666.667 s.
  const std::string keep = "[[stage]]\nkind = \"maintain\"\nlow = 120\nhigh = 600\nduring = \"welding\"\n";
  const auto with_period = [](double from_s, double to_s) {
    MadeRecord made = plain_record();
    made.period("welding", from_s, to_s);
    return made;
  };
  CHECK(Evaluated(with_period(700, 3000), keep).told("stage-1.maintain") == "0 met");
  CHECK(Evaluated(with_period(600, 3000), keep).told("stage-1.maintain") == "66.667 not met");
  CHECK(Evaluated(with_period(600, 3000), keep).places("stage-1.maintain") == "not met TC1 600..666.667");
  MadeRecord hole = with_period(700, 3000);
  hole.missing("TC1", 1200, 1800);
  CHECK(Evaluated(hole, keep).told("stage-1.maintain") == "0 inconclusive");
  // The record ends at 10,800 s.
  CHECK(Evaluated(with_period(9000, 12000), keep).verdict("stage-1.maintain") == "not met");
  CHECK(Evaluated(with_period(6000, 10000), keep).verdict("stage-1.maintain") == "met");
  CHECK(Evaluated(plain_record(), keep).told("stage-1.maintain") == "none inconclusive");
}

TEST_CASE("Maintain: excursions allowed do not count, one that is longer or deeper counts in full") {
  const auto told = [](const Knots& knots, const char* allowed) {
    MadeRecord made = MadeRecord::every(10, 181).course("TC1", knots);
    made.period("welding", 300, 1500);
    return Evaluated(made, std::string("[evaluation]\nexcursion_allowed = ") + allowed +
                               "\n[[stage]]\nkind = \"maintain\"\nlow = 120\nduring = \"welding\"\n")
        .told("stage-1.maintain");
  };
  // Below 120 from 11 to 13 min, 5 K deep.
  const Knots dip = {{0, 130}, {10, 125}, {12, 115}, {14, 125}, {30, 130}};
  CHECK(told(dip, "\"0 s\"") == "120 not met");
  CHECK(told(dip, "{ time = \"2 min\", depth = 5 }") == "0 met");
  CHECK(told(dip, "{ time = \"119 s\", depth = 5 }") == "120 not met");
  CHECK(told(dip, "{ time = \"2 min\", depth = 4.9 }") == "120 not met");
  // From 4 to 6 min, 2 min long, of which the period has the second: its whole length counts for what is
  // allowed.
  const Knots early = {{0, 140}, {4, 120}, {5, 115}, {6, 120}, {30, 144}};
  CHECK(told(early, "\"90 s\"") == "60 not met");
  CHECK(told(early, "\"2 min\"") == "0 met");
}

TEST_CASE(
    "Maintain: a channel without readings leaves it inconclusive, though another is out within what is "
    "allowed") {
  MadeRecord made = MadeRecord::every(10, 181)
                        .course("TC1", {{0, 130}, {10, 125}, {12, 115}, {14, 125}, {30, 130}})
                        .course("TC2", {{0, 130}, {30, 130}});
  made.missing("TC2", 690, 750).period("welding", 300, 1500);
  const std::string stage = "[[stage]]\nkind = \"maintain\"\nlow = 120\nduring = \"welding\"\n";
  CHECK(Evaluated(made, "[evaluation]\ninterpolate_max = \"20 s\"\nexcursion_allowed = \"2 min\"\n" + stage)
            .told("stage-1.maintain") == "0 inconclusive");
  CHECK(Evaluated(made, "[evaluation]\ninterpolate_max = \"20 s\"\n" + stage).told("stage-1.maintain") ==
        "120 not met");
}

TEST_CASE("The minimum number of thermocouples holds for each weld") {
  const std::string procedure =
      "[record]\nthermocouples_min = 2\n" + hold_500_600_with("time_min = \"1 min\"");
  MadeRecord made = plain_record();
  made.course("TC2", plain_run()).course("TC3", plain_run());
  made.on_weld("TC1", "A").on_weld("TC2", "B").on_weld("TC3", "B");
  const Evaluated evaluated(made, procedure, "[[weld]]\nnumber = \"A\"\n[[weld]]\nnumber = \"B\"\n");
  CHECK(evaluated.of("record.thermocouples", "A").measured == 1.0);
  CHECK(evaluated.of("record.thermocouples", "A").verdict == Verdict::not_met);
  CHECK(evaluated.of("record.thermocouples", "B").measured == 2.0);
  CHECK(evaluated.of("record.thermocouples", "B").verdict == Verdict::met);
  CHECK(evaluated.all.welds[0].verdict == Verdict::not_met);
  CHECK(evaluated.all.welds[1].verdict == Verdict::met);
}

TEST_CASE("An excluded thermocouple does not count, one that a spare replaces counts once") {
  const std::string procedure =
      "[record]\nthermocouples_min = 2\n" + hold_500_600_with("time_min = \"1 min\"");
  MadeRecord made = plain_record();
  made.course("TC2", plain_run()).course("TC9", plain_run());
  MadeRecord excluded = made;
  excluded.exclusion("TC2", 6000, 6060).role("TC9", ThermocoupleRole::off);
  CHECK(Evaluated(excluded, procedure).told("record.thermocouples") == "1 not met");
  MadeRecord replaced = made;
  replaced.exclusion("TC2", 6000, 6060).spare("TC9", "TC2");
  CHECK(Evaluated(replaced, procedure).told("record.thermocouples") == "2 met");
}

TEST_CASE("A spare that takes over is a note with its instant and its step, under the main one's name") {
  // TC1 is lost behind 70 min; TC2 reads 6 K more there.
  MadeRecord made = plain_record();
  made.course("TC2", {{0, 26}, {60, 566}, {120, 566}, {180, 26}})
      .missing("TC1", 4260, 10800)
      .spare("TC2", "TC1");
  const Evaluated evaluated(made, hold_500_600_with("time_min = \"60 min\""));
  REQUIRE(evaluated.all.replaced.size() == 1);
  CHECK(evaluated.all.replaced[0].channel == "TC1");
  CHECK(evaluated.all.replaced[0].by == "TC2");
  CHECK(evaluated.all.replaced[0].from_s == 4200);
  CHECK(*evaluated.all.replaced[0].step_k == close_to(6));
  CHECK(evaluated.stage(1).channels.size() == 1);
  CHECK(evaluated.stage(1).channels[0].name == "TC1");
  const auto notes = evaluated.findings("");
  REQUIRE(notes.size() == 1);
  CHECK(notes[0].kind == Finding::Kind::note);
  CHECK_THAT(evaluated.text(notes[0]), Catch::Contains("TC2 took over from TC1 at 1:10:00") &&
                                           Catch::Contains("the difference, TC2 less TC1, was 6.0 °C"));
}
