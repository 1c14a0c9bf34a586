// SPDX-License-Identifier: GPL-3.0-or-later
// What two people argue over, as the result tells it: the uncertainty budget behind a guarded decision, and
// what a limit would have come to on another alternatives. On the sample logs.
#include <cmath>
#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/run_program.h"

using nlohmann::json;

namespace {

json result_of(const std::string& job) {
  const Ran ran = run_soakwright({"check", "--job", source_file("sample-logs/" + job), "--json", "-"});
  REQUIRE(ran.err.empty());
  return json::parse(ran.out);
}

const json& guarded() {
  static const json result = result_of("w-117-stress-relief/job-guarded.toml");
  return result;
}

json named(const json& list, const std::string& key, const std::string& value) {
  for (const json& one : list)
    if (one[key] == value) return one;
  FAIL("no " << value);
  return {};
}

Approx close_to(double value) { return Approx(value).epsilon(0).margin(1e-9); }

}  // namespace

TEST_CASE(
    "The budget of a class 1 type K thermocouple adds up as the GUM says, from the table of IEC 60584-1") {
  // IEC 60584-1, type K, class 1: the greater of 1.5 °C and 0.4 % of |t|; at 620 °C 2.48 °C, at 300 °C 1.5
  // °C. Extension ±1.5 °C and recorder ±1.0 °C as the job says. Half-widths a: u = a / √3; a step q: u = q /
  // √12 (GUM 4.3.7, F.2.2.1).
  const json budget = named(guarded()["budget"], "channel", "TC2");
  struct Point {
    const char* limit;
    double celsius, thermocouple;
  };
  for (const Point& point : {Point{"stage-1 above", 300, 1.5}, Point{"stage-2 low", 590, 2.36},
                             Point{"stage-2 high", 620, 2.48}, Point{"temperature_max", 650, 2.6}}) {
    CAPTURE(point.limit);
    const json at = named(budget["at"], "limit", point.limit);
    CHECK(at["temperature"] == point.celsius);
    const json& components = at["components"];
    REQUIRE(components.size() == 4);
    CHECK(components[0]["name"] == "thermocouple");
    CHECK(components[0]["a"].get<double>() == close_to(point.thermocouple));
    CHECK(components[1]["name"] == "extension cable");
    CHECK(components[1]["a"] == 1.5);
    CHECK(components[2]["name"] == "recorder");
    CHECK(components[2]["a"] == 1.0);
    CHECK(components[3]["name"] == "resolution");
    CHECK(components[3]["q"].get<double>() == close_to(0.1));
    const double squares =
        (point.thermocouple * point.thermocouple + 1.5 * 1.5 + 1.0) / 3.0 + 0.1 * 0.1 / 12.0;
    CHECK(at["uncertainty"].get<double>() == close_to(2.0 * std::sqrt(squares)));
  }
  // A constant error cancels in a rate, 0.4 % of the reading does not: 2 · 0.4 % / √3.
  CHECK(budget["rate_share"].get<double>() == close_to(2.0 * 0.004 / std::sqrt(3.0)));
}

TEST_CASE("A calibrated thermocouple has the size that its certificate gives, at every temperature") {
  const json budget = named(guarded()["budget"], "channel", "TC6 inside, 180°");
  for (const json& at : budget["at"]) CHECK(at["components"][0]["a"].get<double>() == close_to(1.1));
  CHECK(budget["rate_share"] == 0.0);
}

TEST_CASE("A margin after U is what is left of the limit: ILAC-G8:09/2019, guard range w = U") {
  for (const char* id :
       {"record.temperature-max", "stage-2.over-temperature", "stage-2.spread", "stage-1.spread"}) {
    CAPTURE(id);
    const json requirement = named(guarded()["requirements"], "id", id);
    CHECK(requirement["margin"].get<double>() ==
          close_to(requirement["limit"].get<double>() - requirement["measured"].get<double>() -
                   requirement["uncertainty"].get<double>()));
  }
  // Of a rate likewise; noise decides the verdict, and is not in the margin.
  const json rate = named(guarded()["requirements"], "id", "stage-1.heating-rate");
  CHECK(rate["margin"].get<double>() ==
        close_to(rate["limit"].get<double>() - rate["measured"].get<double>() -
                 rate["uncertainty"].get<double>()));
}

TEST_CASE("A narrowed range holds for a shorter time than the range as specified, a widened one for longer") {
  const json sure = named(guarded()["requirements"], "id", "stage-2.hold-time");
  const json plain =
      named(result_of("w-117-stress-relief/job.toml")["requirements"], "id", "stage-2.hold-time");
  CHECK(sure["certain"] < plain["certain"]);
  CHECK(sure["possible"] > plain["possible"]);
  CHECK(guarded()["procedure"]["decision_rule"] == "guarded");
}

TEST_CASE(
    "The alternatives of a rate names the worst over four widths and the whole ramp, each with where and its "
    "verdict") {
  const json result = result_of("w-118-late-and-dipping/job.toml");
  const json rate = named(result["requirements"], "id", "stage-1.heating-rate");
  const json& rates = rate["alternatives"]["rates"];
  REQUIRE(rates.size() == 5);
  for (const json& one : rates) {
    CAPTURE(one["over"]);
    CHECK(one["channel"].is_string());
    CHECK(one["from_s"] < one["to_s"]);
    CHECK(one["from"].is_string());
    CHECK(one["verdict"] == (one["rate"] > rate["limit"]
                                 ? one["verdict"] == "inconclusive" ? "inconclusive" : "not met"
                                 : "met"));
    if (one["over"] != "overall") CHECK(one["rate"] == rate["by_window"][one["over"].get<std::string>()]);
  }
  // Wider windows can only be milder here: one zone was pushed for half an hour.
  CHECK(rates[3]["rate"] < rates[0]["rate"]);
  CHECK(rate["shortfall"].get<std::string>().size() > 20);
}

TEST_CASE(
    "The alternatives of a hold tells its time under four excursions_allowed, and when each thermocouple "
    "came in and left") {
  const json result = result_of("w-118-late-and-dipping/job.toml");
  const json time = named(result["requirements"], "id", "stage-2.hold-time");
  const json& by_excursion_allowed = time["alternatives"]["by_excursion_allowed"];
  REQUIRE(by_excursion_allowed.size() == 4);
  double before = 0.0;
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(by_excursion_allowed[i]["excursion_allowed"] == (std::vector<double>{0, 120, 300, 600}[i]));
    CHECK(by_excursion_allowed[i]["continuous"] >= before);
    CHECK(by_excursion_allowed[i]["accumulated"] >= by_excursion_allowed[i]["continuous"]);
    before = by_excursion_allowed[i]["continuous"];
  }
  CHECK(by_excursion_allowed[0]["continuous"] == time["measured"]);
  const json& thermocouples = time["alternatives"]["thermocouples"];
  REQUIRE(thermocouples.size() == 5);
  double last_in = 0.0;
  for (const json& one : thermocouples) last_in = std::max(last_in, one["in_s"].get<double>());
  CHECK(last_in <= time["from_s"].get<double>());
}

TEST_CASE("The alternatives of a spread names both readings, and they are that far apart") {
  const json result = result_of("w-117-stress-relief/job.toml");
  for (const json& requirement : result["requirements"]) {
    const auto id = requirement["id"].get<std::string>();
    if (id.find(".spread") == std::string::npos) continue;
    CAPTURE(id);
    CHECK(requirement["alternatives"]["hottest"].get<double>() -
              requirement["alternatives"]["coldest"].get<double>() ==
          close_to(requirement["measured"].get<double>()));
  }
}
