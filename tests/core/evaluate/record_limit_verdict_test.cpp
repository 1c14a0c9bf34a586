// SPDX-License-Identifier: GPL-3.0-or-later
// Temperature limits of the whole record where it does not show everything.
#include <catch2/catch.hpp>

#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

namespace {

const std::string kLimits =
    "[evaluation]\ninterpolate_max = \"60 s\"\n"
    "[record]\ntemperature_max = 600\nstart_temperature_max = 100\nend_temperature_max = 100\n";
const std::string kHold = hold_500_600_with("time_min = \"1 min\"");

std::string told(const MadeRecord& made, const std::string& id, const std::string& stages = kHold) {
  return Evaluated(made, kLimits + stages).told("record." + id);
}

}  // namespace

TEST_CASE("Unknown time between readings 50 °C below the hold's lower edge cannot have been hot") {
  // 9 °C a minute from 20: 443 at 47 min, 452 at 48 min. The hold is from 500 on: 450 is 50 below.
  CHECK(told(MadeRecord(plain_record()).missing("TC1", 2400, 2760), "temperature-max") ==
        "560 met");  // to 47 min
  CHECK(told(MadeRecord(plain_record()).missing("TC1", 2400, 2820), "temperature-max") ==
        "560 inconclusive");  // to 48 min
  // Down again: 452 at 132 min.
  CHECK(told(MadeRecord(plain_record()).missing("TC1", 7980, 8400), "temperature-max") == "560 inconclusive");
  CHECK(told(MadeRecord(plain_record()).missing("TC1", 8040, 8400), "temperature-max") == "560 met");
  // At the record's ends one reading is enough.
  CHECK(told(MadeRecord(plain_record()).missing("TC1", 0, 2760), "temperature-max") == "560 met");
  CHECK(told(MadeRecord(plain_record()).missing("TC1", 0, 2820), "temperature-max") == "560 inconclusive");
  CHECK(told(MadeRecord(plain_record()).missing("TC1", 8040, 10800), "temperature-max") == "560 met");
  CHECK(told(MadeRecord(plain_record()).missing("TC1", 7980, 10800), "temperature-max") ==
        "560 inconclusive");
}

TEST_CASE("Exactly 50 °C below is far enough") {
  MadeRecord made = MadeRecord::every(60, 6).column("TC1", {450, kNoReading, kNoReading, 450, 450, 450});
  CHECK(told(made, "temperature-max") == "450 met");
  MadeRecord warmer = MadeRecord::every(60, 6).column("TC1", {450, kNoReading, kNoReading, 450.1, 450, 450});
  CHECK(told(warmer, "temperature-max") == "450.1 inconclusive");
}

TEST_CASE("Without a hold, unknown time is cold where it is 50 °C below the limit") {
  const std::string cool = "[[stage]]\nkind = \"cool\"\nrate_max = 9000\n";
  MadeRecord made = MadeRecord::every(60, 6).column("TC1", {550, kNoReading, kNoReading, 550, 500, 450});
  CHECK(told(made, "temperature-max", cool) == "550 met");
  MadeRecord warmer = MadeRecord::every(60, 6).column("TC1", {550.1, kNoReading, kNoReading, 550, 500, 450});
  CHECK(told(warmer, "temperature-max", cool) == "550.1 inconclusive");
}

TEST_CASE("Too hot is not met, whatever else is unknown") {
  MadeRecord made = MadeRecord::every(60, 181)
                        .course("TC1", {{0, 20}, {60, 601}, {120, 560}, {180, 20}})
                        .missing("TC1", 5400, 6000);
  CHECK(told(made, "temperature-max") == "601 not met");
}

TEST_CASE("An excluded time hides nothing hot, an unknown one may") {
  const MadeRecord hole = MadeRecord(plain_record()).missing("TC1", 5400, 6000);
  CHECK(told(hole, "temperature-max") == "560 inconclusive");
  CHECK(told(MadeRecord(hole).exclusion("TC1", 5400, 6000), "temperature-max") == "560 met");
}

