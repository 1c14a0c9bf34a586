// SPDX-License-Identifier: GPL-3.0-or-later
// The thermocouples of a job: each key, and what is refused.
#include <string>
#include <utility>

#include <catch2/catch.hpp>

#include "tests/core/procedure/job/parsed_job.h"

using namespace soakwright;
using namespace soakwright::given_job;

namespace {

ThermocoupleEntry thermocouple(const std::string& lines) {
  return job("[[thermocouple]]\ncolumn = \"TC3\"\n" + lines).thermocouples.front();
}

}  // namespace

TEST_CASE("a thermocouple that is listed and no more is a monitor in the soak zone") {
  const ThermocoupleEntry entry = thermocouple("");
  CHECK(entry.line == 2);
  CHECK(entry.column == "TC3");
  CHECK(entry.role == ThermocoupleRole::monitor);
  CHECK(entry.zone == Zone::soak);
  CHECK_FALSE(entry.name.has_value());
  CHECK_FALSE(entry.position_m.has_value());
}

TEST_CASE("a column may be named by its number in the file") {
  CHECK(job("[[thermocouple]]\ncolumn = 3\n").thermocouples[0].column == "3");
  CHECK(job("[[thermocouple]]\ncolumn = \" TC3 \"\n").thermocouples[0].column == "TC3");
}

TEST_CASE("each role, zone, unit and type is known") {
  using Type = ThermocoupleType;
  CHECK(thermocouple("role = \"control\"").role == ThermocoupleRole::control);
  CHECK(thermocouple("role = \"monitor\"").role == ThermocoupleRole::monitor);
  CHECK(thermocouple("role = \"spare\"").role == ThermocoupleRole::spare);
  CHECK(thermocouple("role = \"air\"").role == ThermocoupleRole::air);
  CHECK(thermocouple("role = \"set point\"").role == ThermocoupleRole::set_point);
  CHECK(thermocouple("role = \"off\"").role == ThermocoupleRole::off);
  CHECK(thermocouple("zone = \"edge\"").zone == Zone::edge);
  CHECK(thermocouple("unit = \"C\"").unit == ChannelUnit::celsius);
  CHECK(thermocouple("unit = \"F\"").unit == ChannelUnit::fahrenheit);
  CHECK(thermocouple("unit = \"K\"").unit == ChannelUnit::kelvin);
  CHECK(thermocouple("unit = \"mV\"").unit == ChannelUnit::millivolt);
  const std::pair<const char*, Type> types[] = {{"K", Type::K}, {"J", Type::J}, {"N", Type::N},
                                                {"E", Type::E}, {"T", Type::T}, {"R", Type::R},
                                                {"S", Type::S}, {"B", Type::B}};
  for (const auto& [name, type] : types)
    CHECK(thermocouple("type = \"" + std::string{name} + "\"").type == type);
}

TEST_CASE("a place along the work is in metres and round it in degrees") {
  CHECK(thermocouple("position = \"1.2 m\"").position_m == 1.2);
  CHECK(thermocouple("position = \"-300 mm\"").position_m == -0.3);
  CHECK(thermocouple("position = \"15 ft\"").position_m == 4.572);
  CHECK(thermocouple("angle = \"90 deg\"").angle_deg == 90.0);
  CHECK(thermocouple("angle = \"3 o'clock\"").angle_deg == 90.0);
}

TEST_CASE("a cold junction is a column or a fixed temperature") {
  CHECK(thermocouple("cold_junction = \"Terminals\"").cold_junction ==
        ColdJunction{std::string{"Terminals"}});
  CHECK(thermocouple("cold_junction = \"23.0 C\"").cold_junction ==
        ColdJunction{Temperature::of_celsius(23.0)});
  CHECK(thermocouple("cold_junction = \"73.4 F\"").cold_junction ==
        ColdJunction{Temperature::of_celsius(23.0)});
}

TEST_CASE("a tolerance is a class of the tables or a fixed plus-minus") {
  using Kind = Tolerance::Kind;
  CHECK(thermocouple("tolerance = \"class 1\"").tolerance->kind == Kind::class_1);
  CHECK(thermocouple("tolerance = \"class 2\"").tolerance->kind == Kind::class_2);
  CHECK(thermocouple("tolerance = \"standard\"").tolerance->kind == Kind::standard);
  CHECK(thermocouple("tolerance = \"special\"").tolerance->kind == Kind::special);
  const Tolerance fixed{Kind::fixed, TemperatureDifference::of_kelvin(1.1)};
  CHECK(thermocouple("tolerance = \"±1.1 C\"").tolerance == fixed);
  CHECK(thermocouple("tolerance = \"+-1.1 C\"").tolerance == fixed);
  CHECK(thermocouple("extension = \"±2.7 F\"").extension->kelvin() == 1.5);
}

