// SPDX-License-Identifier: GPL-3.0-or-later
// Job files: what is accepted and what it becomes, beside what is refused and in which words.
#include "core/procedure/job/job_file.h"

#include <string>
#include <utility>

#include <catch2/catch.hpp>

#include "core/units/sha256.h"
#include "tests/core/procedure/refusals.h"

using namespace soakwright;

namespace {

const std::string kHead = "soakwright = \"job 1\"\n";

Result<Job> parsed(const std::string& text) { return parse_job(text, "given.toml"); }
Job job(const std::string& body) { return accepted(parsed(kHead + body)); }
ThermocoupleEntry thermocouple(const std::string& lines) {
  return job("[[thermocouple]]\ncolumn = \"TC3\"\n" + lines).thermocouples.front();
}
LocalTime clock(const char* text) { return parse_local_time(text).value(); }

}  // namespace

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

TEST_CASE("a job may say nothing but that it is one") {
  const Job found = job("");
  CHECK(found.file == "given.toml");
  CHECK(found.sha256 == sha256_hex(kHead));
  Job nothing;
  nothing.file = found.file;
  nothing.sha256 = found.sha256;
  CHECK(found == nothing);
}

TEST_CASE("the head of a job is read") {
  const Job found =
      job("work = \"Steam drum D-3\"\nweld = \"W-117\"\nclient = \"Saltmarsh Heat & Power\"\ncontractor = "
          "\"Brackwater "
          "Fabrication\"\nmaterial = \"P355GH\"\ndrawing = \"D-3-11\"\nequipment = \"Unit 4\"\ncycle = 2\n"
          "report_number = \"R-31-04\"\n"
          "log = \"d3.csv\"\nprocedure = \"htp-021.toml\"\n");
  CHECK(found.work == "Steam drum D-3");
  CHECK(found.weld == "W-117");
  CHECK(found.client == "Saltmarsh Heat & Power");
  CHECK(found.contractor == "Brackwater Fabrication");
  CHECK(found.material == "P355GH");
  CHECK(found.drawing == "D-3-11");
  CHECK(found.equipment == "Unit 4");
  CHECK(found.report_number == "R-31-04");
  CHECK(found.cycle == 2);
  CHECK(found.log == "d3.csv");
  CHECK(found.procedure == "htp-021.toml");
}

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