TEST_CASE("Over-temperature is inconclusive where a channel is unknown and not known to be cold") {
  const auto over = [](const MadeRecord& made) {
    return Evaluated(made, kLimits + kHold).told("stage-1.over-temperature");
  };
  CHECK(over(MadeRecord(plain_record()).missing("TC1", 2400, 2760)) == "560 met");
  CHECK(over(MadeRecord(plain_record()).missing("TC1", 2400, 2820)) == "560 inconclusive");
  CHECK(over(MadeRecord(plain_record()).missing("TC1", 5400, 6000)) == "560 inconclusive");
}

TEST_CASE("A first or last reading within three intervals counts for the start and the end") {
  // Every 60 s: three intervals are 180 s.
  const auto start = [](double to_s) {
    return told(MadeRecord(plain_record()).missing("TC1", 0, to_s), "start-temperature");
  };
  CHECK(start(-1) == "20 met");
  CHECK(start(0) == "29 met");  // the second reading
  CHECK(start(120) == "47 met");
  CHECK(start(180) == "none inconclusive");
  const auto end = [](double from_s) {
    return told(MadeRecord(plain_record()).missing("TC1", from_s, 10800), "end-temperature");
  };
  CHECK(end(10680) == "47 met");
  CHECK(end(10620) == "none inconclusive");
  // Another channel that is too hot is not met all the same.
  MadeRecord hot = plain_record();
  hot.missing("TC1", 0, 180).course("TC2", {{0, 101}, {60, 560}, {120, 560}, {180, 20}});
  CHECK(told(hot, "start-temperature") == "101 not met");
}

TEST_CASE("A channel excluded from the start or to the end does not count there") {
  MadeRecord made = plain_record();
  made.course("TC2", plain_run());
  CHECK(told(MadeRecord(made).exclusion("TC2", 0, 600), "start-temperature") == "20 met");
  CHECK(told(MadeRecord(made).exclusion("TC2", 9000, 10800), "end-temperature") == "20 met");
  // Excluded to a minute before the end it has a reading there.
  CHECK(told(MadeRecord(made).exclusion("TC2", 9000, 10790), "end-temperature") == "20 met");
  CHECK(told(MadeRecord(made).exclusion("TC2", 9000, 10000).missing("TC2", 10001, 10800),
             "end-temperature") == "20 inconclusive");
}

TEST_CASE("A spare that has not taken over counts only with the readings that it has") {
  MadeRecord silent = plain_record();
  silent.column("TC9", std::vector<double>(181, kNoReading)).spare("TC9", "TC1");
  CHECK(told(silent, "temperature-max") == "560 met");
  CHECK(told(silent, "start-temperature") == "20 met");
  CHECK(told(silent, "end-temperature") == "20 met");
  MadeRecord hot = plain_record();
  hot.course("TC9", {{0, 20}, {60, 601}, {120, 560}, {180, 20}}).spare("TC9", "TC1");
  CHECK(told(hot, "temperature-max") == "601 not met");
}

TEST_CASE("A channel's readings after its spare took over do not count") {
  // TC1 is lost from 70 to 80 min and comes back at 900; the spare reads 560.
  std::vector<double> values;
  for (int minute = 0; minute <= 180; ++minute)
    values.push_back(minute < 70 ? on_course(plain_run(), 60.0 * minute) : minute < 80 ? kNoReading : 900);
  MadeRecord made =
      MadeRecord::every(60, 181).column("TC1", values).course("TC9", plain_run()).spare("TC9", "TC1");
  CHECK(told(made, "temperature-max") == "560 met");
  CHECK(told(made, "end-temperature") == "20 met");
}

TEST_CASE("What is missing stands beside an inconclusive verdict") {
  const Evaluated evaluated(MadeRecord(plain_record()).missing("TC1", 5400, 6000), kLimits + kHold);
  CHECK_THAT(evaluated.text("record.temperature-max"), Catch::Contains("without readings"));
  CHECK(evaluated.places("record.temperature-max") == "inconclusive TC1 5340..6060");
}
