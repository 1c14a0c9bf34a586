// SPDX-License-Identifier: GPL-3.0-or-later
// Procedure files: what is accepted and what it becomes, beside what is refused and in which words.
#include "core/procedure/procedure_file.h"

#include <string>
#include <utility>

#include <catch2/catch.hpp>

#include "core/units/sha256.h"
#include "tests/core/procedure/refusals.h"

using namespace soakwright;

namespace {

const std::string kHead = "soakwright = \"procedure 1\"\nnumber = \"HTP-021\"\nunit = \"C\"\n";
const std::string kHeadF = "soakwright = \"procedure 1\"\nnumber = \"HTP-021\"\nunit = \"F\"\n";
/// Lines 4 to 7 behind kHead, so that what follows begins at line 8.
const std::string kHold = "[[stage]]\nkind = \"hold\"\nlow = 590\ntime_min = \"95 min\"\n";

Result<Procedure> parsed(const std::string& text) { return parse_procedure(text, "given.toml"); }

Procedure procedure(const std::string& text) { return accepted(parsed(text)); }
Stage last_stage(const std::string& text) { return procedure(text).stages.back(); }
HoldStage hold(const std::string& body, const std::string& head = kHead) {
  return std::get<HoldStage>(last_stage(head + "[[stage]]\nkind = \"hold\"\n" + body).specified);
}
RampStage heat(const std::string& body, const std::string& head = kHead) {
  return std::get<RampStage>(last_stage(head + "[[stage]]\nkind = \"heat\"\n" + body).specified);
}

}  // namespace

TEST_CASE("the least that a procedure can say is a number, a unit and one stage") {
  const std::string text = kHead + kHold;
  const Procedure found = procedure(text);
  CHECK(found.file == "given.toml");
  CHECK(found.sha256 == sha256_hex(text));
  CHECK(found.number == "HTP-021");
  CHECK(found.unit == TemperatureUnit::celsius);
  REQUIRE(found.stages.size() == 1);
  CHECK(found.stages[0].number == 1);
  CHECK(found.stages[0].line == 4);
  const auto& stage = std::get<HoldStage>(found.stages[0].specified);
  CHECK(stage.low.celsius() == 590.0);
  CHECK(stage.time_min == TimeLimit{5700.0});
  CHECK(stage.count == HoldStage::Count::continuous);
}

TEST_CASE("what a procedure leaves out has its default or is no requirement") {
  const Procedure found = procedure(kHead + kHold);
  CHECK(found.evaluation.rate_window_s == 900.0);
  CHECK(found.evaluation.decision == Decision::simple);
  CHECK_FALSE(found.evaluation.interpolate_max_s.has_value());
  CHECK(found.evaluation.excursion_allowed == ExcursionAllowed{0.0, std::nullopt});
  CHECK(found.evaluation.in_range_min_s == 120.0);
  CHECK(found.record_limits == RecordLimits{});
  CHECK_FALSE(found.thickness.has_value());
  CHECK(found.provenance == Provenance{});
}

TEST_CASE("line ends and a byte order mark do not matter") {
  std::string with_returns = "\xEF\xBB\xBF";
  for (const char letter : kHead + kHold)
    with_returns += letter == '\n' ? std::string{"\r\n"} : std::string{letter};
  CHECK(procedure(with_returns).stages == procedure(kHead + kHold).stages);
}

TEST_CASE("stages come in any number and order, and two holds are two holds") {
  const Procedure found = procedure(kHead + kHold + "\n[[stage]]\nkind = \"cool\"\nrate_max = 180\n" + kHold);
  REQUIRE(found.stages.size() == 3);
  CHECK(found.stages[1].number == 2);
  CHECK(found.stages[1].line == 9);
  CHECK(std::get<RampStage>(found.stages[1].specified).direction == RampStage::Direction::cool);
  CHECK(std::holds_alternative<HoldStage>(found.stages[2].specified));
}