TEST_CASE("calibration, certificate and date are read") {
  const ThermocoupleEntry entry =
      thermocouple("correction = [[0, 0.0], [600, -1.4]]\ncertificate = \"K-88\"\nvalid_until = 2031-09-30");
  REQUIRE(entry.correction.size() == 2);
  CHECK(entry.correction[1].first.celsius() == 600.0);
  CHECK(entry.correction[1].second.kelvin() == -1.4);
  CHECK(entry.certificate == "K-88");
  CHECK(entry.valid_until == CivilDate{2031, 9, 30});
}

TEST_CASE("a thermocouple that is a spare for another has that role unless one is written") {
  CHECK(thermocouple("spare_for = \"TC1\"").role == ThermocoupleRole::spare);
  CHECK(thermocouple("spare_for = \"TC1\"").spare_for == "TC1");
  CHECK(thermocouple("spare_for = \"TC1\"\nrole = \"spare\"").role == ThermocoupleRole::spare);
}

TEST_CASE("a thermocouple that is not evaluated may have a reason, and no other") {
  CHECK(thermocouple("role = \"off\"\nreason = \"came off\"\n").reason == "came off");
  CHECK(thermocouple("role = \"air\"\nreason = \"hangs free\"\n").reason == "hangs free");
  CHECK(thermocouple("zone = \"edge\"\nreason = \"half a metre out\"\n").reason == "half a metre out");
  const std::string entry = kHead + "[[thermocouple]]\ncolumn = \"TC3\"\n";
  for (const Refused& row :
       {Refused{entry + "reason = \"came off\"\n", 4, "this one is", "take `reason` out"},
        Refused{entry + "role = \"control\"\nreason = \"came off\"\n", 5, "this one is", "[[exclude]]"},
        Refused{entry + "role = \"none\"\nreason = \"came off\"\n", 4, "`role` is \"none\"", ""},
        Refused{entry + "role = \"off\"\nreason = \"\"\n", 5, "`reason` is empty", ""}})
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("thermocouples that are refused") {
  const auto listed = [](const std::string& lines) {
    return kHead + "[[thermocouple]]\ncolumn = \"TC3\"\n" + lines;
  };
  for (const Refused& row : {
           Refused{kHead + "[[thermocouple]]\nname = \"TC3\"\n", 2, "`column` is missing in [[thermocouple]]",
                   "add `column"},
           Refused{kHead + "[[thermocouple]]\ncolumn = 0\n", 3, "`column` is 0", "from 1"},
           Refused{kHead + "[[thermocouple]]\ncolumn = 1.5\n", 3, "`column` is 1.5", ""},
           Refused{kHead + "[[thermocouple]]\ncolumn = \" \"\n", 3, "`column` is empty", "name"},
           Refused{listed("role = \"setpoint\""), 4, "`role` is \"setpoint\"", "did you mean `set point`?"},
           Refused{listed("zone = \"middle\""), 4, "`zone` is \"middle\"", "soak, edge"},
           Refused{listed("position = 1.2"), 4, "`position` is 1.2", "\"1.2 m\""},
           Refused{listed("position = \"1.2\""), 4, "`position` is \"1.2\"", "\"1.2 m\""},
           Refused{listed("angle = 90"), 4, "`angle` is 90", "\"90 deg\""},
           Refused{listed("angle = \"13 o'clock\""), 4, "`angle` is \"13 o'clock\"", "\"3 o'clock\""},
           Refused{listed("unit = \"°C\""), 4, "`unit` is \"°C\"", "write `unit = \"C\"`"},
           Refused{listed("unit = \"R\""), 4, "`unit` is \"R\"", "C, F, K, mV"},
           Refused{listed("type = \"L\""), 4, "`type` is \"L\"", "K, J, N, E, T, R, S, B"},
           Refused{listed("type = \"k\""), 4, "`type` is \"k\"", "K, J, N, E, T, R, S, B"},
           Refused{listed("cold_junction = 23.0"), 4, "`cold_junction` is 23", "\"23.0 C\""},
           Refused{listed("cold_junction = \"\""), 4, "`cold_junction` is empty", ""},
           Refused{listed("tolerance = \"class 3\""), 4, "`tolerance` is \"class 3\"",
                   "\"class 1\", \"class 2\""},
           Refused{listed("tolerance = \"±1.1\""), 4, "`tolerance` is", "\"±1.1 C\""},
           Refused{listed("tolerance = \"-1.1 C\""), 4, "`tolerance` is \"-1.1 C\"", "0 or more"},
           Refused{listed("extension = \"KX\""), 4, "`extension` is \"KX\"", "\"±1.1 C\""},
           Refused{listed("correction = []"), 4, "`correction` is an empty list", "[[0, 0.0]"},
           Refused{listed("correction = [0, 600]"), 4, "`correction` is 0", "[[0, 0.0]"},
           Refused{listed("correction = [[600, -1.4], [0, 0.0]]"), 4,
                   "`correction` has a point that is not above", "rising"},
           Refused{listed("correction = [[0, 0.0], [600, nan]]"), 4, "`correction` is not a finite number",
                   ""},
           Refused{listed("valid_until = 2031-09-30T00:00:00"), 4, "`valid_until` is 2031-09-30T00:00:00",
                   "2031-09-30"},
           Refused{listed("valid_until = 1492-01-01"), 4, "outside the years 1678 to 2261", ""},
           Refused{listed("around = \"90 deg\""), 4, "`around` is not a key of [[thermocouple]]",
                   "known here: column"},
           Refused{listed("weld = \"W-119\""), 4, "`weld` \"W-119\" is no weld of the job",
                   "name the job's welds"},
           Refused{listed("[[thermocouple]]\ncolumn = \" tc3\""), 5,
                   "`column` \"tc3\" is given in the [[thermocouple]] at line 2 too", "once"},
           Refused{listed("[[thermocouple]]\ncolumn = \"TC4\"\nname = \"TC3\""), 6,
                   "`name` \"TC3\" is given in", "a name of its own"},
           Refused{listed("spare_for = \"tc3\""), 4, "`spare_for` \"tc3\" names the thermocouple itself",
                   "takes over from"},
           Refused{listed("spare_for = \"\""), 4, "`spare_for` is empty", ""},
           Refused{listed("spare_for = \"TC1\"\nrole = \"monitor\""), 4, "beside a `role` that is not spare",
                   "role = \"spare\""},
           Refused{listed("role = \"air\"\n[[thermocouple]]\ncolumn = \"TC9\"\nspare_for = \"TC3\""), 7,
                   "names one that is not evaluated", "control or monitor"},
           Refused{listed("spare_for = \"TC1\"\n[[thermocouple]]\ncolumn = \"TC9\"\nspare_for = \"TC3\""), 7,
                   "is itself a spare", "evaluated"},
           Refused{listed("spare_for = \"TC1\"\n[[thermocouple]]\ncolumn = \"TC9\"\nspare_for = \"TC1\""), 7,
                   "has a spare already, the [[thermocouple]] at line 2", "one spare"},
           Refused{listed("name = \"top\"\n[[thermocouple]]\ncolumn = \"TC8\"\nspare_for = "
                          "\"top\"\n[[thermocouple]]\ncolumn = \"TC9\"\nspare_for = \"TC3\""),
                   10, "has a spare already, the [[thermocouple]] at line 5", "one spare"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("a thermocouple of a weld that is spelled wrong is told the nearest") {
  const std::string text =
      kHead + "[[weld]]\nnumber = \"W-118\"\n[[thermocouple]]\ncolumn = 2\nweld = \"W-181\"\n";
  CHECK(unlike(parsed(text), {text, 6, "`weld` \"W-181\" is no weld of the job", "did you mean `W-118`?"}) ==
        "");
}

TEST_CASE("ten thousand thermocouples are checked in no time") {
  // Each against each would be 10^8 comparisons of text.
  std::string text = kHead;
  for (int number = 1; number <= 10'000; ++number)
    text += "[[thermocouple]]\ncolumn = " + std::to_string(number) + "\n";
  text += "[[thermocouple]]\ncolumn = 777\n";
  const auto result = parsed(text);
  REQUIRE_FALSE(result.ok());
  CHECK(result.problems().size() == 1);
}
