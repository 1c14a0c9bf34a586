// SPDX-License-Identifier: GPL-3.0-or-later
// Preheat and bands as a user meets them: beside the verdict, never part of it.
#include <regex>
#include <string>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/run_program.h"

using Catch::Matchers::Contains;

namespace {

const std::string kPreheat =
    "minimum_preheat = \"AWS D1.1 category B\"\n"
    "composition = { C = 0.16, Mn = 1.2, Cr = 0.1, Mo = 0.05, Ni = 0.2, Cu = 0.25, V = 0.01 }\n";
const std::string kBand =
    "[[band]]\ndiameter = \"323.9 mm\"\nwall = \"25.4 mm\"\nsoak_band = \"120 mm\"\n"
    "[[thermocouple]]\ncolumn = \"TC1\"\nposition = \"0.1 m\"\n"
    "[[thermocouple]]\ncolumn = \"TC2\"\nposition = \"0.05 m\"\n";

/// Without the line breaks of a page.
std::string unwrapped(const std::string& page) { return std::regex_replace(page, std::regex("\\s+"), " "); }

Ran checked(const TemporaryFolder& folder, const std::string& job_keys, const std::string& json) {
  const std::string job = folder.with("job.toml", "soakwright = \"job 1\"\n" + job_keys);
  return run_soakwright({"check", stress_relief_file("d3-n2.csv"), "--procedure",
                         stress_relief_file("htp-021.toml"), "--job", job, "--json", folder.file(json)});
}

}  // namespace

TEST_CASE("preheat and bands are shown with source and flag, and change no verdict") {
  const TemporaryFolder folder;
  const Ran without = checked(folder, "", "without.json");
  const Ran with = checked(folder, kPreheat + kBand, "with.json");
  INFO(with.err);
  CHECK(with.exit_code == without.exit_code);
  // Worked by hand: 0.16 + 1.2/6 + 0.16/5 + 0.45/15. 38 mm: AWS D1.1, category B, 10 C.
  CHECK_THAT(unwrapped(with.out),
             Contains("CE(IIW) 0.422 %") && Contains("Pcm not known without Si and B") &&
                 Contains("10 °C for 38 mm (AWS D1.1, clause category B, seen in print)") &&
                 Contains("no preheat is specified"));
  // AWS D10.10 (2021), from memory: L = 2·√(R·t).
  CHECK_THAT(unwrapped(with.out),
             Contains("L = 2·√(R·t) = 117.8 mm") && Contains("from memory, check against your"));
  CHECK_THAT(unwrapped(with.out),
             Contains("TC1 is 100 mm from the centre of the weld, outside the soak band of 120 mm."));
  const auto heat = nlohmann::json::parse(text_of(folder.file("with.json")))["heat"];
  CHECK(heat["preheat"][0]["published_minimum"]["temperature"] == 10.0);
  CHECK(heat["preheat"][0]["carbon_equivalents"][2]["percent"].is_null());
  CHECK(heat["bands"][0]["flag"] == "memory");
  CHECK(heat["bands"][0]["thermocouples"][0]["place"] == "outside-soak-band");
  CHECK(heat["bands"][0]["thermocouples"][1]["place"] == "fits");
  const auto none = nlohmann::json::parse(text_of(folder.file("without.json")))["heat"];
  CHECK(none["preheat"].is_null());
  CHECK(none["bands"].is_null());
}

TEST_CASE("inspect shows what the job alone says about preheat and bands") {
  const TemporaryFolder folder;
  const std::string job = folder.with("job.toml", "soakwright = \"job 1\"\n" + kPreheat + kBand);
  const Ran ran = run_soakwright({"inspect", stress_relief_file("d3-n2.csv"), "--job", job});
  CHECK(ran.exit_code == 0);
  CHECK_THAT(unwrapped(ran.out),
             Contains("CE(IIW) 0.422 %") && Contains("not known: no thickness is given") &&
                 Contains("TC1 outside the soak band") && !Contains("no preheat is specified"));
}

TEST_CASE("inspect says which tables of the job need a procedure to be evaluated") {
  // Common practice, no source: what a job gives is either shown, or said not to be.
  const TemporaryFolder folder;
  const std::string hydrogen =
      "[hydrogen]\nshape = \"plate\"\nthickness = \"25 mm\"\ndiffusivity = \"EUROFER'97\"\n";
  const std::string qualified = "[qualified]\nparameter = 18.6\nsource = \"PQR 12\"\n";
  struct Row {
    std::string tables;
    const char* says;
  };
  for (const Row& row :
       {Row{hydrogen, "The job's `[hydrogen]` is not evaluated here"},
        Row{qualified, "The job's `[qualified]` is not evaluated here"},
        Row{hydrogen + qualified, "`[qualified]` and `[hydrogen]` are not evaluated here"}}) {
    const std::string job = folder.with("job.toml", "soakwright = \"job 1\"\n" + row.tables);
    CHECK_THAT(unwrapped(run_soakwright({"inspect", stress_relief_file("d3-n2.csv"), "--job", job}).out),
               Contains(row.says));
  }
}