TEST_CASE("in a Fahrenheit file points convert with the offset, differences and rates without") {
  // NIST SP 811 B.8: t/C = (t/F - 32)/1.8, an interval of 1 F is 5/9 K.
  const HoldStage held = hold("low = 1094\nhigh = 1148\nspread_max = 45\nedge_fraction_min = 0.5\n", kHeadF);
  CHECK(held.low.celsius() == 590.0);
  CHECK(held.high->celsius() == 620.0);
  CHECK(held.spread_max->kelvin() == 25.0);
  CHECK(held.edge_fraction_min == 0.5);
  const RampStage ramp = heat("above = 572\nrate_max = 360\nrate_min = 36\nspread_max = 270\n", kHeadF);
  CHECK(ramp.above->celsius() == 300.0);
  CHECK(ramp.rate_max == RateLimit{HeatingRate::of_celsius_per_hour(200)});
  CHECK(ramp.rate_min->celsius_per_hour() == 20.0);
  CHECK(ramp.spread_max->kelvin() == 150.0);
  const Procedure whole = procedure(kHeadF +
                                    "[evaluation]\nexcursion_allowed = { time = \"3 min\", depth = 9 "
                                    "}\n[record]\ntemperature_max = 1202\n" +
                                    kHold);
  CHECK(whole.evaluation.excursion_allowed == ExcursionAllowed{180.0, TemperatureDifference::of_kelvin(5.0)});
  CHECK(whole.record_limits.temperature_max->celsius() == 650.0);
}

TEST_CASE("a rate rule in F/h and inches converts by 5/9") {
  const RampStage ramp =
      heat("rate_max = { over = 400, per = \"in\", at_least = 100, at_most = 400 }\n", kHeadF);
  const auto& rule = std::get<RateRule>(*ramp.rate_max);
  CHECK(rule.per == LengthUnit::inch);
  CHECK(rule.over.celsius_per_hour() == Approx(2000.0 / 9.0).epsilon(1e-15));
  CHECK(rule.at_least->celsius_per_hour() == Approx(500.0 / 9.0).epsilon(1e-15));
  // ASME BPVC VIII-1 UCS-56(d), worked: 2 in 200 F/h.
  CHECK(rule.at(Thickness::of(2, LengthUnit::inch)).in(TemperatureUnit::fahrenheit) ==
        Approx(200.0).epsilon(1e-14));
}

TEST_CASE("a time rule is read with its points, slope and step") {
  const auto rule = [](const std::string& text) {
    return std::get<TimeRule>(*hold("low = 590\ntime_min = " + text).time_min);
  };
  const TimeRule full = rule(
      "{ points = [[\"6 mm\", \"15 min\"], [\"50 mm\", \"2 h\"]], beyond = \"15 min per 25 mm\", step = "
      "\"0.25 in\" }");
  REQUIRE(full.points.size() == 2);
  CHECK(full.points[1] == std::pair{Thickness::of(50, LengthUnit::millimetre), 7200.0});
  CHECK(full.beyond == TimeRule::Slope{900.0, Thickness::of(25, LengthUnit::millimetre)});
  CHECK(full.step == Thickness::of(0.25, LengthUnit::inch));
  CHECK(rule("{ points = [[\"6 mm\", \"15 min\"]], beyond = \"15 min per in\" }").beyond ==
        TimeRule::Slope{900.0, Thickness::of(1, LengthUnit::inch)});
  CHECK_FALSE(rule("{ points = [[\"6 mm\", \"15 min\"]] }").step.has_value());
}

TEST_CASE("the edge of what makes sense is accepted") {
  for (const char* const body :
       {"low = 590\nhigh = 590.001\nspread_max = 0\n", "low = 590\nexcursion_time_max = \"0 s\"\n",
        "low = 590\ntime_min = \"2 h\"\ntime_max = \"2 h\"\n", "low = 590\nhigh = 620\n",
        "low = -40\ntime_min = \"1 h\"\n", "low = 590\nedge_fraction_min = 1\n",
        "low = 590\ntempering_min = 17.9\ntempering_max = 17.9\n",
        "low = 590\ntime_min = { points = [[\"6 mm\", \"0 s\"]] }\n"}) {
    CHECK(parsed(kHead + "[[stage]]\nkind = \"hold\"\n" + body).ok());
  }
  CHECK(heat("rate_max = { over = 5500, per = \"mm\", at_least = 55, at_most = 55 }\n").rate_max.has_value());
  CHECK(heat("rate_min = 20\nrate_max = 20\n").rate_min.has_value());
  CHECK(procedure(kHead + "[evaluation]\nin_range_min = \"0 s\"\nexcursion_allowed = \"0 s\"\n" + kHold)
            .evaluation.in_range_min_s == 0.0);
}

