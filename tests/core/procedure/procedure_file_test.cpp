// SPDX-License-Identifier: GPL-3.0-or-later
// Procedure files: what is accepted and what it becomes.
#include "core/procedure/procedure_file.h"

#include <string>
#include <utility>

#include <catch2/catch.hpp>

#include "core/units/sha256.h"
#include "tests/core/procedure/parsed_procedure.h"

using namespace soakwright;
using namespace soakwright::given_procedure;

namespace {

const std::string kHeadF = "soakwright = \"procedure 1\"\nnumber = \"HTP-021\"\nunit = \"F\"\n";

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
