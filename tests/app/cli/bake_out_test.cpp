// SPDX-License-Identifier: GPL-3.0-or-later
// Tempering and hydrogen as a user has them: on the terminal, in the result, and refused with the line.
#include <algorithm>
#include <cstdio>
#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/run_program.h"

using Catch::Matchers::Contains;
using nlohmann::json;

namespace {

/// Minute rows: 10 K a minute up to 350 °C, 4 h there, down again.
std::string bake_out() {
  std::string text = "Time,TC1 (°C),TC2 (°C)\n";
  for (int minute = 0; minute < 320; ++minute) {
    const int celsius = minute < 33     ? 20 + 10 * minute
                        : minute <= 273 ? 350
                                        : std::max(20, 350 - 10 * (minute - 273));
    char row[80];
    std::snprintf(row, sizeof row, "2031-04-02 %02d:%02d:00,%d.0,%d.0\n", 6 + minute / 60, minute % 60,
                  celsius, std::max(20, celsius - 40));
    text += row;
  }
  return text;
}

class BakeOut {
 public:
  BakeOut() {
    static_cast<void>(files.with("bake.csv", bake_out()));
    static_cast<void>(files.with("htp.toml",
                                 "soakwright = \"procedure 1\"\nnumber = \"HTP-7\"\nunit = "
                                 "\"C\"\n[evaluation]\ntempering_constant = 18\n"
                                 "[[stage]]\nkind = \"hold\"\nlow = 300\ntime_min = \"3 h\"\n"));
  }
  [[nodiscard]] Ran check(const std::string& keys, const std::string& more = {}) const {
    const std::string job = files.with(
        "job.toml",
        "soakwright = \"job 1\"\nweld = \"W-9\"\nlog = \"bake.csv\"\nprocedure = \"htp.toml\"\n" + keys);
    std::vector<std::string> arguments{"check", "--job", job};
    if (!more.empty()) arguments.insert(arguments.end(), {"--json", more});
    return run_soakwright(arguments);
  }

  TemporaryFolder files;
};

const std::string kPlate = "[hydrogen]\nshape = \"plate\"\nthickness = \"25 mm\"\ndiffusivity = ";

}  // namespace

TEST_CASE("hydrogen and the qualified tempering have a short line each on the terminal") {
  const BakeOut bake;
  const Ran ran =
      bake.check(kPlate + "\"Coe and Moreton 1969\"\n[qualified]\nparameter = 9.5\nsource = \"PQR 12\"\n");
  CHECK(ran.exit_code == 0);
  CHECK_THAT(ran.out, Contains("What the heat did") && Contains("Hydrogen left, an indication") &&
                          Contains("by Coe and Moreton 1969") && Contains("Qualified tempering") &&
                          Contains("C = 18"));
}

TEST_CASE("the hydrogen of the result is that of the colder thermocouple's curve") {
  const BakeOut bake;
  const json heat = json::parse(bake.check(kPlate + "\"Coe and Moreton 1969\"\n", "-").out)["heat"];
  CHECK(heat["tempering"]["constant"] == 18.0);
  const json& channels = heat["hydrogen"]["welds"][0]["channels"];
  REQUIRE(channels.size() == 2);
  // 5.1e-5 cm²/s at 350 °C and at 310: 4 h of it and two ramps. F is between that of 4 h and of 5 h.
  const double four_hours = 5.1e-9 * 4 * 3600 / (0.0125 * 0.0125);
  for (const json& channel : channels) {
    CHECK(channel["by_diffusivity"][0]["fourier"].get<double>() > four_hours);
    CHECK(channel["by_diffusivity"][0]["fourier"].get<double>() < four_hours * 1.25);
  }
  CHECK(channels[0]["left"].get<double>() >= channels[1]["left"].get<double>());
}

TEST_CASE("a table of the job that cannot be evaluated ends the run with its line") {
  const BakeOut bake;
  for (const auto& [keys, line, said] :
       {std::tuple{kPlate + "\"5.1e-5 cm2/s\"\n", 5, "between which it holds"},
        std::tuple{std::string{"[qualified]\nparameter = 18\n"}, 5, "`source` is missing in [qualified]"},
        std::tuple{std::string{"[hydrogen]\nshape = \"plate\"\ndiffusivity = \"EUROFER'97\"\n"}, 5,
                   "no `thickness`, and none is given"}}) {
    CAPTURE(keys);
    const Ran ran = bake.check(keys, "-");
    CHECK(ran.exit_code == 65);
    CHECK(ran.out.empty());
    CHECK_THAT(ran.err, Contains("job.toml:" + std::to_string(line)) && Contains(said));
  }
}