TEST_CASE("procedures that are refused as a whole") {
  const std::string body = kHead + kHold;
  const std::string no_version = body.substr(body.find('\n') + 1);
  for (const Refused& row : {
           Refused{no_version, 1, "`soakwright` is missing in the procedure", "add `soakwright"},
           Refused{"soakwright = \"job 1\"\nwork = \"drum\"\n", 1,
                   "\"job 1\": this file is a job, not a procedure", "a procedure is needed here"},
           Refused{"soakwright = \"procedure 2\"\n", 1, "\"procedure 2\"",
                   "this program reads \"procedure 1\""},
           Refused{"soakwright = 1\n", 1, "`soakwright` is 1", "\"procedure 1\""},
           Refused{"\n\nsoakwright = procedure 1\n", 3, "not TOML", "double quotes"},
           Refused{kHead + "number = \"2\"\n" + kHold, 4, "not TOML", ""},
           Refused{kHead + "title = \"\xB0\"\n" + kHold, 4, "not TOML", "UTF-8"},
           Refused{"Time,TC1\n06:00,20\n", 1, "not TOML", ""},
           Refused{std::string("\0\x01\x02", 3), 1, "not TOML", ""},
       }) {
    CHECK(unlike(parsed(row.text), row) == "");
  }
}

TEST_CASE("an empty file lacks everything that is required, said in one answer") {
  const auto empty = parsed("");
  REQUIRE_FALSE(empty.ok());
  const Problems& problems = empty.problems();
  REQUIRE(problems.size() == 4);
  CHECK(problems[0].what == "`soakwright` is missing in the procedure");
  CHECK(problems[1].what == "`number` is missing in the procedure");
  CHECK(problems[2].what == "`unit` is missing in the procedure");
  CHECK(problems[3].what == "the procedure has no stage");
}