TEST_CASE("details are read in the order in which they are written") {
  using Details = std::vector<std::pair<std::string, std::string>>;
  const Details expected{{"Order", "4711"}, {"Code", "works rules"}, {"Heating method", "ceramic pads"}};
  CHECK(job("details = { \"Order\" = \"4711\", Code = \"works rules\", \"Heating method\" = \"ceramic pads\" "
            "}\n")
            .details == expected);
  CHECK(job("[details]\nOrder = \"4711\"\nCode = \"works rules\"\n\"Heating method\" = \"ceramic pads\"\n")
            .details == expected);
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

TEST_CASE(
    "a moment is a local time in quotes or without, a time as printed, or seconds from the first sample") {
  const auto from = [](const std::string& written) {
    return job("[[exclude]]\ncolumn = \"TC1\"\nreason = \"off\"\nfrom = " + written + "\n")
        .exclusions[0]
        .from;
  };
  const Moment expected = clock("2031-04-02 13:10");
  CHECK(from("\"2031-04-02 13:10\"") == expected);
  CHECK(from("\"2031-04-02T13:10:00\"") == expected);
  CHECK(from("2031-04-02T13:10:00") == expected);
  CHECK(from("2031-04-02 13:10:00.5") == Moment{clock("2031-04-02 13:10:00.5")});
  CHECK(from("25800") == Moment{25800.0});
  CHECK(from("-0.5") == Moment{-0.5});
  constexpr std::int64_t kMinuteNs = 60 * kNanosecondsPerSecond;
  CHECK(from("\"13:10\"") == Moment{PrintedTime{790 * kMinuteNs, false}});
  CHECK(from("\"+1 d 00:10:00\"") == Moment{PrintedTime{1450 * kMinuteNs, true}});
  CHECK(from("\"0:09:30\"") == Moment{PrintedTime{570 * kNanosecondsPerSecond, true}});
}

TEST_CASE("what a person excluded, named and remarked is read") {
  const Job found =
      job("[[exclude]]\ncolumn = 2\nfrom = 0\nto = 0\nreason = \"junction came off the work\"\n"
          "[[period]]\nname = \"welding\"\nfrom = \"2031-04-02 06:40\"\nto = \"2031-04-02 09:15\"\n"
          "[[remark]]\nat = \"2031-04-02 11:02\"\ntext = \"power cut, 4 min\"\n");
  REQUIRE(found.exclusions.size() == 1);
  CHECK(found.exclusions[0].column == "2");
  CHECK(found.exclusions[0].to == Moment{0.0});
  CHECK(found.exclusions[0].reason == "junction came off the work");
  REQUIRE(found.periods.size() == 1);
  CHECK(found.periods[0].name == "welding");
  CHECK(found.periods[0].to == Moment{clock("2031-04-02 09:15")});
  CHECK(found.periods[0].line == 7);
  REQUIRE(found.remarks.size() == 1);
  CHECK(found.remarks[0].text == "power cut, 4 min");
}

TEST_CASE("what was settled about the file, the time_range and the recorder are read") {
  const Job found =
      job("[import]\ndates = \"dmy\"\nclock_forward = \"2031-03-30 02:00\"\n"
          "[time_range]\nfrom = \"2031-04-02 06:00\"\nto = \"2031-04-03 02:00\"\n"
          "[recorder]\naccuracy = \"±1.0 C\"\nresolution = \"0.1 C\"\ncertificate = \"R-7\"\nvalid_until = "
          "2031-12-31\n");
  CHECK(found.reading.dates == DateOrder::dmy);
  CHECK(found.reading.clock_forward == clock("2031-03-30 02:00"));
  CHECK(found.time_range->second == Moment{clock("2031-04-03 02:00")});
  CHECK(found.recorder->accuracy->kelvin() == 1.0);
  CHECK(found.recorder->resolution->kelvin() == 0.1);
  CHECK(found.recorder->certificate == "R-7");
  CHECK(found.recorder->valid_until == CivilDate{2031, 12, 31});
  CHECK(job("[import]\ndate = 2031-04-02").reading.date == CivilDate{2031, 4, 2});
  CHECK(job("[import]\nstart = 2031-04-02T06:00:00").reading.start == clock("2031-04-02 06:00"));
  CHECK(job("[import]\nstart = \"2031-04-02 06:00\"").reading.start == clock("2031-04-02 06:00"));
  CHECK(job("[import]\ndates = \"mdy\"").reading.dates == DateOrder::mdy);
  CHECK(job("[import]\ndates = \"ymd\"").reading.dates == DateOrder::ymd);
}

TEST_CASE("several welds are listed, each with its thermocouples") {
  const Job found =
      job("[[weld]]\nnumber = \"W-117\"\n[[weld]]\nnumber = \"W-118\"\nthickness = \"22 mm\"\nmaterial = "
          "\"P355GH\"\n"
          "[[thermocouple]]\ncolumn = \"TC1\"\nweld = \"W-118\"\n");
  REQUIRE(found.welds.size() == 2);
  CHECK_FALSE(found.welds[0].thickness.has_value());
  CHECK(found.welds[1].thickness->millimetres() == 22.0);
  CHECK(found.welds[1].material == "P355GH");
  CHECK(found.welds[1].line == 4);
  CHECK(found.thermocouples[0].weld == "W-118");
}

TEST_CASE("jobs whose head is refused") {
  for (const Refused& row : {
           Refused{"soakwright = \"procedure 1\"\nnumber = \"1\"\n", 1,
                   "\"procedure 1\": this file is a procedure, not a job", "a job is needed here"},
           Refused{"soakwright = \"job 9\"\n", 1, "\"job 9\"", "\"job 1\""},
           Refused{"work = \"drum\"\n", 1, "`soakwright` is missing in the job", "add"},
           Refused{kHead + "cycle = 0\n", 2, "`cycle` is 0", "from 1"},
           Refused{kHead + "cycle = \"first\"\n", 2, "`cycle` is \"first\"", "whole number"},
           Refused{kHead + "clint = \"x\"\n", 2, "`clint` is not a key of the job", "did you mean `client`?"},
           Refused{kHead + "weld = 117\n", 2, "`weld` is 117", "[[weld]]"},
           Refused{kHead + "log = \"\"\n", 2, "`log` is empty", "name"},
           Refused{kHead + "log = \"C:\\data\\x.csv\"\n", 2, "escape", "in single quotes"},
           Refused{kHead + "log = \"C:\\new\\test.csv\"\n", 2, "`log` has a control character",
                   "in single quotes"},
           Refused{kHead + "thickness = \"38 mm\"\n", 2, "`thickness` is not a key of the job",
                   "[[weld]] with `number` and `thickness`"},
           Refused{kHead + "details = \"Order 4711\"\n", 2, "`details` is \"Order 4711\"",
                   "names with a text"},
           Refused{kHead + "details = { Order = 4711 }\n", 2, "`details.Order` is 4711", "double quotes"},
           Refused{kHead + "duty = \"x\"\n", 2, "`duty` is not a key of the job", "did you mean `"},
           Refused{kHead + "number = \"HTP-021\"\n", 2, "`number` is not a key of the job",
                   "known here: soakwright, work"},
           Refused{kHead + "weld = \"W-117\"\n[[weld]]\nnumber = \"W-118\"\n", 3, "not TOML",
                   "a [[weld]] with its `number` for each, not both"},
           Refused{kHead + "[thermocouple]\ncolumn = \"TC1\"\n", 2, "`thermocouple` is a table",
                   "[[thermocouple]]"},
           Refused{kHead + "[[import]]\ndates = \"dmy\"\n", 2, "`import` is a list", "[import]"},
           Refused{kHead + "[import]\ndates = \"dym\"\n", 3, "`dates` is \"dym\"", "dmy, mdy, ymd"},
           Refused{kHead + "[import]\nclock_forward = \"2031-03-30\"\n", 3,
                   "`clock_forward` is \"2031-03-30\"", "13:10"},
           Refused{kHead + "[import]\ndate = \"2031-04-02\"\n", 3, "`date` is \"2031-04-02\"",
                   "without quotes"},
           Refused{kHead + "[import]\nstart = 2031-04-02\n", 3, "`start` is 2031-04-02", "local time"},
           Refused{kHead + "[import]\nclock_forward = 7200\n", 3, "`clock_forward` is 7200", "local time"},
           Refused{kHead + "[import]\ndattes = \"dmy\"\n", 3, "`dattes` is not a key of [import]",
                   "did you mean `dates`?"},
           Refused{kHead + "[time_range]\nfrom = 0\n", 2, "`to` is missing in [time_range]", "add `to"},
           Refused{kHead + "[time_range]\nfrom = 60\nto = 60\n", 4, "`to` is not after `from`",
                   "changed places"},
           Refused{kHead + "[recorder]\naccuracy = \"1 %\"\n", 3, "`accuracy` is \"1 %\"", "±1.1 C"},
           Refused{kHead + "[recorder]\naccuracy = 1.0\n", 3, "`accuracy` is 1", "±1.1 C"},
           Refused{kHead + "[recorder]\nresolution = \"±0.1 C\"\n", 3, "`resolution` is", "last digit"},
           Refused{kHead + "[recorder]\nresolution = \"0 C\"\n", 3, "`resolution` is \"0 C\"", "more than 0"},
           Refused{kHead + "[recorder]\nvalid_until = \"2031-12-31\"\n", 3, "`valid_until` is \"2031-12-31\"",
                   "without quotes"},
           Refused{kHead + "[recorder]\nvalid_until = 2031-12-32\n", 3, "not TOML", ""},
       })
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

TEST_CASE("what a person confirms is read, and refused where it would change nothing") {
  const Job found =
      job("[[confirm]]\ncolumn = \"TC3\"\nsuspect = \"stuck\"\nreason = \"checked on a second recorder\"\n");
  REQUIRE(found.confirmations.size() == 1);
  CHECK(found.confirmations[0].column == "TC3");
  CHECK(found.confirmations[0].suspect == "stuck");
  CHECK(found.confirmations[0].reason == "checked on a second recorder");
  CHECK(found.confirmations[0].line == 2);
  const auto confirm = [](const std::string& lines) { return kHead + "[[confirm]]\n" + lines; };
  for (const Refused& row :
       {Refused{confirm("suspect = \"stuck\"\nreason = \"seen\""), 2, "`column` is missing in [[confirm]]",
                "add"},
        Refused{confirm("column = 2\nreason = \"seen\""), 2, "`suspect` is missing in [[confirm]]", "add"},
        Refused{confirm("column = 2\nsuspect = \"open\""), 2, "`reason` is missing in [[confirm]]", "add"},
        Refused{confirm("column = 2\nsuspect = \"spike\"\nreason = \"seen\""), 4, "`suspect` is \"spike\"",
                "clipped"}})
    CHECK(unlike(parse_job(row.text, "given.toml"), row).empty());
}

TEST_CASE("welds, time_ranges excluded, periods and remarks that are refused") {
  const auto exclusion = [](const std::string& lines) { return kHead + "[[exclude]]\n" + lines; };
  const auto period = [](const std::string& lines) {
    return kHead + "[[period]]\nname = \"welding\"\n" + lines;
  };
  for (const Refused& row : {
           Refused{kHead + "[[weld]]\nthickness = \"22 mm\"\n", 2, "`number` is missing in [[weld]]",
                   "add `number"},
           Refused{kHead + "[[weld]]\nnumber = \"W-1\"\n[[weld]]\nnumber = \"w-1\"\n", 5,
                   "`number` \"w-1\" is given in the [[weld]] at line 2 too", "once"},
           Refused{exclusion("from = 0\nreason = \"off\""), 2, "`column` is missing in [[exclude]]", "add"},
           Refused{exclusion("column = 2\nreason = \"off\""), 2, "`from` is missing in [[exclude]]", "add"},
           Refused{exclusion("column = 2\nfrom = 0"), 2, "`reason` is missing in [[exclude]]", "add"},
           Refused{exclusion("column = 2\nfrom = 0\nreason = \"\""), 5, "`reason` is empty", ""},
           Refused{exclusion("column = 2\nfrom = \"13.10\"\nreason = \"off\""), 4, "`from` is \"13.10\"",
                   "seconds from its first sample"},
           Refused{exclusion("column = 2\nfrom = 2031-04-02\nreason = \"off\""), 4, "`from` is 2031-04-02",
                   "2031-04-02 13:10"},
           Refused{exclusion("column = 2\nfrom = 2031-04-02T13:10:00Z\nreason = \"off\""), 4,
                   "offset from UTC", "local time"},
           Refused{exclusion("column = 2\nfrom = nan\nreason = \"off\""), 4, "`from` is not a finite number",
                   ""},
           Refused{exclusion("column = 2\nfrom = 60\nto = 0\nreason = \"off\""), 5,
                   "`to` is not after `from`", "changed places"},
           Refused{exclusion("column = 2\nfrom = 0\nuntil = 9\nreason = \"off\""), 5,
                   "`until` is not a key of [[exclude]]", "column, from, to"},
           Refused{period("from = 0"), 2, "`to` is missing in [[period]]", "add"},
           Refused{period("from = \"2031-04-02 09:15\"\nto = \"2031-04-02 06:40\""), 5,
                   "`to` is not after `from`", "changed places"},
           Refused{period("from = \"23:50:00\"\nto = \"00:10:00\""), 5, "`to` is not after `from`", "+1 d"},
           Refused{period("from = 0\nto = 0"), 5, "`to` is not after `from`", "changed places"},
           Refused{period("from = 0\nto = 1\n[[period]]\nname = \"welding\"\nfrom = 2\nto = 3"), 7,
                   "`name` \"welding\" is given in the [[period]] at line 2 too", "maintain stage for each"},
           Refused{kHead + "[[remark]]\nat = 60\n", 2, "`text` is missing in [[remark]]", "add"},
           Refused{kHead + "[[remark]]\ntext = \"x\"\n", 2, "`at` is missing in [[remark]]", "add"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("previous records are counted back from the job's own cycle") {
  const Job found =
      job("[[previous_record]]\nlog = \"day-1.csv\"\njob = \"day-1.toml\"\n[[previous_record]]\nlog = "
          "\"day-2.csv\"\n");
  REQUIRE(found.previous_records.size() == 2);
  CHECK(found.previous_records[0].log == "day-1.csv");
  CHECK(found.previous_records[0].job == "day-1.toml");
  CHECK(cycle_of(found) == 3);
  CHECK(cycle_of_previous(found, 0) == 1);
  CHECK(cycle_of_previous(found, 1) == 2);
  const Job counted = job(
      "cycle = 5\n[[previous_record]]\nlog = \"a.csv\"\ncycle = 2\n[[previous_record]]\nlog = \"b.csv\"\n");
  CHECK(cycle_of(counted) == 5);
  CHECK(cycle_of_previous(counted, 0) == 2);
  CHECK(cycle_of_previous(counted, 1) == 4);
}

TEST_CASE("a previous record of the job's own cycle is an earlier part of it") {
  const Job found = job("cycle = 1\n[[previous_record]]\nlog = \"morning.csv\"\ncycle = 1\n");
  CHECK(cycle_of(found) == 1);
  CHECK(cycle_of_previous(found, 0) == 1);
}

TEST_CASE("previous records that are refused") {
  const std::string one = "[[previous_record]]\nlog = \"a.csv\"\n";
  for (const Refused& row : std::vector<Refused>{
           Refused{kHead + "[[previous_record]]\ncycle = 1\n", 2, "`log` is missing in [[previous_record]]",
                   "add"},
           Refused{kHead + "cycle = 1\n" + one, 3, "this would be cycle 0", "that cycle's number"},
           Refused{kHead + one + "cycle = 3\n", 4, "cycle 3 comes after cycle 2", "in the order"},
           Refused{
               kHead + "cycle = 3\n" + one + "cycle = 2\n[[previous_record]]\nlog = \"b.csv\"\ncycle = 1\n",
               5, "cycle 2 comes after cycle 1", "in the order"},
           Refused{kHead + one + one, 5, "`log` \"a.csv\" is given in the [[previous_record]] at line 2 too",
                   "once"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("moments of two kinds are left to the log to compare") {
  CHECK(job("[[period]]\nname = \"welding\"\nfrom = 0\nto = \"2031-04-02 09:15\"\n").periods.size() == 1);
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