TEST_CASE("keys of the head that are refused") {
  for (const Refused& row : {
           Refused{"soakwright = \"procedure 1\"\nunit = \"C\"\n" + kHold, 1, "`number` is missing",
                   "`number ="},
           Refused{"soakwright = \"procedure 1\"\nnumber = \"1\"\n" + kHold, 1, "`unit` is missing",
                   "`unit ="},
           Refused{"soakwright = \"procedure 1\"\nnumber = \" \"\nunit = \"C\"\n" + kHold, 2,
                   "`number` is empty", "name"},
           Refused{"soakwright = \"procedure 1\"\nnumber = 21\nunit = \"C\"\n" + kHold, 2, "`number` is 21",
                   "double quotes"},
           Refused{"soakwright = \"procedure 1\"\nnumber = \"1\"\nunit = \"R\"\n" + kHold, 3,
                   "`unit` is \"R\"", "C, F"},
           Refused{"soakwright = \"procedure 1\"\nnumber = \"1\"\nunit = \"K\"\n" + kHold, 3,
                   "`unit` is \"K\"", "C, F"},
           Refused{"soakwright = \"procedure 1\"\nnumber = \"1\"\nunit = \"°C\"\n" + kHold, 3,
                   "`unit` is \"°C\"", "write `unit = \"C\"`"},
           Refused{kHead + "thickness = 38\n" + kHold, 4, "`thickness` is 38", "\"38 mm\""},
           Refused{kHead + "thickness = \"38\"\n" + kHold, 4, "`thickness` is \"38\"", "\"1.5 in\""},
           Refused{kHead + "thickness = \"3.8 cm\"\n" + kHold, 4, "\"3.8 cm\"", "in mm or in"},
           Refused{kHead + "thickness = \"0 mm\"\n" + kHold, 4, "\"0 mm\"", "more than 0"},
           Refused{kHead + "thickness = \"-2 mm\"\n" + kHold, 4, "\"-2 mm\"", "more than 0"},
           Refused{kHead + "flag = \"sen\"\n" + kHold, 4, "`flag` is \"sen\"", "did you mean `seen`?"},
           Refused{kHead + "titel = \"x\"\n" + kHold, 4, "`titel` is not a key of the procedure",
                   "did you mean `title`?"},
           Refused{kHead + "temperature_max = 650\n" + kHold, 4,
                   "`temperature_max` is not a key of the procedure", "known here: soakwright, number"},
           Refused{kHead + "\n[evaluatio]\n" + kHold, 5, "`evaluatio` is not a key",
                   "did you mean `evaluation`?"},
           Refused{kHead + "evaluation = \"simple\"\n" + kHold, 4, "`evaluation` is \"simple\"",
                   "[evaluation]"},
           Refused{kHead, 1, "no stage", "[[stage]]"},
           Refused{kHead + "stage = []\n", 4, "no stage", "[[stage]]"},
           Refused{kHead + "[stage]\nkind = \"heat\"\n", 4, "`stage` is a table", "[[stage]]"},
           Refused{kHead + "stage = [1]\n", 4, "`stage` is a list", "[[stage]]"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("a procedure of more than 200 stages is refused before they are read") {
  const auto stages = [](std::size_t count) {
    std::string text = kHead;
    for (std::size_t i = 0; i < count; ++i) text += "[[stage]]\nkind = \"cool\"\nrate_max = 180\n";
    return text;
  };
  CHECK(procedure(stages(200)).stages.size() == 200);
  CHECK(unlike(parsed(stages(201)), Refused{stages(201), 604, "has 201 stages; at most 200", "split"}) == "");
}

TEST_CASE("keys of [evaluation] and [record] that are refused") {
  const auto evaluation = [](const std::string& line) {
    return kHead + "[evaluation]\n" + line + "\n" + kHold;
  };
  const auto whole = [](const std::string& line) { return kHead + "[record]\n" + line + "\n" + kHold; };
  for (const Refused& row : {
           Refused{evaluation("rate_window = 15"), 5, "`rate_window` is 15", "\"95 min\""},
           Refused{evaluation("rate_window = \"15 m\""), 5, "`rate_window` is \"15 m\"", "\"95 min\""},
           Refused{evaluation("rate_window = \"0 min\""), 5, "\"0 min\"", "more than 0"},
           Refused{evaluation("rate_window = \"-15 min\""), 5, "\"-15 min\"", "0 or more"},
           Refused{evaluation("interpolate_max = \"0 s\""), 5, "`interpolate_max` is \"0 s\"", "more than 0"},
           Refused{evaluation("in_range_min = \"-2 min\""), 5, "`in_range_min` is \"-2 min\"", "0 or more"},
           Refused{evaluation("decision_rule = \"guard\""), 5, "`decision_rule` is \"guard\"",
                   "did you mean `guarded`?"},
           Refused{evaluation("decision_rule = true"), 5, "`decision_rule` is true", "simple, guarded"},
           Refused{evaluation("excursion_allowed = 0"), 5, "`excursion_allowed` is 0", "\"90 s\""},
           Refused{evaluation("excursion_allowed = \"-1 s\""), 5, "`excursion_allowed` is \"-1 s\"",
                   "0 or more"},
           Refused{evaluation("excursion_allowed = { depth = 5 }"), 5,
                   "`time` is missing in `excursion_allowed`", "add"},
           Refused{evaluation("excursion_allowed = { time = \"3 min\", depth = -5 }"), 5, "`depth` is -5",
                   "0 or more"},
           Refused{evaluation("excursion_allowed = { time = \"3 min\", dept = 5 }"), 5,
                   "`dept` is not a key of `excursion_allowed`", "`depth`"},
           Refused{evaluation("temperature_max = 650"), 5, "`temperature_max` is not a key of [evaluation]",
                   "known here: rate_window"},
           Refused{whole("temperature_max = nan"), 5, "`temperature_max` is not a finite number",
                   "plain number"},
           Refused{whole("temperature_max = inf"), 5, "`temperature_max` is not a finite number",
                   "plain number"},
           Refused{whole("temperature_max = \"650 C\""), 5, "`temperature_max` is \"650 C\"", "plain number"},
           Refused{whole("start_temperature_max = -300"), 5, "`start_temperature_max` is -300",
                   "no such temperature"},
           Refused{whole("end_temperature_max = 1e9"), 5, "`end_temperature_max`", "no such temperature"},
           Refused{whole("gap_max = \"0 s\""), 5, "`gap_max`", "more than 0"},
           Refused{whole("gap_max = 2031-04-02"), 5, "`gap_max` is 2031-04-02", "duration"},
           Refused{whole("sampling_interval_max = \"60 sec\""), 5, "`sampling_interval_max` is \"60 sec\"",
                   "duration"},
           Refused{whole("thermocouples_min = 4.5"), 5, "`thermocouples_min` is 4.5", "whole number"},
           Refused{whole("thermocouples_min = 0"), 5, "`thermocouples_min` is 0", "from 1"},
           Refused{whole("thermocouples_min = 99999999999"), 5, "99999999999", "whole number"},
           Refused{whole("thermocouple_min = 4"), 5, "`thermocouple_min`",
                   "did you mean `thermocouples_min`?"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("heat and cool stages that are refused") {
  const auto ramp = [](const std::string& lines, const char* kind = "heat") {
    return kHead + "[[stage]]\nkind = \"" + kind + "\"\n" + lines + "\n";
  };
  for (const Refused& row : {
           Refused{ramp(""), 4, "this heat stage sets no limit", "rate_max, rate_min, spread_max"},
           Refused{ramp("above = 300", "cool"), 4, "this cool stage sets no limit",
                   "rate_max, rate_min, spread_max"},
           Refused{ramp("above = 600\nbelow = 300\nrate_max = 100"), 7,
                   "`above` 600 of this heat stage is not below `below` 300", "changed places"},
           Refused{ramp("above = 300\nbelow = 300\nrate_max = 100"), 7, "not below", "changed places"},
           Refused{ramp("rate_max = 0"), 6, "`rate_max` is 0", "more than 0"},
           Refused{ramp("rate_max = -100"), 6, "`rate_max` is -100", "more than 0"},
           Refused{ramp("rate_max = \"100\""), 6, "`rate_max` is \"100\"", "plain number"},
           Refused{ramp("rate_max = nan"), 6, "`rate_max` is not a finite number", "plain number"},
           Refused{ramp("rate_min = 50\nrate_max = 20"), 7,
                   "`rate_min` 50 of this heat stage is not at most `rate_max` 20", "changed places"},
           Refused{ramp("rate_min = { over = 1, per = \"mm\" }"), 6, "`rate_min` is a table", "plain number"},
           Refused{ramp("rate_max = { per = \"mm\" }"), 6, "`over` is missing in `rate_max`", "add `over"},
           Refused{ramp("rate_max = { over = 5500 }"), 6, "`per` is missing in `rate_max`", "add `per"},
           Refused{ramp("rate_max = { over = 5500, per = \"cm\" }"), 6, "`per` is \"cm\"", ""},
           Refused{ramp("rate_max = { over = 0, per = \"mm\" }"), 6, "`over` is 0", "more than 0"},
           Refused{ramp("rate_max = { over = inf, per = \"mm\" }"), 6, "`over` is not a finite number", ""},
           Refused{ramp("rate_max = { over = 5500, per = \"mm\", at_least = 220, at_most = 55 }"), 6,
                   "`at_least` 220 of `rate_max` is not at most `at_most` 55", "changed places"},
           Refused{ramp("rate_max = { over = 5500, per = \"mm\", at_leest = 55 }"), 6,
                   "`at_leest` is not a key of `rate_max`", "did you mean `at_least`?"},
           Refused{ramp("spread_max = -1"), 6, "`spread_max` is -1", "0 or more"},
           Refused{ramp("rate_max = 100\nspread_within = \"4.6 m\""), 7,
                   "`spread_within` limits nothing without `spread_max`", "give `spread_max`"},
           Refused{ramp("spread_max = 150\nspread_within = 4.6"), 7, "`spread_within` is 4.6", "\"15 ft\""},
           Refused{ramp("spread_max = 150\nspread_within = \"-1 m\""), 7, "`spread_within` is \"-1 m\"",
                   "0 or more"},
           Refused{ramp("rate_max = 100\nlow = 590"), 7, "`low` is not a key of this heat stage", ""},
           Refused{ramp("rate_max = 100\nmax_rate = 3"), 7, "`max_rate` is not a key of this heat stage",
                   "rate_max"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("hold stages that are refused") {
  const auto held = [](const std::string& lines) {
    return kHead + "[[stage]]\nkind = \"hold\"\n" + lines + "\n";
  };
  const auto timed = [&](const std::string& rule) { return held("low = 590\ntime_min = " + rule); };
  for (const Refused& row : {
           Refused{held("low = 590"), 4, "this hold stage sets no limit", "high, time_min, time_max"},
           Refused{held("time_min = \"95 min\""), 4, "`low` is missing in this hold stage", "add `low"},
           Refused{held("low = 620\nhigh = 590\ntime_min = \"1 h\""), 7,
                   "`low` 620 of this hold stage is not below `high` 590", "changed places"},
           Refused{held("low = 590\nhigh = 590\ntime_min = \"1 h\""), 7, "not below", "changed places"},
           Refused{held("high = 590\nlow = 620\ntime_min = \"1 h\""), 7, "not below", "changed places"},
           Refused{held("low = -inf\ntime_min = \"1 h\""), 6, "`low` is not a finite number", "plain number"},
           Refused{held("low = [590]\ntime_min = \"1 h\""), 6, "`low` is a list", "plain number"},
           Refused{timed("95"), 7, "`time_min` is 95", "\"95 min\""},
           Refused{timed("\"95 minutes\""), 7, "\"95 minutes\"", "\"1 h 35 min\""},
           Refused{timed("\"35 min 1 h\""), 7, "\"35 min 1 h\"", "\"1 h 35 min\""},
           Refused{timed("\"-1 h\""), 7, "\"-1 h\"", "0 or more"},
           Refused{timed("01:35:00"), 7, "a time of day", "\"1 h 35 min\""},
           Refused{timed("\"3 h\"\ntime_max = \"2 h\""), 8,
                   "`time_min` \"3 h\" of this hold stage is not at most `time_max` \"2 h\"",
                   "changed places"},
           Refused{timed("{ points = [] }"), 7, "`points` is an empty list", "[["},
           Refused{timed("{ beyond = \"15 min per 25 mm\" }"), 7, "`points` is missing in `time_min`",
                   "add `points"},
           Refused{timed("{ points = [[\"6 mm\"]] }"), 7, "`points[1]` is a list", "\"15 min\"]"},
           Refused{timed("{ points = [\"6 mm\", \"15 min\"] }"), 7, "`points[1]` is \"6 mm\"", "\"15 min\"]"},
           Refused{timed("{ points = [[\"thin\", \"6 min\"]] }"), 7, "`points[1]` is \"thin\"", "\"38 mm\""},
           Refused{timed("{ points = [[\"50 mm\", \"2 h\"], [\"6 mm\", \"15 min\"]] }"), 7,
                   "`points[2]` is not thicker than the point before it", "rising thickness"},
           Refused{timed("{ points = [[\"6 mm\", \"2 h\"], [\"6 mm\", \"3 h\"]] }"), 7,
                   "`points[2]` is not thicker", "rising thickness"},
           Refused{timed("{ points = [[\"0 mm\", \"2 h\"]] }"), 7, "\"0 mm\"", "more than 0"},
           Refused{timed("{ points = [[\"6 mm\", \"-2 h\"]] }"), 7, "\"-2 h\"", "0 or more"},
           Refused{timed("{ points = [[\"6 mm\", \"2 h\"]], beyond = \"15 min\" }"), 7,
                   "`beyond` is \"15 min\"", "\"15 min per 25 mm\""},
           Refused{timed("{ points = [[\"6 mm\", \"2 h\"]], beyond = \"15 min per 0 mm\" }"), 7, "`beyond`",
                   "\"15 min per 25 mm\""},
           Refused{timed("{ points = [[\"6 mm\", \"2 h\"]], beyond = \"-15 min per 25 mm\" }"), 7, "`beyond`",
                   "0 or more"},
           Refused{timed("{ points = [[\"6 mm\", \"2 h\"]], step = \"0 in\" }"), 7, "`step` is \"0 in\"",
                   "more than 0"},
           Refused{timed("{ points = [[\"6 mm\", \"2 h\"]], steps = \"5 mm\" }"), 7,
                   "`steps` is not a key of `time_min`", "did you mean `step`?"},
           Refused{held("low = 590\ntime_max = { points = [[\"6 mm\", \"2 h\"]] }"), 7,
                   "`time_max` is a table", "duration"},
           Refused{timed("\"1 h\"\ncount = \"total\""), 8, "`count` is \"total\"", "continuous, accumulated"},
           Refused{held("low = 590\nexcursion_time_max = \"-1 s\""), 7, "`excursion_time_max`", "0 or more"},
           Refused{held("low = 590\nspread_max = -30"), 7, "`spread_max` is -30", "0 or more"},
           Refused{held("low = 590\nedge_fraction_min = 50"), 7, "`edge_fraction_min` is above 1",
                   "half is 0.5"},
           Refused{held("low = 590\nedge_fraction_min = 0"), 7, "`edge_fraction_min` is 0", "more than 0"},
           Refused{held("low = -10\nedge_fraction_min = 0.5"), 7, "a `low` that is not above 0",
                   "leave it out"},
           Refused{held("low = 590\ntempering_min = 17900"), 7, "`tempering_min` is 17900",
                   "divided by 1000"},
           Refused{held("low = 590\ntempering_min = 20\ntempering_max = 18"), 8, "`tempering_min` 20",
                   "changed places"},
           Refused{timed("\"1 h\"\nrate_max = 100"), 8, "`rate_max` is not a key of this hold stage", ""},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("maintain stages and kinds that are refused") {
  const auto stage = [](const std::string& lines) { return kHead + "[[stage]]\n" + lines + "\n"; };
  for (const Refused& row : {
           Refused{stage("kind = \"maintain\"\nlow = 120"), 4, "`during` is missing in this maintain stage",
                   "add `during"},
           Refused{stage("kind = \"maintain\"\nduring = \"welding\""), 4,
                   "`low` is missing in this maintain stage", "add `low"},
           Refused{stage("kind = \"maintain\"\nlow = 120\nduring = \"\""), 7, "`during` is empty", "name"},
           Refused{stage("kind = \"maintain\"\nlow = 250\nhigh = 120\nduring = \"welding\""), 7, "not below",
                   "changed places"},
           Refused{stage("low = 120"), 4, "`kind` is missing in this stage", "add `kind"},
           Refused{stage("kind = \"holds\"\nlow = 120\nanything = 1"), 5, "`kind` is \"holds\"",
                   "did you mean `hold`?"},
           Refused{stage("kind = \"soak\""), 5, "`kind` is \"soak\"", "heat, hold, cool, maintain"},
           Refused{stage("kind = 3"), 5, "`kind` is 3", "heat, hold, cool, maintain"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("text of the file stays short and on one line in a message") {
  const std::string long_text(100'000, 'x');
  const std::string lines[] = {"unit = \"" + long_text + "\"", "unit = \"C\\n\\u001b[31m\"",
                               '"' + long_text + "\" = 1"};
  for (const std::string& line : lines) {
    const auto result = parsed("soakwright = \"procedure 1\"\nnumber = \"1\"\n" + line + "\n" + kHold);
    REQUIRE_FALSE(result.ok());
    for (const Problem& problem : result.problems()) {
      CHECK(problem.text().size() < 300);
      CHECK(problem.text().find_first_of("\n\x1b") == std::string::npos);
    }
  }
}
